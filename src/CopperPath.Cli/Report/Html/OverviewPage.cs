using System.Text;

namespace CopperPath.Cli.Report.Html;

/// <summary>One line of the page: a brief and what came of it.</summary>
/// <param name="Brief">Path of the brief as it was given.</param>
/// <param name="Folder">Folder of its report, seen from the page; null where none was written.</param>
/// <param name="Verdict">Its verdict in words.</param>
/// <param name="Worst">Its worst finding in one sentence, or null.</param>
internal sealed record OverviewLine(string Brief, string? Folder, string Verdict, string? Worst)
{
    /// <summary>The sentence of the finding that stands first of those that count, by margin.</summary>
    public static string? WorstOf(Review review) => review.Findings.Where(finding => finding.Counts)
        .MinBy(finding => finding.Measure?.MarginRatio ?? double.NegativeInfinity)?.Sentence;
}

/// <summary>The page that leads to the reports of several briefs judged in one run.</summary>
internal static class OverviewPage
{
    public const string FileName = "index.html";

    public static OutputFile Of(IReadOnlyList<OverviewLine> lines)
    {
        Markup page = $"""
            {HtmlReport.Head($"{lines.Count} reviews of power copper")}
            <body>
            <header>
            <p class="product">{Product.NameAndVersion} · reviews of power copper</p>
            <h1>{lines.Count} reviews</h1>
            </header>
            <main>
            <section id="summary" aria-label="Reviews">
            {ReportTable.Of("Reviews of one run, in the order asked for", [new("Brief", IsSortable: false), new("Verdict", IsSortable: false), new("Worst finding", IsSortable: false)], lines.Select(Row))}
            </section>
            </main>
            <footer><p>{Cautions.Text}</p></footer>
            </body>
            </html>

            """;
        return new OutputFile(FileName, Encoding.UTF8.GetBytes(page.ToString()));
    }

    private static TableCell[] Row(OverviewLine line) =>
    [
        new(line.Folder is { } folder ? (Markup)$"""<a href="{Link(folder)}">{line.Brief}</a>""" : $"{line.Brief}", ""),
        new(line.Verdict),
        new(line.Worst ?? ""),
    ];

    private static string Link(string folder) =>
        string.Join('/', [.. folder.Split('/', '\\').Select(part => part == ".." ? part : Uri.EscapeDataString(part)), HtmlReport.FileName]);
}
