using System.Text;
using CopperPath.Cli.Report.Html;

namespace CopperPath.Cli.Report;

/// <summary>
/// The report of a review in which nothing was solved. It takes the place of an earlier one, which would look as if it were still
/// true.
/// </summary>
internal static class UndecidedFiles
{
    /// <param name="review">A review without nets.</param>
    /// <param name="brief">The brief it was made from.</param>
    public static IReadOnlyList<OutputFile> Of(Review review, BriefSource brief) =>
    [
        new(HtmlReport.FileName, Encoding.UTF8.GetBytes(Page(review, brief).ToString())),
        new(ResultsJson.FileName, ResultsJson.OfUndecided(review)),
        new(FindingsSarif.FileName, FindingsSarif.Of(review)),
    ];

    private static Markup Page(Review review, BriefSource brief)
    {
        string board = review.Brief?.Board.Name ?? brief.Name;
        string revision = review.Brief?.Board.Revision is { } text ? $", revision {text}" : "";
        return $"""
            {HtmlReport.Head($"{board}{revision}: could not judge")}
            <body>
            <header>
            <p class="product">{Product.NameAndVersion} · review of power copper</p>
            <h1>{board}<span class="revision">{revision}</span></h1>
            </header>
            <main>
            <section id="summary" aria-labelledby="summary-head">
            <h2 id="summary-head">Summary</h2>
            <p class="verdict verdict-open"><span class="sign" aria-hidden="true">?</span><strong>Could not judge</strong> <span>{VerdictWords.Of(review)}</span></p>
            <p>Nothing was solved, so this page has no figures. It takes the place of any earlier report.</p>
            <h3>Remarks about the input</h3>
            {BasisSection.Messages(review.Diagnostics)}
            </section>
            </main>
            <footer><p>{Cautions.Text}</p></footer>
            </body>
            </html>

            """;
    }
}
