using System.Security.Cryptography;
using CopperPath.Reading.BoardFiles;

namespace CopperPath.Cli.Report.Html;

/// <summary>Everything needed to repeat the run: command, version, fingerprints of the inputs, the brief itself.</summary>
internal static class RepeatSection
{
    public static Markup Of(Review review, BriefSource brief) => $"""
        <section id="repeat" aria-labelledby="repeat-head">
        <h2 id="repeat-head">To repeat this run</h2>
        <p>With {Product.NameAndVersion}, the files below in <code>{review.Brief!.Board.Files}</code> beside the brief, and this command:</p>
        <pre tabindex="0" aria-label="Command"><code>copperpath check {brief.Name}</code></pre>
        <p>The same inputs give this page byte for byte, whatever the number of threads.</p>
        {ReportTable.Of("Inputs", [new("File"), new("Taken for"), new("Known from"), new("SHA-256", IsSortable: false)],
            [[new(brief.Name), new("the brief"), new("the command"), Hash(brief.Sha256)], .. review.Board!.Files.Select(Row)])}
        <h3>Drill numbers</h3>
        <ul>{review.Board.DrillFormats.Select(format => (Markup)$"<li>{format}</li>")}</ul>
        <h3>The brief</h3>
        <pre tabindex="0" aria-label="The brief"><code>{brief.Text}</code></pre>
        </section>
        """;

    private static IReadOnlyList<TableCell> Row(IdentifiedFile file) =>
    [
        new(file.File.Name),
        new(FileRoleWords.Of(file)),
        new((Markup)$"<small>{file.Reason}</small>", file.Reason),
        Hash(Convert.ToHexStringLower(SHA256.HashData(file.File.Bytes.Span))),
    ];

    private static TableCell Hash(string hash) => new((Markup)$"""<code class="hash">{hash}</code>""", "");
}
