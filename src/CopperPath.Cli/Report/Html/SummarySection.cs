using CopperPath.Cli.Overlays.Stages;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>The answer in ten seconds: verdict, worst findings, margins.</summary>
internal static class SummarySection
{
    private const int WorstShown = 4;

    public static Markup Of(Review review, IReadOnlyList<Stretch> stretches, ConductorRating rating, StageScene? stages)
    {
        (string look, string sign) = review.Verdict switch
        {
            Verdict.WithinLimits => ("verdict-within", "\u2713"),
            Verdict.WithinAsStated => ("verdict-stated", "\u2248"),
            Verdict.BeyondLimits => ("verdict-beyond", "\u2715"),
            _ => ("verdict-open", "?"),
        };
        string word = review.Verdict.Word();
        return $"""
            <section id="summary" aria-labelledby="summary-head">
            <h2 id="summary-head">Summary</h2>
            <p class="verdict {look}"><span class="sign" aria-hidden="true">{sign}</span><strong>{char.ToUpperInvariant(word[0])}{word[1..]}</strong> <span>{VerdictWords.Of(review)}</span></p>
            <div class="first">
            {(stages is null ? Markup.Nothing : StageFigure.Of(stages, review))}
            <div>{Worst(review)}</div>
            </div>
            <h3>Margins</h3>
            <dl class="facts">
            {Margins(review, stretches)}
            <div><dt>Loss in reviewed copper</dt><dd>{QuantityText.Power(stretches.Where(s => s.IsSolved).Sum(s => s.Conduction.LossW))}<br><small>all copper at {QuantityText.Temperature(review.Brief!.ConductorK)}</small></dd></div>
            <div><dt>Proven accuracy</dt><dd>{Accuracy(stretches)}</dd></div>
            <div><dt>Ambient</dt><dd>{QuantityText.Temperature(review.Brief.AmbientK)}<br><small>resistance of copper taken at {QuantityText.Temperature(review.Brief.ConductorK)}</small></dd></div>
            </dl>
            <p class="note">Rises by {rating.Name}: one long isolated conductor in still air, no planes. Drop and loss from the field solve.</p>
            </section>
            """;
    }

    private static Markup Worst(Review review)
    {
        List<(Finding Finding, int Number)> worst = [.. review.Findings.Select((finding, i) => (finding, i + 1))
            .OrderBy(numbered => numbered.finding.Counts ? 0 : numbered.finding.IsOnlyAsStated ? 1 : 2)
            .ThenBy(numbered => numbered.finding.Measure?.MarginRatio ?? 0)
            .ThenBy(numbered => numbered.Item2).Take(WorstShown)];
        return worst.Count == 0
            ? (Markup)$"<p>No finding: every check made stayed within its limit.</p>"
            : (Markup)$"""
                {Shown(review.Findings)}
                <ol class="worst" aria-label="Worst findings">{worst.Select(item => Card(item.Finding, item.Number))}</ol>
                """;
    }

    /// <summary>How many there are beside those that get a card; nothing when each has one.</summary>
    private static Markup Shown(IReadOnlyList<Finding> findings)
    {
        int beyond = findings.Count(finding => finding.Counts);
        if (findings.Count <= WorstShown)
        {
            return Markup.Nothing;
        }

        return beyond > WorstShown
            ? (Markup)$"<p>The worst {WorstShown} of {beyond} beyond limits:</p>"
            : (Markup)$"<p>The worst {WorstShown} of {findings.Count}, remarks and waived ones included:</p>";
    }

    private static Markup Card(Finding finding, int number) => $"""
        <li class="{(FindingMark.IsBeyond(finding) ? "card beyond" : "card")}">
        <p class="card-head">{FindingMark.Of(finding, number)} {finding.Subject}</p>
        {Big(finding)}
        <p>{finding.Sentence}</p>
        <p class="remedy">{finding.Advice}</p>
        {FlyButton.To(finding, number)}
        </li>
        """;

    private static Markup Big(Finding finding) => finding.Measure is { } measure
        ? (Markup)$"""<p class="big">{MeasureText.ValueOf(measure)} <small>{MeasureText.Against(measure)}</small></p>"""
        : Markup.Nothing;

    private static IEnumerable<Markup> Margins(Review review, IReadOnlyList<Stretch> stretches)
    {
        if (HeatText.HottestPlaceOf(review) is { } place)
        {
            yield return $"""<div><dt>Hottest place of the board, all heat counted</dt><dd>{place.Temperature}; {place.Judged}<br><small>{place.Where}</small></dd></div>""";
        }

        if (stretches.Where(s => s.RiseShare is not null).MaxBy(s => s.RiseShare) is { } hottest)
        {
            double limitK = hottest.Solved.Bound.Review.Limits.TemperatureRiseK;
            yield return $"""<div><dt>Worst section or hole by chart, for screening</dt><dd>{QuantityText.TemperatureDifference(hottest.RiseK!.Value)}; {QuantityText.TemperatureDifference(limitK)} allowed<br><small>{hottest.Name}</small></dd></div>""";
        }

        if (stretches.Where(s => s.Own is not null).MaxBy(s => s.Own!.PeakK) is { } warmest)
        {
            yield return $"""<div><dt>Largest rise from the copper's own current</dt><dd>{QuantityText.TemperatureDifference(warmest.Own!.PeakK)}; {QuantityText.TemperatureDifference(warmest.Solved.Bound.Review.Limits.TemperatureRiseK)} allowed<br><small>{warmest.Name}</small></dd></div>""";
        }

        if (stretches.Where(s => s.DropShare is not null).MaxBy(s => s.DropShare) is { } deepest)
        {
            yield return $"""<div><dt>Largest drop</dt><dd>{QuantityText.Voltage(deepest.Conduction.DropV)}; {QuantityText.Voltage(deepest.Solved.Bound.Review.Limits.VoltageDropV!.Value)} allowed<br><small>{deepest.Name}</small></dd></div>""";
        }

        yield return $"""<div><dt>Findings</dt><dd>{review.Findings.Count(f => f.Counts)} beyond limits, {review.Findings.Count(f => f.IsOnlyAsStated)} within as stated only, {review.Findings.Count(f => f.IsWaived)} waived, {Counted.Of(review.Findings.Count(f => f.Level == FindingLevel.Remark), "remark")}</dd></div>""";
    }

    private static string Accuracy(IReadOnlyList<Stretch> stretches) =>
        SolveAccuracy.Of([.. stretches.Where(s => s.IsSolved).Select(s => s.Conduction)]) is not { } accuracy ? "nothing was solved"
            : $"losses within {SolveAccuracy.Text(accuracy.Loss)}, drops within {SolveAccuracy.Text(accuracy.Drop)}, "
                + $"currents of single holes and contacts within about {SolveAccuracy.Text(accuracy.HoleAndContact)}";
}
