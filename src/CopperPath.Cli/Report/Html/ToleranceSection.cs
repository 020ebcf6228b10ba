using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>Nominal, worst and shares over the range of what is not known.</summary>
internal static class ToleranceSection
{
    private static readonly TableHead[] s_heads =
    [
        new("Stretch of copper"), new("Result"), new("Nominal", IsNumber: true, IsSortable: false), new("Worst", IsNumber: true, IsSortable: false),
        new("Growth", IsNumber: true), new("What it comes from", IsSortable: false),
    ];

    public static Markup Of(Review review) => review.Tolerance is not { } study ? Markup.Nothing : (Markup)$"""
        <section id="tolerance" aria-labelledby="tolerance-head">
        <h2 id="tolerance-head">Over the range of what is not known</h2>
        {ReportTable.Of("Nominal and worst results", s_heads, study.Nets.SelectMany(Rows))}
        <p>{Hottest(study)}{ToleranceText.Basis}</p>
        </section>
        """;

    private static IEnumerable<IReadOnlyList<TableCell>> Rows(NetTolerance net) => net.Spreads.Select(one => (IReadOnlyList<TableCell>)
    [
        new TableCell(net.Name),
        new TableCell(one.Quantity),
        new TableCell(ToleranceText.Text(one.Spread.Nominal, one.Unit), one.Spread.Nominal),
        new TableCell(ToleranceText.Text(one.Spread.Worst, one.Unit), one.Spread.Worst),
        new TableCell(QuantityText.Percent((one.Spread.Worst / one.Spread.Nominal) - 1), (one.Spread.Worst / one.Spread.Nominal) - 1),
        new TableCell(ToleranceText.SharesOf(one.Spread)),
    ]);

    private static string Hottest(ToleranceStudy study) => ToleranceText.Hottest(study) is { } line ? $"{line} " : "";
}
