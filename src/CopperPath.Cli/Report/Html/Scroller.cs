namespace CopperPath.Cli.Report.Html;

/// <summary>A box of its own for what may be wider than the page; where it is, the note above it shows.</summary>
internal static class Scroller
{
    /// <param name="label">What is in it, for those who do not see it.</param>
    /// <param name="content">One element.</param>
    /// <param name="look">Further classes.</param>
    public static Markup Of(string label, Markup content, string look = "") => $"""
        <p class="note scroll-note">Wider than the page: scroll it sideways, or with the arrow keys once it has the focus.</p>
        <div class="scroller {look}" tabindex="0" role="region" aria-label="{label}">{content}</div>
        """;
}
