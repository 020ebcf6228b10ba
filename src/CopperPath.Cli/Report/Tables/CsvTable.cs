using System.Globalization;
using System.Text;

namespace CopperPath.Cli.Report.Tables;

/// <summary>
/// Comma-separated values (RFC 4180): one header line with the unit in every name, a dot for the decimal sign, CR LF.
/// Numbers are written so that reading them back gives the same number.
/// </summary>
public sealed class CsvTable
{
    private readonly StringBuilder _text = new();
    private readonly int _columns;

    public CsvTable(params string[] header)
    {
        _columns = header.Length;
        Add([.. header]);
    }

    /// <param name="cells">Text, numbers or null for an empty cell; as many as the header has.</param>
    public void Add(params object?[] cells)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(cells.Length, _columns);
        _text.AppendJoin(',', cells.Select(TextOf)).Append("\r\n");
    }

    public byte[] ToBytes() => Encoding.UTF8.GetBytes(_text.ToString());

    private static string TextOf(object? cell) => cell switch
    {
        null => "",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        int number => number.ToString(CultureInfo.InvariantCulture),
        _ => Quoted(cell.ToString() ?? ""),
    };

    private static string Quoted(string text) => text.AsSpan().IndexOfAny(",\"\r\n") < 0
        ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
