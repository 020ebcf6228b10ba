using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>The hottest cuts across the current and the busiest plated holes.</summary>
internal static class HotspotsSection
{
    private const int SectionsPerStretch = 5;
    private const int HolesShown = 100;

    /// <summary>A hole that warms by less reads 0.0 K, kelvin.</summary>
    private const double LeastShownK = 0.05;

    public static Markup Of(Review review, IReadOnlyList<Stretch> stretches, ConductorRating rating)
    {
        List<(Stretch Stretch, BarrelCurrent Hole, double RiseK)> holes = [.. stretches
            .SelectMany(s => BarrelCurrent.BusiestOfEachHole(s.Conduction.Barrels).Select(hole => (s, hole, rating.BarrelRiseK(hole))))];
        List<(Stretch Stretch, BarrelCurrent Hole, double RiseK)> hottest = [.. holes
            .Where(h => h.RiseK >= LeastShownK).OrderByDescending(h => h.RiseK).ThenBy(h => h.Stretch.Number)
            .ThenBy(h => h.Hole.Barrel.Centre.X).ThenBy(h => h.Hole.Barrel.Centre.Y).Take(HolesShown)];
        return $"""
            <section id="hotspots" aria-labelledby="hotspots-head">
            <h2 id="hotspots-head">Hottest copper</h2>
            {ReportTable.Of("Hottest sections of each stretch",
                [new("Stretch"), new("Place"), new("Width", true), new("Current", true), new("Rise", true), new($"Rise by {rating.Other.Name}", true), new("Width for the allowed rise", true), new("Neck is long", true), new("Heat spreads over", true), new("As short neck", true), new("Board", IsSortable: false, IsForScreen: true)],
                stretches.SelectMany(stretch => Sections(stretch, rating)))}
            {ReportTable.Of("Copper that carries a current together, taken as one conductor",
                [new("Stretch"), new("Place"), new("Copper"), new("Section", true), new("Current", true), new("Rise", true), new($"Rise by {rating.Other.Name}", true), new("Neck is long", true), new("Heat spreads over", true), new("As short neck", true), new("Board", IsSortable: false, IsForScreen: true)],
                stretches.SelectMany(stretch => stretch.Joint.Take(SectionsPerStretch).Select(section => JointRow(stretch, section, rating))))}
            <p class="note">Screening values of {rating.Name}, which knows no length: a neck is as long as its section stays within {QuantityText.Ratio(NeckLength.WidestRatio)} times the least; as a short neck it is a fin held at the temperature of its ends, whose own rise comes on top.</p>
            {ReportTable.Of("Plated holes with the largest rise",
                [new("Stretch"), new("Place"), new("Hole", true), new("Between layers"), new("Current", true), new("Rise", true), new("Allowed current", true), new("Board", IsSortable: false, IsForScreen: true)],
                hottest.Select(hole => HoleRow(hole.Stretch, hole.Hole, hole.RiseK, rating)))}
            <p class="note">{hottest.Count} of {Counted.Of(holes.Count, "plated hole")} of {Counted.Of(review.Nets.Count, "stretch", "stretches")} {(hottest.Count == 1 ? "is" : "are")} listed, the rest rise less; the board view and results.json hold all of them.</p>
            </section>
            """;
    }

    private static IEnumerable<IReadOnlyList<TableCell>> Sections(Stretch stretch, ConductorRating rating) =>
        stretch.HottestSections.Take(SectionsPerStretch).Select(rated => SectionRow(stretch, rated, rating));

    private static IReadOnlyList<TableCell> SectionRow(Stretch stretch, RatedSection rated, ConductorRating rating)
    {
        (Section section, double riseK) = rated;
        double otherK = rating.Other.TraceRiseK(section);
        double neededM = section.CurrentA > 0 ? rating.TraceWidthM(section, stretch.Solved.Bound.Review.Limits.TemperatureRiseK) : 0;
        return
        [
            new(stretch.Name),
            new(FlyButton.Place(section.Layer, section.AtXM, section.AtYM), FormattableString.Invariant($"{section.Layer}")),
            new(QuantityText.Length(section.WidthM), section.WidthM),
            new(QuantityText.Current(section.CurrentA), section.CurrentA),
            new(QuantityText.TemperatureDifference(riseK), riseK),
            new(QuantityText.TemperatureDifference(otherK), otherK),
            new(QuantityText.Length(neededM), neededM),
            .. NeckCells(NeckFigures.Of(stretch.Solved, section, rating)),
            new(FlyButton.To(section.Layer, section.AtXM, section.AtYM, $"section of {stretch.Name}"), ""),
        ];
    }

    private static IReadOnlyList<TableCell> JointRow(Stretch stretch, JointSection section, ConductorRating rating)
    {
        double sectionM2 = rating.CopperSectionM2(section), otherK = rating.Other.JointRiseK(section);
        return
        [
            new(stretch.Name),
            new(FlyButton.Place(section.AtLayer, section.AtXM, section.AtYM), FormattableString.Invariant($"{section.AtLayer}")),
            new(JointText.Of(section, rating.Stack)),
            new(QuantityText.Area(sectionM2), sectionM2),
            new(QuantityText.Current(section.CurrentA), section.CurrentA),
            new(rating.JointRiseText(section), rating.JointRiseK(section)),
            new(QuantityText.TemperatureDifference(otherK), otherK),
            .. NeckCells(NeckFigures.Of(section, rating)),
            new(FlyButton.To(section.AtLayer, section.AtXM, section.AtYM, $"joint section of {stretch.Name}"), ""),
        ];
    }

    private static TableCell[] NeckCells(NeckFigures? neck) => neck is null ? [new("-", double.NaN), new("-", double.NaN), new("-", double.NaN)]
        :
        [
            new(QuantityText.Length(neck.LengthM), neck.LengthM),
            new(QuantityText.Length(neck.HeatLengthM), neck.HeatLengthM),
            new(QuantityText.TemperatureDifference(neck.ShortNeckK), neck.ShortNeckK),
        ];

    private static IReadOnlyList<TableCell> HoleRow(Stretch stretch, BarrelCurrent hole, double riseK, ConductorRating rating)
    {
        (double xM, double yM) = (Units.MetresFromNm(hole.Barrel.Centre.X), Units.MetresFromNm(hole.Barrel.Centre.Y));
        double currentA = Math.Abs(hole.CurrentA);
        double allowedA = rating.BarrelCurrentA(hole.Barrel.Feature, stretch.Solved.Bound.Review.Limits.TemperatureRiseK);
        double diameterM = Units.MetresFromNm(hole.Barrel.Feature.ToolDiameterNm);
        return
        [
            new(stretch.Name),
            new((Markup)$"{FlyButton.Coordinate("x", xM)}, {FlyButton.Coordinate("y", yM)}", FormattableString.Invariant($"{xM:R}")),
            new(QuantityText.Length(diameterM), diameterM),
            new(FormattableString.Invariant($"{hole.UpperLayer} and {hole.LowerLayer}")),
            new(QuantityText.Current(currentA), currentA),
            new(QuantityText.TemperatureDifference(riseK), riseK),
            new(QuantityText.Current(allowedA), allowedA),
            new(FlyButton.To(hole.UpperLayer, xM, yM, $"hole of {stretch.Name}"), ""),
        ];
    }
}
