using CopperPath.Artwork;
using CopperPath.Brief;
using CopperPath.Capacity;
using CopperPath.Electrical;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// A chart relation applied to cuts and barrels. A barrel is a conductor as wide as the wall is long around the hole
/// and as thick as the plating. What it says is a screening value: the board at hand, with its planes and short necks,
/// is not in it.
/// </summary>
public sealed class ConductorRating(ChartRelation relation, Stackup stack)
{
    /// <summary>The relation shown beside the board's own temperatures: the one chosen, or else the younger.</summary>
    public static ConductorRating Shown(JudgingRule rule, Stackup stack) =>
        new(rule == JudgingRule.Ipc2221 ? ChartRelation.Ipc2221 : ChartRelation.Ipc2152, stack);

    /// <summary>The relations that judge beside the board's own temperatures.</summary>
    public static IReadOnlyList<ConductorRating> Judging(JudgingRule rule, Stackup stack) => rule switch
    {
        JudgingRule.Ipc2152 => [new(ChartRelation.Ipc2152, stack)],
        JudgingRule.Ipc2221 => [new(ChartRelation.Ipc2221, stack)],
        JudgingRule.All => [new(ChartRelation.Ipc2152, stack), new(ChartRelation.Ipc2221, stack)],
        _ => [],
    };

    /// <summary>What parts, in an assumption, the relation's own words from why this very conductor lies beyond its range.</summary>
    public const string OutsideRange = "; outside that range: ";

    /// <summary>How sentences call the relation.</summary>
    public string Name => relation == ChartRelation.Ipc2221 ? "the IPC-2221 relation" : "the IPC-2152-style fit";

    /// <summary>The other relation, for comparison: the two differ most for wide copper and for inner layers.</summary>
    public ConductorRating Other => new(relation == ChartRelation.Ipc2221 ? ChartRelation.Ipc2152 : ChartRelation.Ipc2221, stack);

    /// <summary>The same relation on another build.</summary>
    internal ConductorRating On(Stackup other) => new(relation, other);

    /// <summary>Rise of the copper at a cut, kelvin.</summary>
    public double TraceRiseK(Section section) => section.WidthM <= 0 ? 0
        : relation == ChartRelation.Ipc2221
            ? Ipc2221.RiseK(section.CurrentA, CopperSectionM2(section), PlacementOf(section.Layer))
            : Ipc2152StyleFit.RiseK(section.CurrentA, section.WidthM, ThicknessM(section));

    /// <summary>
    /// Rise of copper that carries a current together, kelvin, as one conductor of the summed section: as wide as what its widest layer
    /// has of it, and as thick as the section then is.
    /// </summary>
    public double JointRiseK(JointSection section) => JointEstimate(section).RiseK;

    /// <summary>The same as a sentence states it, and whether the relation holds so far.</summary>
    public string JointRiseText(JointSection section) => WithRange(JointEstimate(section));

    /// <summary>What a sentence adds for comparison: the rise by the other relation, and whether that holds so far.</summary>
    public string BesideJoint(JointSection section) => Other.Saying(Other.JointEstimate(section));

    /// <summary>True where the conductor of the summed section lies inside the relation's published range.</summary>
    public bool CanJudge(JointSection section) => JointEstimate(section).Basis.IsInRange;

    /// <summary>Section that would carry the current at a rise, the width held, over the section there is.</summary>
    public double NeededRatio(JointSection section, double riseK) => relation == ChartRelation.Ipc2221
        ? Ipc2221.Section(section.CurrentA, riseK, PlacementOf(section)).SectionM2 / CopperSectionM2(section)
        : JointRiseK(section) / riseK;

    /// <summary>What the judgement of copper that carries a current together rests on.</summary>
    public string JointAssumption(JointSection section) =>
        "conductors side by side or stacked taken as one of the summed section and current (IPC-2221, from memory); " + TextOf(JointEstimate(section).Basis);

    /// <summary>Copper of a joint section, solder counted as more copper, square metres.</summary>
    public double CopperSectionM2(JointSection section) => section.SectionM2(stack);

    /// <summary>What the copper is made of.</summary>
    public Stackup Stack => stack;

    /// <summary>Width that would carry the cut's current at a rise, metres.</summary>
    public double TraceWidthM(Section section, double riseK) => relation == ChartRelation.Ipc2221
        ? Ipc2221.Section(section.CurrentA, riseK, PlacementOf(section.Layer)).SectionM2 / ThicknessM(section)
        : Ipc2152StyleFit.Width(section.CurrentA, riseK, ThicknessM(section)).WidthM;

    /// <summary>Current that warms bare copper of a layer by a rise, and whether the relation reaches so far.</summary>
    /// <param name="layer">Layer number, 1 = top.</param>
    /// <param name="widthM">Width of the copper, metres, positive.</param>
    /// <param name="riseK">Rise, kelvin, positive.</param>
    public CurrentEstimate TraceCurrent(int layer, double widthM, double riseK) => relation == ChartRelation.Ipc2221
        ? Ipc2221.Current(riseK, widthM * stack.ThicknessM[layer - 1], PlacementOf(layer))
        : Ipc2152StyleFit.Current(riseK, widthM, stack.ThicknessM[layer - 1]);

    /// <summary>Width of bare copper that warms as the copper at a cut does with the solder on it, metres.</summary>
    public double BareWidthM(Section section) => section.ThicknessRatio == 1 || section.CurrentA <= 0
        ? section.WidthM : TraceWidthM(section with { ThicknessRatio = 1 }, TraceRiseK(section));

    /// <summary>True for the fit on an inner layer, which it was not made for.</summary>
    public bool IsBorrowedFor(int layer) => relation == ChartRelation.Ipc2152 && PlacementOf(layer) == ConductorPlacement.Internal;

    /// <summary>Whether a layer is a face of the board.</summary>
    public ConductorPlacement PlacementOf(int layer) =>
        layer == 1 || layer == stack.ThicknessM.Count ? ConductorPlacement.External : ConductorPlacement.Internal;

    /// <summary>What the judgement of a cut rests on, and where it leaves the relation's range.</summary>
    public string TraceAssumption(Section section) =>
        TextOf(TraceEstimate(section).Basis) + (IsBorrowedFor(section.Layer) ? "; the fit is for outer layers and is used here for an inner one" : "");

    /// <summary>The rise of a cut by this relation as a sentence states it, and whether the relation holds so far.</summary>
    public string TraceRiseText(Section section) => WithRange(TraceEstimate(section));

    /// <summary>The same for a barrel.</summary>
    public string BarrelRiseText(BarrelCurrent barrel) => WithRange(BarrelEstimate(barrel));

    /// <summary>What a sentence adds for comparison: the rise by the other relation, and whether that holds so far.</summary>
    public string BesideTrace(Section section) => Other.Saying(Other.TraceEstimate(section));

    /// <summary>The same for a barrel.</summary>
    public string BesideBarrel(BarrelCurrent barrel) => Other.Saying(Other.BarrelEstimate(barrel));

    /// <summary>True where the cut lies inside the relation's published range.</summary>
    public bool CanJudge(Section section) => section.WidthM > 0 && TraceEstimate(section).Basis.IsInRange;

    /// <summary>The same for a barrel.</summary>
    public bool CanJudge(BarrelCurrent barrel) => BarrelEstimate(barrel).Basis.IsInRange;

    /// <summary>Rise of a barrel, kelvin.</summary>
    public double BarrelRiseK(BarrelCurrent barrel) => BarrelEstimate(barrel).RiseK;

    /// <summary>Copper crossed by a cut, square metres.</summary>
    public double CopperSectionM2(Section section) => section.WidthM * ThicknessM(section);

    /// <summary>Copper of a barrel across its axis, square metres.</summary>
    public double BarrelSectionM2(BarrelCurrent barrel) => BarrelSection.AreaM2(barrel.Barrel.Feature, stack);

    /// <summary>What the judgement of a barrel rests on.</summary>
    public string BarrelAssumption(BarrelCurrent barrel) =>
        $"barrel taken as an unrolled conductor of its wall's length and thickness; {TextOf(BarrelEstimate(barrel).Basis)}";

    /// <summary>Current a barrel carries at a rise, amperes.</summary>
    public double BarrelCurrentA(DrilledFeature feature, double riseK)
    {
        double widthM = BarrelSection.MeanCircumferenceM(feature, stack);
        return relation == ChartRelation.Ipc2221
            ? Ipc2221.Current(riseK, widthM * stack.PlatingM, ConductorPlacement.Internal).CurrentA
            : Ipc2152StyleFit.Current(riseK, widthM, stack.PlatingM).CurrentA;
    }

    private string Saying(RiseEstimate estimate) => $"{Name} says {WithRange(estimate)}";

    private static string WithRange(RiseEstimate estimate) =>
        $"{QuantityText.TemperatureDifference(estimate.RiseK)}{(estimate.Basis.IsInRange ? "" : " outside its range")}";

    private RiseEstimate TraceEstimate(Section section) =>
        RiseOf(section.CurrentA, section.WidthM, ThicknessM(section), PlacementOf(section.Layer));

    private RiseEstimate JointEstimate(JointSection section)
    {
        double holesM = section.Holes.Sum(hole => BarrelSection.MeanCircumferenceM(hole.Barrel.Feature, stack));
        double widthM = Math.Max(holesM, section.Layers.Count == 0 ? 0 : section.Layers.Max(layer => layer.WidthM));
        return RiseOf(section.CurrentA, widthM, CopperSectionM2(section) / widthM, PlacementOf(section));
    }

    /// <summary>Inside as soon as one of its conductors is.</summary>
    private ConductorPlacement PlacementOf(JointSection section) => section.Holes.Count == 0
        && section.Layers.All(layer => PlacementOf(layer.Layer) == ConductorPlacement.External) ? ConductorPlacement.External : ConductorPlacement.Internal;

    private RiseEstimate BarrelEstimate(BarrelCurrent barrel) => RiseOf(
        Math.Abs(barrel.CurrentA), BarrelSection.MeanCircumferenceM(barrel.Barrel.Feature, stack),
        stack.PlatingM, ConductorPlacement.Internal);

    private RiseEstimate RiseOf(double currentA, double widthM, double thicknessM, ConductorPlacement placement) =>
        relation == ChartRelation.Ipc2221
            ? Ipc2221.Rise(currentA, widthM * thicknessM, placement)
            : Ipc2152StyleFit.Rise(currentA, widthM, thicknessM);

    /// <summary>Solder counts as more copper of the same conductance.</summary>
    private double ThicknessM(Section section) => stack.ThicknessM[section.Layer - 1] * section.ThicknessRatio;

    private static string TextOf(EstimateBasis basis) =>
        !basis.IsInRange ? $"{basis.Source}; {basis.Assumptions}{OutsideRange}{string.Join(", ", basis.OutsideRange)}" : $"{basis.Source}; {basis.Assumptions}";
}
