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

    /// <summary>Laminates across which temperature changes have at least this many levels, as far as cells are as narrow.</summary>
    private const double LeastParts = 4;

    /// <summary>
    /// In thicker ones the first level beside copper is this near, metres: heat that leaves a small pad spreads along the first tenths of a
    /// millimetre, however thick the laminate, and a quarter of 1.5 mm takes a tenth off the rise of a pad of 0.6 mm.
    /// </summary>
    private const double NearCopperM = 80e-6;

    /// <summary>For each laminate from the top: how near to copper its first level is, metres; infinite where it has none.</summary>
    private readonly double[] _nearM;

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
        (IReadOnlyList<PolygonNm> pieces, Remarks) = BoardOutline.Of(profile, nets);
        Outline = pieces.Count > 0 ? pieces : [new PolygonNm(bounds.ToRing(), [])];
        BoxNm all = BoxNm.Around(Outline.Select(piece => piece.Bounds)).Including(BoxNm.Around(nets.Layers.Select(layer => layer.Bounds)));
        Plate = PlateSize.Of(Outline);
        Extent = new CellBox(
            Units.MetresFromNm(all.MinX), Units.MetresFromNm(all.MinY), Units.MetresFromNm(all.MaxX), Units.MetresFromNm(all.MaxY));
        Stretches = stretches;
        Owners = nets.Nets.Select((net, number) => (net, number)).ToDictionary(pair => pair.net, pair => pair.number, (IEqualityComparer<Net>)ReferenceEqualityComparer.Instance);
        _nearM = new double[stack.ThicknessM.Count];
        Array.Fill(_nearM, double.PositiveInfinity);
        Loss = CopperLoss.Of(stretches, stack);
        Components = [.. section.Losses.Select(loss => (HeatPlace.Of(loss.Name, loss.Place, nets), loss.PowerW))];
        Sinks =
        [
            .. section.Sinks.Select(sink => (HeatPlace.Of(sink.Name, sink.Place, nets), sink.TemperatureK, sink.ResistanceKPerW)),
            .. section.Losses.Where(loss => loss.ToAirKPerW is not null)
                .Select(loss => (HeatPlace.Of(loss.Name, loss.Place, nets), (double?)null, loss.ToAirKPerW!.Value)),
        ];
    }

    public NetList Nets { get; }

    /// <summary>What was seen through about the outline, in words.</summary>
    public IReadOnlyList<string> Remarks { get; }

    public IReadOnlyList<PolygonNm> Outline { get; }

    /// <summary>Size of the outline, for still air.</summary>
    public PlateSize Plate { get; }

    /// <summary>Around the board and all copper.</summary>
    public CellBox Extent { get; }

    /// <summary>Numbers of the nets in their list.</summary>
    public IReadOnlyDictionary<Net, int> Owners { get; }

    public Stackup Stack { get; }

    public ThermalSection Section { get; }

    public IReadOnlyList<HeatingStretch> Stretches { get; }

    public CopperLoss Loss { get; }

    public IReadOnlyList<(HeatPlace Place, double PowerW)> Components { get; }

    /// <summary>Heat sinks, and what parts give to air by a resistance of their own; without temperature: ambient.</summary>
    public IReadOnlyList<(HeatPlace Place, double? TemperatureK, double ResistanceKPerW)> Sinks { get; }

    /// <summary>Temperature changes much across a laminate: it gets levels, or those it has come closer to copper.</summary>
    /// <param name="laminate">Number of the laminate from the top.</param>
    /// <returns>False where they are as close as they come.</returns>
    public bool BringLevelsCloser(int laminate)
    {
        double closer = Math.Max(ClosestM(laminate), double.IsInfinity(_nearM[laminate]) ? LaminateM(laminate) / LeastParts : _nearM[laminate] / 2);
        bool isCloser = closer < _nearM[laminate];
        _nearM[laminate] = closer;
        return isCloser;
    }

    /// <summary>Conductivity of the copper, W/mK.</summary>
    public double CopperWPerMK => BoardHeat.MaterialsOf(Section.Laminate).CopperWPerMK;

    /// <summary>Whether a laminate, counted from the top, has levels inside.</summary>
    public bool HasLevelsIn(int laminate) => double.IsFinite(_nearM[laminate]);

    /// <summary>Every laminate gets the levels of one across which temperature changes most.</summary>
    public void UseClosestLevels()
    {
        for (int laminate = 0; laminate < _nearM.Length; laminate++)
        {
            _nearM[laminate] = ClosestM(laminate);
        }
    }

    /// <summary>Whether anything but the loss of copper makes the board warmer or colder than the air.</summary>
    public bool HasOtherHeat(double ambientK) =>
        Components.Any(part => part.PowerW > 0) || Sinks.Any(sink => sink.TemperatureK is { } sunkK && sunkK != ambientK);

    /// <summary>The levels for cells.</summary>
    /// <param name="tree">The cells: levels are no farther apart than the narrowest is wide or a part of the laminate, and than they are from copper.</param>
    /// <param name="halvings">How often the cells were halved after they were chosen: cells half as wide are to be half as thick everywhere.</param>
    public LevelSet LevelsFor(CellTree tree, int halvings = 0)
    {
        double finestM = tree.WidthM(tree.DeepestSplit);
        double parts = Math.ScaleB(1, halvings);
        return LevelSet.Of(Stack, Section.Laminate.BelowM, [.. _nearM.Select((nearM, laminate) =>
            double.IsFinite(nearM) ? Math.Max(finestM, nearM / parts)
            : halvings > 0 ? Math.Min(ThickestGapM, LaminateM(laminate)) / parts : double.PositiveInfinity)], ThickestGapM);
    }

    /// <summary>Levels for heat that has had little time: as close beside copper as stated, metres, and no wider than steady heat asks for.</summary>
    public LevelSet LevelsWithin(double finestM) => LevelSet.Of(
        Stack, Section.Laminate.BelowM,
        [.. _nearM.Select(nearM => Math.Min(finestM, nearM))],
        ThickestGapM, HeatOfProfile.DistanceShare);

    private double ClosestM(int laminate) => Math.Min(LaminateM(laminate) / LeastParts, NearCopperM);

    private double LaminateM(int laminate) => laminate < Stack.DielectricM.Count ? Stack.DielectricM[laminate] : Section.Laminate.BelowM;
}
