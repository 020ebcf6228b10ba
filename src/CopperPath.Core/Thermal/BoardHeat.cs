using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// A reviewed board -> its temperatures: all copper of all nets spreads heat, the copper that was solved makes it.
/// </summary>
public static class BoardHeat
{
    // Nodes of a board without a stated cell: of the even grid that shows where temperature changes, of the even grid
    // that is fine enough where it does not, and of the grid fitted to both.
    private const int FirstNodes = 60_000;
    private const int EvenNodes = 90_000;
    private const int MostNodes = 220_000;

    private const double FinestM = 0.25e-3;
    private const double CoarsestM = 2e-3;

    /// <summary>Laminates thicker than this get levels of their own.</summary>
    private const double ThickestGapM = 1e-3;

    /// <param name="nets">Copper and plated holes.</param>
    /// <param name="profile">Board outline; empty where none was read, and the board then fills the extent of its copper.</param>
    /// <param name="bounds">Extent of the board.</param>
    /// <param name="stack">Thicknesses and the resistivity of the electrical solve.</param>
    /// <param name="section">Cooling, materials, components.</param>
    /// <param name="ambientK">Air and surroundings.</param>
    /// <param name="solutions">Solved stretches.</param>
    public static TemperatureField Solve(
        NetList nets, IReadOnlyList<PolygonNm> profile, BoxNm bounds, Stackup stack, ThermalSection section, double ambientK,
        IReadOnlyList<ConductionResult> solutions)
    {
        IReadOnlyList<HeatPlane> planes = HeatPlane.Of(stack, section.Laminate.BelowM, ThickestGapM);
        TemperatureField SolveOn(GridAxis x, GridAxis y) =>
            SolveOnGrid(new HeatGrid(x, y, planes), nets, profile, stack, section, ambientK, solutions);
        if (section.CellM is { } cellM)
        {
            return SolveOn(Columns(cellM), Rows(cellM));
        }

        double coarseM = CellWithin(bounds, planes.Count, FirstNodes);
        TemperatureField coarse = SolveOn(Columns(coarseM), Rows(coarseM));
        if (coarse.Result.Status != ThermalStatus.Solved)
        {
            return coarse;
        }

        (GridAxis x, GridAxis y) = GridFitting.Fit(coarse, CellWithin(bounds, planes.Count, EvenNodes), MostNodes);
        return SolveOn(x, y);

        GridAxis Columns(double cellM) => GridAxis.Uniform(Units.MetresFromNm(bounds.MinX), Units.MetresFromNm(bounds.MaxX), cellM);
        GridAxis Rows(double cellM) => GridAxis.Uniform(Units.MetresFromNm(bounds.MinY), Units.MetresFromNm(bounds.MaxY), cellM);
    }

    private static TemperatureField SolveOnGrid(
        HeatGrid grid, NetList nets, IReadOnlyList<PolygonNm> profile, Stackup stack, ThermalSection section, double ambientK,
        IReadOnlyList<ConductionResult> solutions)
    {
        HeatNetwork network = NetworkOf(grid, nets, profile, stack, section);
        CopperMaterial copper = CopperMaterial.Iacs;
        double atAmbient = copper.ResistivityOhmM(ambientK);
        HeatSources sources = CopperLoss.Of(grid, solutions, stack, atAmbient, copper.ResistivityOhmM(ambientK + 1) / atAmbient - 1);
        Cooling cooling = CoolingOf(section, ambientK);
        HeatSpotBinder spots = new(grid, nets);
        foreach (ComponentLoss loss in section.Losses)
        {
            sources.AddComponent(spots.Bind(loss.Name, loss.Place), loss.PowerW);
        }

        List<HeatSink> sinks = [.. section.Sinks.Select(sink =>
            new HeatSink(spots.Bind(sink.Name, sink.Place), (sink.TemperatureK ?? ambientK) - ambientK, sink.ResistanceKPerW))];
        foreach (HeatSink held in sinks.Where(sink => sink.ResistanceKPerW == 0))
        {
            foreach ((int node, _) in held.Spot.Parts)
            {
                network.MakeIsothermal(node);
            }
        }

        return new TemperatureField(network, ThermalSolver.Solve(network, sources, cooling, sinks));
    }

    /// <summary>Conductivities as the brief states them.</summary>
    public static ThermalMaterials MaterialsOf(ThermalSection section) => ThermalMaterials.CopperOnFr4 with
    {
        LaminateThroughWPerMK = section.Laminate.ThroughWPerMK,
        LaminateInPlaneWPerMK = section.Laminate.InPlaneWPerMK,
    };

    /// <summary>Cooling as the brief states it.</summary>
    public static Cooling CoolingOf(ThermalSection section, double ambientK) =>
        new(ambientK, section.Posture, FaceOf(section.Top), FaceOf(section.Bottom));

    private static HeatNetwork NetworkOf(
        HeatGrid grid, NetList nets, IReadOnlyList<PolygonNm> profile, Stackup stack, ThermalSection section)
    {
        CopperRaster?[] copper = new CopperRaster?[grid.Planes.Count];
        Parallel.ForEach(nets.Layers, layer => copper[grid.PlaneOf(layer.Number)] = CopperRaster.Of(layer.Islands, grid.X, grid.Y));
        CopperRaster board = profile.Count > 0 ? CopperRaster.Of(profile, grid.X, grid.Y) : CopperRaster.Full(grid.X, grid.Y);
        HeatNetwork network = new(grid, board, copper, MaterialsOf(section));
        foreach (Barrel barrel in nets.Nets.SelectMany(net => net.Barrels))
        {
            AddWall(network, barrel, stack);
        }

        return network;
    }

    /// <summary>The wall of a plated hole conducts between all levels it passes, whether their copper meets it or not.</summary>
    private static void AddWall(HeatNetwork network, Barrel barrel, Stackup stack)
    {
        HeatGrid grid = network.Grid;
        double conductance = network.Materials.CopperWPerMK * BarrelSection.AreaM2(barrel.Feature, stack);
        int first = grid.PlaneOf(barrel.Layers[0]);
        int last = grid.PlaneOf(barrel.Layers[^1]);
        IReadOnlyList<(int Node, double Share)> parts = CellShares.Of(grid, first, [barrel.Outline]);
        for (int p = first; p < last; p++)
        {
            foreach ((int node, double share) in parts)
            {
                network.AddDown(node + p - first, share * conductance / grid.Planes[p].GapBelowM);
            }
        }
    }

    private static FaceCooling FaceOf(FaceSection face) => new(face.FilmWPerM2K, face.Emissivity);

    private static double CellWithin(BoxNm bounds, int planes, int nodes)
    {
        double areaM2 = Units.MetresFromNm(bounds.WidthNm) * Units.MetresFromNm(bounds.HeightNm);
        return Math.Clamp(Math.Sqrt(areaM2 * planes / nodes), FinestM, CoarsestM);
    }
}
