using CopperPath.Diagnostics;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report.Html;

/// <summary>What the answer rests on: build, limits, relations, assumptions, remarks about the input.</summary>
internal static class BasisSection
{
    private const int MessagesShown = 200;

    public static Markup Of(Review review, ConductorRating rating) => $"""
        <section id="basis" aria-labelledby="basis-head">
        <h2 id="basis-head">What this rests on</h2>
        <h3>Build</h3>
        <dl class="facts">
        {review.Stack!.ThicknessM.Select((m, i) => (Markup)$"<div><dt>Copper layer {i + 1}</dt><dd>{QuantityText.Length(m)}</dd></div>")}
        {review.Stack.DielectricM.Select((m, i) => (Markup)$"<div><dt>Between {i + 1} and {i + 2}</dt><dd>{QuantityText.Length(m)}</dd></div>")}
        <div><dt>Plating of holes</dt><dd>{QuantityText.Length(review.Stack.PlatingM)}</dd></div>
        <div><dt>Resistivity</dt><dd>{QuantityText.Resistivity(review.Stack.ResistivityOhmM)} at {QuantityText.Temperature(review.Brief!.ConductorK)}</dd></div>
        </dl>
        <h3>Assumptions</h3>
        <ul>{review.StatedDefaults.Select(line => (Markup)$"<li>{line}</li>")}</ul>
        <h3>Relations and their sources</h3>
        <ul>
        <li>Judged by {rating.Name}; {rating.Other.Name} is given beside it.</li>
        {Sources(review)}
        <li>Drop, loss and sharing: direct current in the copper the files draw, solved on triangles and proven from both sides. Skin effect is not part of them.</li>
        {SkinSummary.Of(review).Select(note => (Markup)$"<li>{note.Depth} {note.Sharing}</li>")}
        {(review.Heat is { } heat ? (Markup)$"<li>Peak on this board: {string.Join(' ', HeatText.Basis(heat))}</li>" : Markup.Nothing)}
        <li>A plated hole is judged as a conductor as wide as its wall is long around the hole and as thick as the plating.</li>
        <li>Shades: viridis, van der Walt and Smith, 2015 (CC0).</li>
        </ul>
        <h3>Remarks about the input</h3>
        {Messages(review.Diagnostics)}
        </section>
        """;

    /// <summary>Each relation once; where a conductor lies beyond its range, its finding says so.</summary>
    private static IEnumerable<Markup> Sources(Review review) =>
        review.Findings.Select(finding => finding.Assumption.Split(ConductorRating.OutsideRange)[0]).Distinct(StringComparer.Ordinal)
            .Select(assumption => (Markup)$"<li>{assumption}.</li>");

    /// <summary>A report does not say where it was made.</summary>
    private static Diagnostic WithoutFolder(Diagnostic diagnostic) => diagnostic with
    {
        Position = diagnostic.Position with { File = Path.GetFileName(Path.TrimEndingDirectorySeparator(diagnostic.Position.File)) },
    };

    internal static Markup Messages(IReadOnlyList<Diagnostic> diagnostics) => diagnostics.Count == 0
        ? (Markup)$"<p>None.</p>"
        : (Markup)$"""
            <ul class="messages">{diagnostics.OrderByDescending(d => d.Severity).Take(MessagesShown).Select(d => (Markup)$"<li>{WithoutFolder(d).ToString()}</li>")}</ul>
            {(diagnostics.Count > MessagesShown ? (Markup)$"<p>{diagnostics.Count - MessagesShown} more are in results.json.</p>" : Markup.Nothing)}
            """;
}
