using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>A board laid on columns of cells, ready to be solved under one set of conditions after the other.</summary>
internal sealed class HeatModel
{
    private readonly HeatScene _scene;
    private readonly LevelSet _levels;
    private readonly CellCover _board;
    private readonly CellCover?[] _copper;
    private readonly Dictionary<Barrel, IReadOnlyList<(int Column, double Share)>> _walls;
    private readonly LossOnCells _loss;
    private readonly Lazy<HeatNetwork> _asStated;

    /// <param name="scene">The board.</param>
    /// <param name="tree">Cells; not to be changed afterwards.</param>
    /// <param name="before">The board on cells of which these are made by splitting; null for the first ones.</param>
    /// <param name="halvings">How often the cells were halved after they were chosen.</param>
    public HeatModel(HeatScene scene, CellTree tree, HeatModel? before = null, int halvings = 0)
        : this(scene, tree, scene.LevelsFor(tree, halvings), before)
    {
    }

    /// <param name="scene">The board.</param>
    /// <param name="tree">Cells; not to be changed afterwards.</param>
    /// <param name="levels">Levels through the thickness.</param>
    /// <param name="before">The board on cells of which these are made by splitting; null for the first ones.</param>
    public HeatModel(HeatScene scene, CellTree tree, LevelSet levels, HeatModel? before = null)
    {
        _scene = scene;
        _levels = levels;
        Cells = new TreeCells(tree, _levels.In(scene.Stack, scene.Section.Laminate.BelowM));
        _copper = new CellCover?[scene.Stack.ThicknessM.Count + 1];
        Parallel.ForEach(scene.Nets.Layers.Select(layer => layer.Number), layer =>
            _copper[layer] = CellCover.Of(Cells, scene.Nets.Nets.Select(net => net.SheetOn(layer)?.Islands ?? [])));
        _board = BoardCover();
        _walls = new(ReferenceEqualityComparer.Instance);
        foreach (Barrel barrel in scene.Nets.Nets.SelectMany(net => net.Barrels).Where(barrel => barrel.Layers.Count > 1))
        {
            _walls.Add(barrel, BarrelWall.SharesOf(Cells, barrel, scene.Stack));
        }

        _loss = scene.Loss.On(Cells, _walls, before?._loss);
        _asStated = new(() => NetworkOf(scene.Stack, scene.Section.Laminate));
    }

    public TreeCells Cells { get; }

    /// <param name="conditions">Build, surroundings and load.</param>
    /// <param name="like">A solution to start from, on any columns of the same board; null to start from one even temperature.</param>
    /// <param name="tolerance">Heat that may be left over, as a share of the heat put in; null for as little as the solver leaves else.</param>
    public TemperatureField Solve(HeatConditions conditions, TemperatureField? like = null, double? tolerance = null)
    {
        HeatSources sources = _loss.At(conditions);
        AddComponents(sources);
        LaidBoard board = Laid(conditions);
        double[]? start = like is { Result.Status: ThermalStatus.Solved } ? like.At(Cells) : null;
        return Field(board.Network, ThermalSolver.Solve(board.Network, sources, board.Cooling, board.Sinks, start, tolerance));
    }

    /// <summary>Loss of the copper by stretches.</summary>
    public LossOnCells Loss => _loss;

    /// <summary>What conducts, stores and takes heat under some conditions.</summary>
    public LaidBoard Laid(HeatConditions conditions)
    {
        HeatNetwork network = conditions.Stack == _scene.Stack && conditions.Laminate is null ? _asStated.Value
            : NetworkOf(conditions.Stack, conditions.Laminate ?? _scene.Section.Laminate);
        List<HeatSink> sinks = [.. _scene.Sinks.Select(sink => new HeatSink(
            sink.Place.On(Cells), (sink.TemperatureK ?? conditions.AmbientK) - conditions.AmbientK, sink.ResistanceKPerW))];
        foreach (HeatSink held in sinks.Where(sink => sink.ResistanceKPerW == 0))
        {
            foreach ((int node, _) in held.Spot.Parts)
            {
                network.MakeIsothermal(node);
            }
        }

        Cooling cooling = BoardHeat.CoolingOf(_scene.Section, conditions.AmbientK) with
        {
            StillAirScale = conditions.StillAirScale,
            StatedFilmScale = conditions.StatedFilmScale,
            Plate = _scene.Plate,
        };
        return new LaidBoard(network, cooling, sinks);
    }

    /// <summary>Adds the heat of parts.</summary>
    public void AddComponents(HeatSources sources)
    {
        foreach ((HeatPlace place, double powerW) in _scene.Components)
        {
            sources.AddComponent(place.On(Cells), powerW);
        }
    }

    /// <summary>What a kelvin more in each node takes, joules: laminate, copper and the walls of plated holes.</summary>
    public double[] CapacityJPerK(LaidBoard board, Stackup stack)
    {
        double[] capacity = HeatCapacity.Of(board.Network);
        foreach ((Barrel barrel, IReadOnlyList<(int Column, double Share)> parts) in _walls)
        {
            double perM = board.Network.Materials.CopperJPerM3K * BarrelSection.AreaM2(barrel.Feature, stack);
            HeatCapacity.AddWall(capacity, board.Network, (Cells.PlaneOf(barrel.Layers[0]), Cells.PlaneOf(barrel.Layers[^1])), parts, perM);
        }

        return capacity;
    }

    /// <summary>Rises of the nodes as a field on the copper layers.</summary>
    public TemperatureField Field(HeatNetwork network, ThermalResult result) => new(network, result)
    {
        Remarks = _scene.Remarks,
        Owners = _scene.Owners,
        Walls = _walls,
    };

    /// <summary>The board in each column; copper that reaches beyond the outline gives heat away like board.</summary>
    private CellCover BoardCover()
    {
        CellCover outline = CellCover.Of(Cells, [_scene.Outline]);
        for (int column = 0; column < Cells.Count; column++)
        {
            foreach (CellCover? layer in _copper)
            {
                if (layer is not null && layer.AreaM2[column] > outline.AreaM2[column])
                {
                    outline.AreaM2[column] = Math.Min(layer.AreaM2[column], Cells.BoxOf(column).AreaM2);
                }
            }
        }

        return outline;
    }

    private HeatNetwork NetworkOf(Stackup stack, LaminateSection laminate)
    {
        IReadOnlyList<HeatPlane> planes = _levels.In(stack, laminate.BelowM);
        HeatNetwork network = new(Cells, planes, _board, _copper, BoardHeat.MaterialsOf(laminate));
        foreach ((Barrel barrel, IReadOnlyList<(int Column, double Share)> parts) in _walls)
        {
            // The wall of a plated hole conducts between all levels it passes, whether their copper meets it or not.
            double conductance = network.Materials.CopperWPerMK * BarrelSection.AreaM2(barrel.Feature, stack);
            foreach ((int column, double share) in parts)
            {
                for (int p = Cells.PlaneOf(barrel.Layers[0]); p < Cells.PlaneOf(barrel.Layers[^1]); p++)
                {
                    network.AddDown((column * planes.Count) + p, share * conductance / planes[p].GapBelowM);
                }
            }
        }

        return network;
    }
}

/// <summary>A board under some conditions, without its heat.</summary>
/// <param name="Network">Conduction.</param>
/// <param name="Cooling">Films and radiation.</param>
/// <param name="Sinks">Places tied to a temperature.</param>
internal sealed record LaidBoard(HeatNetwork Network, Cooling Cooling, IReadOnlyList<HeatSink> Sinks);
