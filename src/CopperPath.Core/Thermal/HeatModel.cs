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
    /// <param name="isCheck">True for the cells another solution is held against.</param>
    public HeatModel(HeatScene scene, CellTree tree, HeatModel? before = null, bool isCheck = false)
    {
        _scene = scene;
        _levels = scene.LevelsFor(tree, isCheck);
        Cells = new TreeCells(tree, _levels.In(scene.Stack, scene.Section.Laminate.BelowM));
        _copper = new CellCover?[scene.Stack.ThicknessM.Count + 1];
        Parallel.ForEach(scene.Nets.Layers.Select(layer => layer.Number), layer =>
            _copper[layer] = CellCover.Of(Cells, scene.Nets.Nets.Select(net => net.SheetOn(layer)?.Islands ?? [])));
        _board = BoardCover();
        _walls = new(ReferenceEqualityComparer.Instance);
        foreach (Barrel barrel in scene.Nets.Nets.SelectMany(net => net.Barrels).Where(barrel => barrel.Layers.Count > 1))
        {
            _walls.Add(barrel, BarrelWall.SharesOf(Cells, barrel));
        }

        _loss = scene.Loss.On(Cells, _walls, before?._loss);
        _asStated = new(() => NetworkOf(scene.Stack));
    }

    public TreeCells Cells { get; }

    /// <param name="conditions">Build, surroundings and load.</param>
    /// <param name="like">A solution to start from, on any columns of the same board; null to start from one even temperature.</param>
    /// <param name="tolerance">Heat that may be left over, as a share of the heat put in; null for as little as the solver leaves else.</param>
    public TemperatureField Solve(HeatConditions conditions, TemperatureField? like = null, double? tolerance = null)
    {
        HeatNetwork network = conditions.Stack == _scene.Stack ? _asStated.Value : NetworkOf(conditions.Stack);
        HeatSources sources = _loss.At(conditions);
        foreach ((HeatPlace place, double powerW) in _scene.Components)
        {
            sources.AddComponent(place.On(Cells), powerW);
        }

        List<HeatSink> sinks = [.. _scene.Sinks.Select(sink => new HeatSink(
            sink.Place.On(Cells), (sink.TemperatureK ?? conditions.AmbientK) - conditions.AmbientK, sink.ResistanceKPerW))];
        foreach (HeatSink held in sinks.Where(sink => sink.ResistanceKPerW == 0))
        {
            foreach ((int node, _) in held.Spot.Parts)
            {
                network.MakeIsothermal(node);
            }
        }

        Cooling cooling = BoardHeat.CoolingOf(_scene.Section, conditions.AmbientK) with { FilmScale = conditions.FilmScale, Plate = _scene.Plate };
        double[]? start = like is { Result.Status: ThermalStatus.Solved } ? like.At(Cells) : null;
        return new TemperatureField(network, ThermalSolver.Solve(network, sources, cooling, sinks, start, tolerance))
        {
            Remarks = _scene.Remarks,
            Owners = _scene.Owners,
        };
    }

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

    private HeatNetwork NetworkOf(Stackup stack)
    {
        IReadOnlyList<HeatPlane> planes = _levels.In(stack, _scene.Section.Laminate.BelowM);
        HeatNetwork network = new(Cells, planes, _board, _copper, BoardHeat.MaterialsOf(_scene.Section));
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
