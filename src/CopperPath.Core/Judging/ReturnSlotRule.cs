using CopperPath.Brief;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Looks for slots: voids in a return plane, closed or open to its edge, that are longer than allowed, hold little copper
/// of other nets, and lie under or over copper of the power path with no return copper between. The return current has
/// to go around them.
/// </summary>
internal static class ReturnSlotRule
{
    /// <summary>A void filled with more than this share of other copper is a pour of another net, not a slot.</summary>
    private const double FilledShare = 0.3;

    /// <summary>The least length of a slot that must lie in line with copper of the power path, metres.</summary>
    private const double LeastUnderPathM = 2e-3;

    /// <summary>Half the width, in cells, up to which a void that opens to the plane's edge is called a slot: 3 mm in all. Common practice, no source.</summary>
    private const int HalfSlotCells = 15;

    /// <summary>Share of the board that copper of the return must fill to be a plane and not a fill between parts.</summary>
    private const double LeastPlaneShare = 0.4;

    public static IEnumerable<Finding> Judge(IReadOnlyList<SolvedNet> nets, NetList board, double allowedLengthM)
    {
        BoxNm box = BoxNm.Around(board.Layers.Select(layer => layer.Bounds)).GrownBy((HalfSlotCells + 1) * CopperRaster.CellNm);
        double boardM2 = box.WidthNm * 1e-9 * (box.HeightNm * 1e-9);
        foreach (SolvedNet plane in nets.Where(net => net.Bound.Review.Role == NetRole.Return))
        {
            LayerStack layers = new(box, plane.Bound.Net, nets.Where(IsPowerPath).ToList(), board);
            foreach (NetSheet sheet in plane.Bound.Net.Sheets)
            {
                bool isPlane = sheet.AreaM2 >= LeastPlaneShare * boardM2;
                foreach (Slot slot in SlotsIn(sheet, layers, isPlane).Where(slot => slot.LengthM > allowedLengthM))
                {
                    List<string> crossed = layers.PathsOver(slot.Cells, sheet.Layer);
                    if (crossed.Count > 0)
                    {
                        yield return FindingOf(plane, sheet.Layer, slot, allowedLengthM, crossed);
                    }
                }
            }
        }
    }

    private static Finding FindingOf(SolvedNet plane, int layer, Slot slot, double allowedM, List<string> crossed) => new(
        RuleCatalogue.ReturnSlot.Id, FindingLevel.BeyondLimit, plane.Bound.Review.Name, layer,
        Units.MetresFromNm(slot.Bounds.Centre.X), Units.MetresFromNm(slot.Bounds.Centre.Y),
        new Measure("slot length", "m", slot.LengthM, allowedM),
        $"A slot {QuantityText.Length(slot.LengthM)} long and about {QuantityText.Length(slot.AreaM2 / slot.LengthM)} wide cuts the return plane on layer {layer} "
            + $"in line with {string.Join(", ", crossed)}.",
        "Close the slot, or bridge it on the path of the current; the return current must go around it, which adds drop, loop area and noise.",
        "void in the drawn plane, found on a grid of 0.1 mm, with copper of the power path over or under it and no return copper between; the length is common practice, no source")
    {
        Extent = slot.Bounds,
    };

    private static bool IsPowerPath(SolvedNet net) => net.Bound.Review.Role is not (NetRole.Return or NetRole.Other);

    /// <summary>Connected voids; those open to the edge only in planes, since a fill between parts is nothing but such voids.</summary>
    private static IEnumerable<Slot> SlotsIn(NetSheet sheet, LayerStack layers, bool isPlane)
    {
        CopperRaster plane = layers.Return(sheet.Layer);
        CopperRaster filled = CopperRaster.Of(plane.Box, sheet.Islands.Select(island => island.Outer));
        bool[] closed = isPlane ? plane.Closed(HalfSlotCells) : new bool[plane.CellCount];
        bool[] isVoid = new bool[plane.CellCount];
        for (int cell = 0; cell < isVoid.Length; cell++)
        {
            isVoid[cell] = !plane[cell] && (filled[cell] || closed[cell]);
        }

        CopperRaster all = layers.All(sheet.Layer);
        foreach (List<int> cells in Components(isVoid, plane.Columns))
        {
            if (cells.Count(cell => all[cell]) <= FilledShare * cells.Count)
            {
                yield return new Slot(cells, LengthM(cells, plane), BoxNm.Of(cells.Select(plane.CentreOf)).GrownBy(CopperRaster.CellNm / 2));
            }
        }
    }

    private static IEnumerable<List<int>> Components(bool[] isVoid, int columns)
    {
        bool[] seen = new bool[isVoid.Length];
        for (int start = 0; start < isVoid.Length; start++)
        {
            if (!isVoid[start] || seen[start])
            {
                continue;
            }

            List<int> cells = [start];
            seen[start] = true;
            for (int next = 0; next < cells.Count; next++)
            {
                int cell = cells[next];
                int column = cell % columns;
                foreach (int beside in new[] { column > 0 ? cell - 1 : -1, column < columns - 1 ? cell + 1 : -1, cell - columns, cell + columns })
                {
                    if (beside >= 0 && beside < isVoid.Length && isVoid[beside] && !seen[beside])
                    {
                        seen[beside] = true;
                        cells.Add(beside);
                    }
                }
            }

            yield return cells;
        }
    }

    /// <summary>Distance from the cell farthest from the first to the cell farthest from that one: the length of a straight slot.</summary>
    private static double LengthM(List<int> cells, CopperRaster raster)
    {
        PointNm FarthestFrom(PointNm from) => cells.Select(raster.CentreOf).MaxBy(from.DistanceNmTo);
        PointNm end = FarthestFrom(raster.CentreOf(cells[0]));
        return Units.MetresFromNm(end.DistanceNmTo(FarthestFrom(end))) + (CopperRaster.CellNm * 1e-9);
    }

    /// <param name="Cells">Cells of the void.</param>
    /// <param name="LengthM">Its length, metres.</param>
    /// <param name="Bounds">The box round it.</param>
    private sealed record Slot(List<int> Cells, double LengthM, BoxNm Bounds)
    {
        public double AreaM2 => Cells.Count * (CopperRaster.CellNm * 1e-9) * (CopperRaster.CellNm * 1e-9);
    }

    /// <summary>Rasters of the layers, made when first asked for.</summary>
    private sealed class LayerStack(BoxNm box, Net back, List<SolvedNet> paths, NetList board)
    {
        private readonly Dictionary<int, CopperRaster> _returns = [];
        private readonly Dictionary<int, CopperRaster> _all = [];
        private readonly Dictionary<(SolvedNet, int), CopperRaster> _paths = [];

        public CopperRaster Return(int layer) => Cached(_returns, layer, () => back.SheetOn(layer)?.Islands ?? []);

        public CopperRaster All(int layer) => Cached(_all, layer, () => board.Layers.First(candidate => candidate.Number == layer).Islands);

        /// <summary>
        /// Names of power-path nets whose copper lies in line with a long enough part of the slot: on the next layer up or
        /// down, or beyond it where that layer has no copper there that could carry the return current.
        /// </summary>
        public List<string> PathsOver(List<int> cells, int layer)
        {
            List<string> names = [];
            foreach (SolvedNet path in paths)
            {
                List<PointNm> covered = [.. cells.Where(cell => IsOver(path, cell, layer, -1) || IsOver(path, cell, layer, 1)).Select(Return(layer).CentreOf)];
                if (covered.Count > 0 && Reach(covered) >= LeastUnderPathM && !names.Contains(path.Bound.Review.Name))
                {
                    names.Add(path.Bound.Review.Name);
                }
            }

            return names;
        }

        private static double Reach(List<PointNm> points)
        {
            BoxNm extent = BoxNm.Of(points);
            return Units.MetresFromNm(Math.Max(extent.WidthNm, extent.HeightNm));
        }

        private bool IsOver(SolvedNet path, int cell, int layer, int step)
        {
            for (int beside = layer + step; beside >= 1 && beside <= board.Layers[^1].Number; beside += step)
            {
                if (Path(path, beside)[cell])
                {
                    return true;
                }

                if (Return(beside)[cell])
                {
                    return false;
                }
            }

            return false;
        }

        private CopperRaster Path(SolvedNet path, int layer)
        {
            if (!_paths.TryGetValue((path, layer), out CopperRaster? raster))
            {
                _paths[(path, layer)] = raster = CopperRaster.Of(box, CopperBuilder.RingsOf(path.Bound.Net.SheetOn(layer)?.Islands ?? []));
            }

            return raster;
        }

        private CopperRaster Cached(Dictionary<int, CopperRaster> rasters, int layer, Func<IReadOnlyList<PolygonNm>> islands)
        {
            if (!rasters.TryGetValue(layer, out CopperRaster? raster))
            {
                rasters[layer] = raster = CopperRaster.Of(box, CopperBuilder.RingsOf(islands()));
            }

            return raster;
        }
    }
}
