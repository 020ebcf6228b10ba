using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>A reviewed stretch of copper with the figures every part of the report shows of it.</summary>
/// <param name="Number">Place in the brief, from 0.</param>
/// <param name="Solved">Brief, copper and solution.</param>
/// <param name="EnteringA">Current that enters it, amperes.</param>
/// <param name="HottestSections">Its hottest cuts by the chosen relation, hottest first; empty without cuts.</param>
/// <param name="HottestOfEachLayer">Its hottest cut on each layer likewise, from the top.</param>
/// <param name="HoleRiseK">Rise of its hottest plated hole likewise; null without holes.</param>
/// <param name="Own">What its own current adds to its temperature in this board's own solution; null where there is none.</param>
internal sealed record Stretch(
    int Number, SolvedNet Solved, double EnteringA, IReadOnlyList<RatedSection> HottestSections, IReadOnlyList<RatedSection> HottestOfEachLayer, double? HoleRiseK, NetTemperatures? Own)
{
    public string Name => Solved.Bound.Review.Name;

    public NetRole Role => Solved.Bound.Review.Role;

    public ConductionResult Conduction => Solved.Conduction;

    /// <summary>Its necks of copper that carries a current together, worst by the chosen relation first.</summary>
    public IReadOnlyList<JointSection> Joint => Solved.Joint.Necks;

    public bool IsSolved => Conduction.HasFields;

    /// <summary>Rise of its hottest cut, kelvin; null without cuts.</summary>
    public double? SectionRiseK => HottestSections.Count == 0 ? null : HottestSections[0].RiseK;

    /// <summary>The larger of the two rises, kelvin; null without either.</summary>
    public double? RiseK => SectionRiseK is { } section && HoleRiseK is { } hole ? Math.Max(section, hole) : SectionRiseK ?? HoleRiseK;

    /// <summary>Rise over what is allowed; null without a rise.</summary>
    public double? RiseShare => RiseK / Solved.Bound.Review.Limits.TemperatureRiseK;

    /// <summary>Drop over what is allowed; null when it is not judged.</summary>
    public double? DropShare => IsSolved ? Conduction.DropV / Solved.Bound.Review.Limits.VoltageDropV : null;

    /// <param name="review">A review with at least one net.</param>
    /// <returns>All stretches in the order of the brief.</returns>
    public static IReadOnlyList<Stretch> Of(Review review)
    {
        ConductorRating rating = ConductorRating.Shown(review.Brief!.Limits.JudgeBy, review.Stack!);
        int[] numbers = [.. Enumerable.Range(0, review.Nets.Count)];
        return OnAllCores.Of(numbers, n => Of(review.Nets[n], n, rating, review.Own));
    }

    private static Stretch Of(SolvedNet net, int number, ConductorRating rating, OwnRise? heat)
    {
        double[] risesK = [.. net.Sections.Select(rating.TraceRiseK)];
        return new(
            number,
            net,
            net.Bound.Terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA),
            RatedSection.Hottest(net.Sections, risesK),
            RatedSection.HottestOfEachLayer(net.Sections, risesK),
            net.Conduction.Barrels.Count == 0 ? null : net.Conduction.Barrels.Max(rating.BarrelRiseK),
            heat is { Result.Status: ThermalStatus.Solved } && net.Conduction.Sheets.Count > 0 ? NetTemperatures.Of(net, heat) : null);
    }
}
