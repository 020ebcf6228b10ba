using System.Globalization;
using System.Text;
using CopperPath.OutsideText;

namespace CopperPath.Cli.Report.Tables;

/// <summary>
/// Comma-separated values (RFC 4180): one header line with the unit in every name, a dot for the decimal sign, CR LF.
/// Numbers are written so that reading them back gives the same number; one that is not finite is an empty cell.
/// </summary>
public sealed class CsvTable
{
    private const string FormulaSigns = "=+-@\uFF1D\uFF0B\uFF0D\uFF20";

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
        double number when !double.IsFinite(number) => "",
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        int number => number.ToString(CultureInfo.InvariantCulture),
        _ => Quoted(Defused(VisibleText.Of(cell.ToString() ?? "", VisibleText.MostOfSentence))),
    };

    /// <summary>
    /// A text that a spreadsheet would take for a formula, such as the net <c>+12V</c> or a name that starts a program,
    /// gets an apostrophe before it; a number written as text stays one. Signs in full width count too. Common practice.
    /// </summary>
    private static string Defused(string text) =>
        text.AsSpan().TrimStart() is [var first, ..] && FormulaSigns.Contains(first)
            && !double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out _)
            ? $"'{text}" : text;

    private static string Quoted(string text) => text.AsSpan().IndexOfAny(",\"\r\n") < 0
        ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
