using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>Every finding with its place, its margin and what would mend it.</summary>
internal static class FindingsSection
{
    public static Markup Of(Review review) => $"""
        <section id="findings" aria-labelledby="findings-head">
        <h2 id="findings-head">Findings</h2>
        {(review.Findings.Count == 0 ? (Markup)$"<p>None.</p>" : Table(review))}
        <h3>Rules checked</h3>
        <dl class="rules">{RuleCatalogue.All.Select(rule => (Markup)$"""<div><dt>{rule.Id}</dt><dd>{rule.Question} <small>Limit: {rule.LimitSource}.</small></dd></div>""")}</dl>
        </section>
        """;

    private static Markup Table(Review review) => ReportTable.Of("Findings, numbered as in the pictures",
        [new("No.", IsNumber: true), new("Rule"), new("Where"), new("Value", IsNumber: true), new("Limit", IsNumber: true), new("Margin", IsNumber: true), new("What was found and what would mend it", IsSortable: false)],
        review.Findings.Select((finding, i) => Row(finding, i + 1)));

    private static IReadOnlyList<TableCell> Row(Finding finding, int number) =>
    [
        new(FindingMark.Of(finding, number), FormattableString.Invariant($"{number}")),
        new((Markup)$"""<span class="{(FindingMark.IsBeyond(finding) ? "tag beyond" : "tag")}">{finding.Rule}</span>{LevelText(finding)}""", finding.Rule),
        new((Markup)$"""{finding.Subject}<br><small>{(finding.Layer == 0 ? Markup.Nothing : FlyButton.Place(finding.Layer, finding.XM, finding.YM))}</small><br>{FlyButton.To(finding, number)}""", finding.Subject),
        new(finding.Measure is { } m
            ? (Markup)$"""{MeasureText.ValueOf(m)}{(MeasureText.AtWorst(m) is { } worst ? (Markup)$"<br><small>{worst}</small>" : Markup.Nothing)}""" : (Markup)$"-",
            finding.Measure?.Value ?? double.NaN),
        new(finding.Measure is { } l ? $"{(l.LimitIsLeast ? "at least " : "")}{MeasureText.LimitOf(l)}" : "-", finding.Measure?.Limit ?? double.NaN),
        new(finding.Measure is { } r ? QuantityText.Percent(r.MarginRatio) : "-", finding.Measure?.MarginRatio ?? double.NaN),
        new((Markup)$"""{finding.Sentence} <strong>{finding.Advice}</strong> <small>Rests on: {finding.Assumption}.</small>{(finding.Waiver is { } waiver ? (Markup)$"<br>Waived by {waiver.By}: {waiver.Reason}" : Markup.Nothing)}""", finding.Sentence),
    ];

    private static string LevelText(Finding finding) => $" {finding.Level.Word()}{(finding.Waiver is null ? "" : ", waived")}";
}
