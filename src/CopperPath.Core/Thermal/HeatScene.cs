using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>What is solved, before any cells are chosen: a board, the heat put into it, and what cools it.</summary>
internal sealed class HeatScene
{
    /// <summary>Laminates thicker than this get levels of their own, metres.</summary>
    private const double ThickestGapM = 1e-3;

    /// <param name="nets">Copper and plated holes.</param>
    /// <param name="profile">Board outline; empty where none was read, and the board then fills the extent of its copper.</param>
    /// <param name="bounds">Extent of the board.</param>
    /// <param name="stack">Thicknesses and the resistivity of the electrical solve.</param>
    /// <param name="section">Cooling, materials, components.</param>
    /// <param name="stretches">What makes heat in copper.</param>
    public HeatScene(
        NetList nets, IReadOnlyList<PolygonNm> profile, BoxNm bounds, Stackup stack, ThermalSection section,
        IReadOnlyList<HeatingStretch> stretches)
    {
        (Nets, Stack, Section) = (nets, stack, section);
        Outline = profile.Count > 0 ? profile : [new PolygonNm(bounds.ToRing(), [])];
        BoxNm all = bounds.Including(BoxNm.Around(nets.Layers.Select(layer => layer.Bounds)));
        Extent = new CellBox(
            Units.MetresFromNm(all.MinX), Units.MetresFromNm(all.MinY), Units.MetresFromNm(all.MaxX), Units.MetresFromNm(all.MaxY));
        Stretches = stretches;
        IsActive = new bool[stack.ThicknessM.Count];
        Loss = CopperLoss.Of(stretches, stack);
        Components = [.. section.Losses.Select(loss => (HeatPlace.Of(loss.Name, loss.Place, nets), loss.PowerW))];
        Sinks = [.. section.Sinks.Select(sink => (HeatPlace.Of(sink.Name, sink.Place, nets), sink.TemperatureK, sink.ResistanceKPerW))];
    }

    public NetList Nets { get; }

    public IReadOnlyList<PolygonNm> Outline { get; }

    /// <summary>Around the board and all copper.</summary>
    public CellBox Extent { get; }

    public Stackup Stack { get; }

    public ThermalSection Section { get; }

    public IReadOnlyList<HeatingStretch> Stretches { get; }

    public CopperLoss Loss { get; }

    public IReadOnlyList<(HeatPlace Place, double PowerW)> Components { get; }

    public IReadOnlyList<(HeatPlace Place, double? TemperatureK, double ResistanceKPerW)> Sinks { get; }

    /// <summary>For each laminate from the top: whether temperature changes enough across it for levels inside it.</summary>
    public bool[] IsActive { get; }

    /// <summary>The levels for cells.</summary>
    public LevelSet LevelsFor(CellTree tree)
    {
        double finestM = tree.WidthM(tree.DeepestSplit);
        return LevelSet.Of(Stack, Section.Laminate.BelowM, [.. IsActive.Select(isActive => isActive ? Alpha * finestM : double.PositiveInfinity)], ThickestGapM);
    }

    public static double Alpha = 1;
}
