namespace CopperPath.Cli.Report;

/// <summary>Columns as wide as their widest entry, numbers to the right, a rule under the head.</summary>
public sealed class TextTable(IReadOnlyList<string> heads, IReadOnlyList<bool> isNumber)
{
    private readonly List<IReadOnlyList<string>> _rows = [];

    public void Add(IReadOnlyList<string> row) => _rows.Add(row);

    public void Write(TextWriter writer)
    {
        int[] widths = [.. heads.Select((head, c) => _rows.Select(row => row[c].Length).Append(head.Length).Max())];
        writer.WriteLine(Line(heads, widths));
        writer.WriteLine(string.Join("  ", widths.Select(width => new string('-', width))));
        foreach (IReadOnlyList<string> row in _rows)
        {
            writer.WriteLine(Line(row, widths));
        }
    }

    private string Line(IReadOnlyList<string> cells, int[] widths) => string.Join("  ",
        cells.Select((cell, c) => isNumber[c] ? cell.PadLeft(widths[c]) : cell.PadRight(widths[c]))).TrimEnd();
}
