using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Copper;

/// <summary>What the places of the plated holes tell of whether an inner layer is drawn as copper or as absent copper.</summary>
internal enum DrawnAs
{
    /// <summary>Too few holes are flashed on the layer, or what is there is as on any layer.</summary>
    Copper,

    /// <summary>Flashed at its holes are clearances and thermal reliefs, and nothing joins them.</summary>
    AbsentCopper,

    /// <summary>Lands that nothing on the layer joins, so that it would carry no current; as clearances they are small.</summary>
    Unclear,
}

/// <summary>
/// The signs of a plane drawn as absent copper: at a hole that it passes stands a disc wider than the hole's land on the
/// outer layers, at one that it meets a thermal relief, whose ring keeps clear of the wall, or nothing; and no line or
/// area of the layer comes near. Lands of a layer drawn as copper are no wider than the outer ones, and some are joined
/// by lines or areas. Common practice, no source.
/// </summary>
/// <param name="Flashed">Plated holes with a flash of the layer about them.</param>
/// <param name="Cleared">Those whose flash reads as a clearance or a thermal relief.</param>
/// <param name="Alone">Those that no line or area of the layer is joined to, were it copper.</param>
/// <param name="LineShare">Share of the board that copper with a line or an area in it would cover.</param>
internal sealed record DrawnPolarity(int Flashed, int Cleared, int Alone, double LineShare)
{
    /// <summary>How far a flash may lie from its hole, as where coordinates are rounded to coarse digits.</summary>
    private const long SamePlaceNm = 20_000;

    /// <summary>A clearance is at least so much wider than the land: fabricators ask for 0.2 mm about a hole's wall.</summary>
    private const long WiderNm = 100_000;

    /// <summary>Fewer flashed holes tell nothing.</summary>
    private const int FewestHoles = 3;

    /// <summary>Share of holes that must agree; connector pins and the border of the plane make up the rest.</summary>
    private const double Most = 0.8;

    /// <summary>Splits and the border of a plane cover less of a board.</summary>
    private const double LargestLineShare = 0.3;

    /// <summary>Points of a hole's wall that are looked at.</summary>
    private const int WallPoints = 16;

    public DrawnAs Answer =>
        Flashed < FewestHoles ? DrawnAs.Copper
        : Cleared >= Most * Flashed && Alone >= Most * Flashed && LineShare <= LargestLineShare ? DrawnAs.AbsentCopper
        : Alone == Flashed ? DrawnAs.Unclear
        : DrawnAs.Copper;

    /// <summary>True where the flashes can not be clearances: no wider than the lands outside.</summary>
    public bool HasLandsOnly => Flashed >= FewestHoles && Cleared <= (1 - Most) * Flashed;

    /// <param name="layer">The layer, its drawing taken as copper.</param>
    /// <param name="outer">Top and bottom, for the size of the lands.</param>
    /// <param name="holes">Round holes through the layer that are plated, or may be.</param>
    /// <param name="boardMm2">Area of the board, square millimetres.</param>
    public static DrawnPolarity Of(
        LayerArtwork layer, IReadOnlyList<LayerArtwork> outer, IReadOnlyList<DrilledFeature> holes, double boardMm2)
    {
        IReadOnlyList<PolygonNm> islands = CopperBuilder.Painted(layer);
        PolygonLocator locator = new(islands);
        HashSet<int> lined = [.. layer.Objects
            .Where(painted => painted is { Kind: not PaintKind.Flash, Polarity: Polarity.Dark, Rings.Count: > 0 })
            .Select(painted => locator.Find(painted.Rings[0][0] + painted.Offset)).Where(island => island >= 0)];
        FlashesAt flashes = new(layer);
        FlashesAt[] lands = [.. outer.Select(artwork => new FlashesAt(artwork))];
        int flashed = 0, cleared = 0, alone = 0;
        foreach (DrilledFeature hole in holes)
        {
            PointNm at = hole.Path[0];
            if (flashes.Find(at) is not { } flash)
            {
                continue;
            }

            flashed++;
            long landNm = lands.Max(land => land.Find(at) is { } found ? WidthNm(found) : 0);
            bool isRelief = !MeetsWall(flash, hole);
            cleared += isRelief || (landNm > 0 && WidthNm(flash) >= landNm + WiderNm) ? 1 : 0;
            alone += lined.Contains(locator.Find(flash.Rings[0][0] + flash.Offset)) ? 0 : 1;
        }

        double linedMm2 = lined.Sum(island => islands[island].AreaNm2) * 1e-12;
        return new DrawnPolarity(flashed, cleared, alone, boardMm2 > 0 ? linedMm2 / boardMm2 : 1);
    }

    private static long WidthNm(PaintedObject flash)
    {
        BoxNm box = BoxNm.Around(flash.Rings.Select(ring => BoxNm.Of(ring)));
        return Math.Max(box.WidthNm, box.HeightNm);
    }

    /// <summary>Whether the flash covers any of the hole's wall, a hair outside it.</summary>
    private static bool MeetsWall(PaintedObject flash, DrilledFeature hole)
    {
        PolygonLocator shape = new(PolygonOperations.Union(flash.Rings));
        double radiusNm = (hole.ToolDiameterNm / 2.0) + 1_500;
        return Enumerable.Range(0, WallPoints).Any(i =>
        {
            (double sin, double cos) = Math.SinCos(Math.Tau * i / WallPoints);
            PointNm at = hole.Path[0] + new PointNm((long)Math.Round(radiusNm * cos), (long)Math.Round(radiusNm * sin));
            return shape.Find(at - flash.Offset) >= 0;
        });
    }

    /// <summary>Dark flashes of a layer by place; of several at one place the widest.</summary>
    private sealed class FlashesAt
    {
        private readonly Dictionary<(long, long), List<PaintedObject>> _byCell = [];

        public FlashesAt(LayerArtwork layer)
        {
            foreach (PaintedObject flash in layer.Objects.Where(painted =>
                painted is { Kind: PaintKind.Flash, Polarity: Polarity.Dark, Rings.Count: > 0 }))
            {
                (long, long) cell = CellOf(flash.Anchor);
                if (!_byCell.TryGetValue(cell, out List<PaintedObject>? there))
                {
                    _byCell[cell] = there = [];
                }

                there.Add(flash);
            }
        }

        public PaintedObject? Find(PointNm at)
        {
            (long x, long y) = CellOf(at);
            PaintedObject? widest = null;
            for (long dx = -1; dx <= 1; dx++)
            {
                for (long dy = -1; dy <= 1; dy++)
                {
                    foreach (PaintedObject flash in _byCell.GetValueOrDefault((x + dx, y + dy), []))
                    {
                        if (flash.Anchor.DistanceNmTo(at) <= SamePlaceNm && (widest is null || WidthNm(flash) > WidthNm(widest)))
                        {
                            widest = flash;
                        }
                    }
                }
            }

            return widest;
        }

        private static (long X, long Y) CellOf(PointNm at) =>
            ((long)Math.Floor((double)at.X / SamePlaceNm), (long)Math.Floor((double)at.Y / SamePlaceNm));
    }
}
