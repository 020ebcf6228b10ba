using CopperPath.OutsideText;

namespace CopperPath.Cli.Report;

/// <summary>
/// Columns as wide as their widest entry, numbers to the right, a rule under the head. Where a narrow window asks for it, text is
/// cut short in the widest text column, numbers never.
/// </summary>
public sealed class TextTable(IReadOnlyList<string> heads, IReadOnlyList<bool> isNumber)
{
    private const int Gap = 2;
    private const int LeastWidth = 12;

    /// <summary>The longest of our own cells, why a file was taken for what it is, is shorter.</summary>
    private const int MostCharacters = 240;
    private const string Ellipsis = "...";

    private readonly List<IReadOnlyList<string>> _rows = [];

    /// <summary>A row; its cells are made visible here, where their widths are measured.</summary>
    public void Add(IReadOnlyList<string> row) => _rows.Add([.. row.Select(cell => VisibleText.Of(cell, MostCharacters))]);

    /// <param name="writer">Where to.</param>
    /// <param name="width">Characters in a line of the window, or null where nobody watches.</param>
    public void Write(TextWriter writer, int? width = null)
    {
        int[] widths = [.. heads.Select((head, c) => _rows.Select(row => row[c].Length).Append(head.Length).Max())];
        Narrow(widths, width);
        writer.WriteLine(Line(heads, widths));
        writer.WriteLine(string.Join(new string(' ', Gap), widths.Select(width => new string('-', width))));
        foreach (IReadOnlyList<string> row in _rows)
        {
            writer.WriteLine(Line(row, widths));
        }
    }

    private void Narrow(int[] widths, int? width)
    {
        int tooMuch = widths.Sum() + (Gap * (widths.Length - 1)) - (width ?? int.MaxValue);
        int widest = Enumerable.Range(0, widths.Length).Where(c => !isNumber[c]).DefaultIfEmpty(0).MaxBy(c => widths[c]);
        if (tooMuch > 0 && !isNumber[widest])
        {
            widths[widest] = Math.Max(Math.Min(LeastWidth, widths[widest]), widths[widest] - tooMuch);
        }
    }

    private string Line(IReadOnlyList<string> cells, int[] widths) => string.Join(new string(' ', Gap),
        cells.Select((cell, c) => isNumber[c] ? cell.PadLeft(widths[c]) : Fitted(cell, widths[c]))).TrimEnd();

    private static string Fitted(string cell, int width) =>
        cell.Length <= width ? cell.PadRight(width) : (cell[..VisibleText.CutAt(cell, width - Ellipsis.Length)] + Ellipsis).PadRight(width);
}
