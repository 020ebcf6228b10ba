using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>A board laid on a grid, ready to be solved under one set of conditions after the other.</summary>
public sealed class HeatModel
{
    private readonly HeatGrid _grid;
    private readonly NetList _nets;
    private readonly ThermalSection _section;
    private readonly CopperRaster _board;
    private readonly PlateSize? _plate;
    private readonly CopperRaster?[] _copper;
    private readonly IReadOnlyList<(Barrel Barrel, IReadOnlyList<(int Node, double Share)> Parts)> _walls;
    private readonly CopperLoss _loss;

    /// <param name="x">Columns.</param>
    /// <param name="y">Rows.</param>
    /// <param name="nets">Copper and plated holes.</param>
    /// <param name="profile">Board outline; empty where none was read, and the board then fills the grid.</param>
    /// <param name="nominal">Thicknesses and the resistivity of the electrical solve.</param>
    /// <param name="section">Cooling, materials, components.</param>
    /// <param name="stretches">What makes heat in copper.</param>
    public HeatModel(
        GridAxis x, GridAxis y, NetList nets, IReadOnlyList<PolygonNm> profile, Stackup nominal, ThermalSection section,
        IReadOnlyList<HeatingStretch> stretches)
    {
        _grid = new HeatGrid(x, y, PlanesOf(nominal, section));
        (_nets, _section) = (nets, section);
        _copper = new CopperRaster?[_grid.Planes.Count];
        foreach (int layer in nets.Layers.Select(layer => layer.Number))
        {
            _copper[_grid.PlaneOf(layer)] = CopperRaster.OfNets(
                nets.Nets.Select(net => net.Sheets.FirstOrDefault(sheet => sheet.Layer == layer)?.Islands ?? []), x, y);
        }

        _plate = profile.Count > 0 ? PlateSize.Of(profile) : null;
        _board = profile.Count > 0 ? CopperRaster.Of(profile, x, y) : CopperRaster.Full(x, y);
        _walls = [.. nets.Nets.SelectMany(net => net.Barrels).Select(barrel =>
            (barrel, CellShares.Of(_grid, _grid.PlaneOf(barrel.Layers[0]), [barrel.Outline])))];
        _loss = CopperLoss.Of(_grid, stretches, nominal);
    }

    /// <summary>Laminates thicker than this get levels of their own, metres.</summary>
    private const double ThickestGapM = 1e-3;

    /// <summary>The levels a build-up is solved on.</summary>
    public static IReadOnlyList<HeatPlane> PlanesOf(Stackup stack, ThermalSection section) =>
        HeatPlane.Of(stack, section.Laminate.BelowM, ThickestGapM);

    /// <param name="conditions">Build, surroundings and load.</param>
    /// <param name="like">A solution to start from, on any grid of the same levels; null to start from one even temperature.</param>
    public TemperatureField Solve(HeatConditions conditions, TemperatureField? like = null)
    {
        HeatNetwork network = NetworkOf(conditions.Stack);
        HeatSources sources = _loss.At(conditions);
        HeatSpotBinder spots = new(_grid, _nets);
        foreach (ComponentLoss loss in _section.Losses)
        {
            sources.AddComponent(spots.Bind(loss.Name, loss.Place), loss.PowerW);
        }

        List<HeatSink> sinks =
        [
            .. _section.Sinks.Select(sink => new HeatSink(
                spots.Bind(sink.Name, sink.Place), (sink.TemperatureK ?? conditions.AmbientK) - conditions.AmbientK, sink.ResistanceKPerW)),
            .. _section.Losses.Where(loss => loss.ToAirKPerW is not null)
                .Select(loss => new HeatSink(spots.Bind(loss.Name, loss.Place), 0, loss.ToAirKPerW!.Value)),
        ];
        foreach (HeatSink held in sinks.Where(sink => sink.ResistanceKPerW == 0))
        {
            foreach ((int node, _) in held.Spot.Parts)
            {
                network.MakeIsothermal(node);
            }
        }

        Cooling cooling = BoardHeat.CoolingOf(_section, conditions.AmbientK) with { FilmScale = conditions.FilmScale, Plate = _plate };
        double[]? start = like is { Result.Status: ThermalStatus.Solved } ? like.At(_grid) : null;
        return new TemperatureField(network, ThermalSolver.Solve(network, sources, cooling, sinks, start));
    }

    private HeatNetwork NetworkOf(Stackup stack)
    {
        HeatGrid grid = _grid with { Planes = PlanesOf(stack, _section) };
        HeatNetwork network = new(grid, _board, _copper, BoardHeat.MaterialsOf(_section));
        foreach ((Barrel barrel, IReadOnlyList<(int Node, double Share)> parts) in _walls)
        {
            // The wall of a plated hole conducts between all levels it passes, whether their copper meets it or not.
            double conductance = network.Materials.CopperWPerMK * BarrelSection.AreaM2(barrel.Feature, stack);
            int first = grid.PlaneOf(barrel.Layers[0]);
            int last = grid.PlaneOf(barrel.Layers[^1]);
            for (int p = first; p < last; p++)
            {
                foreach ((int node, double share) in parts)
                {
                    network.AddDown(node + p - first, share * conductance / grid.Planes[p].GapBelowM);
                }
            }
        }

        return network;
    }
}
