namespace CopperPath.Cli.Report.Html;

/// <summary>Head of a column; one of buttons alone is for the screen only and left out in print.</summary>
internal sealed record TableHead(string Text, bool IsNumber = false, bool IsSortable = true, bool IsForScreen = false);

/// <summary>A cell: what it shows and what it sorts by.</summary>
internal sealed record TableCell
{
    public TableCell(Markup shown, string key) => (Shown, Key) = (shown, key);

    /// <param name="shown">Text of the cell.</param>
    /// <param name="value">Number it sorts by; what is not a number sorts last.</param>
    public TableCell(string shown, double value)
        : this((Markup)$"{shown}", value)
    {
    }

    /// <param name="shown">What the cell shows.</param>
    /// <param name="value">Number it sorts by; what is not a number sorts last.</param>
    public TableCell(Markup shown, double value)
        : this(shown, double.IsFinite(value) ? FormattableString.Invariant($"{value:R}") : "")
    {
    }

    public TableCell(string text)
        : this((Markup)$"{text}", text)
    {
    }

    public Markup Shown { get; }

    public string Key { get; }
}

/// <summary>A table whose columns sort at the press of their heads; complete and in a sensible order without the script.</summary>
internal static class ReportTable
{
    public static Markup Of(string caption, IReadOnlyList<TableHead> heads, IEnumerable<IReadOnlyList<TableCell>> rows) => Scroller.Of(caption, $"""
        <table>
        <caption>{caption}</caption>
        <thead><tr>{heads.Select(Head)}</tr></thead>
        <tbody>
        {rows.Select(row => (Markup)$"<tr>{row.Select((cell, c) => Cell(cell, heads[c]))}</tr>\n")}</tbody></table>
        """);

    private static Markup Head(TableHead head) => head.IsSortable
        ? (Markup)$"""<th scope="col" data-sort="{(head.IsNumber ? "number" : "text")}"{Class(head)}>{head.Text}</th>"""
        : (Markup)$"""<th scope="col"{Class(head)}>{head.Text}</th>""";

    private static Markup Cell(TableCell cell, TableHead head) => head.IsSortable
        ? (Markup)$"""<td data-key="{cell.Key}"{Class(head)}>{cell.Shown}</td>"""
        : (Markup)$"<td{Class(head)}>{cell.Shown}</td>";

    private static Markup Class(TableHead head) => head.IsForScreen ? (Markup)$" class=\"screen-only\""
        : head.IsNumber && head.IsSortable ? (Markup)$" class=\"number-cell\"" : Markup.Nothing;
}
