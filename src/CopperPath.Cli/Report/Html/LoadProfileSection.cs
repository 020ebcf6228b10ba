using CopperPath.Brief;
using CopperPath.Judging;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report.Html;

/// <summary>The board through the load profile, where the brief states one.</summary>
internal static class LoadProfileSection
{
    /// <param name="review">The review.</param>
    /// <param name="pictures">What <see cref="LoadProfileFiles"/> made; the PNG goes into the page.</param>
    public static Markup Of(Review review, IReadOnlyList<OutputFile> pictures)
    {
        if (review.InTime is not { } heat || review.Brief!.LoadProfile is not { } profile)
        {
            return Markup.Nothing;
        }

        string over = LoadText.Over(profile);
        return $"""
            <section id="load-profile" aria-labelledby="load-profile-head">
            <h2 id="load-profile-head">{char.ToUpperInvariant(over[0])}{over[1..]}</h2>
            {(heat.Failure is { } failure ? (Markup)$"<p>No temperatures: {failure}.</p>" : Solved(review, heat, profile, pictures))}
            </section>
            """;
    }

    private static Markup Solved(Review review, LoadedHeat heat, LoadProfile profile, IReadOnlyList<OutputFile> pictures)
    {
        TableHead[] ends = profile.IsPeriodic ? [new("Mean", IsNumber: true), new("Ripple", IsNumber: true)] : [new("At the end", IsNumber: true)];
        return $"""
            {pictures.Where(file => file.Name.EndsWith(".png", StringComparison.Ordinal)).Select(Picture)}
            {ReportTable.Of("Rises over the load profile",
                [new("Where"), new("Peak", IsNumber: true), new("Give or take", IsNumber: true), new("Allowed", IsNumber: true), new("When", IsNumber: true), .. ends],
                [Board(review, heat, profile), .. LoadText.Stretches(review, heat).Select(one => Row(one.Net, one.InTime, profile))])}
            <p class="note">Peaks are what is judged. Of a stretch: what its own current adds to its hottest copper; of the board: its hottest place above ambient, all heat counted. {LoadText.Basis(heat)} {LoadProfileFiles.Name}.csv holds the curves.</p>
            """;
    }

    private static Markup Picture(OutputFile png) => $"""
        <img class="chart" decoding="sync" alt="Rise above ambient over the load profile: hottest place of the board, what each stretch adds to its own copper, limits; the table below holds the peaks" src="data:image/png;base64,{Convert.ToBase64String(png.Content)}">
        """;

    private static IReadOnlyList<TableCell> Board(Review review, LoadedHeat heat, LoadProfile profile)
    {
        HottestPlace peak = heat.Most.Hottest();
        double? limitK = review.PartsHeat is { IsKnown: true } ? review.Brief!.Limits.TemperatureK - review.Brief.AmbientK : null;
        return
        [
            new("Hottest place of the board"), Difference(peak.RiseK), Difference(peak.EstimateK),
            limitK is { } allowedK ? Difference(allowedK) : new("not judged", double.NaN),
            new(QuantityText.Time(heat.HottestTimeS), heat.HottestTimeS),
            .. Ends(profile, heat.HottestMeanK, heat.HottestK.Max() - heat.HottestK.Min(), heat.HottestK[^1]),
        ];
    }

    private static IReadOnlyList<TableCell> Row(SolvedNet net, StretchInTime one, LoadProfile profile) =>
    [
        new((Markup)$"""<span class="stage {StageLook.ClassOf(net.Bound.Review.Role)}">{net.Bound.Review.Name}</span>""", net.Bound.Review.Name),
        Difference(one.Peak.RiseK), Difference(one.Peak.EstimateK), Difference(net.Bound.Review.Limits.TemperatureRiseK),
        new(QuantityText.Time(one.PeakTimeS), one.PeakTimeS),
        .. Ends(profile, one.MeanK, one.RippleK, one.FinalK),
    ];

    private static IEnumerable<TableCell> Ends(LoadProfile profile, double meanK, double rippleK, double finalK) =>
        (profile.IsPeriodic ? new[] { meanK, rippleK } : [finalK]).Select(Difference);

    private static TableCell Difference(double riseK) => new(QuantityText.TemperatureDifference(riseK), riseK);
}
