using System.Globalization;
using System.Text;
using CopperPath.Brief.Yaml;
using CopperPath.Diagnostics;
using CopperPath.Files;

namespace CopperPath.Brief;

/// <summary>
/// A table of current against time beside the brief: a line of headings, <c>time s, factor</c> or <c>time s, current A</c>, then two
/// numbers a line, kept apart by a comma or a semicolon.
/// </summary>
internal static class LoadTable
{
    private const int MostBytes = 1_000_000;
    private const double MostFactor = 1000;

    /// <param name="node">Where the brief names the table.</param>
    /// <param name="file">Its name, relative to the brief.</param>
    /// <param name="enteringA">Current that amperes are related to; null where only factors may stand.</param>
    /// <param name="sink">Where faults go.</param>
    public static List<LoadPoint>? Read(YamlNode node, string file, double? enteringA, DiagnosticSink sink)
    {
        string path = Path.Combine(Path.GetDirectoryName(node.Position.File) ?? "", file);
        if (RegularFile.Read(path, MostBytes, out FileRefusal? refusal) is not { } bytes)
        {
            sink.Error(BriefCodes.LoadTable, node.Position, refusal!.Found, "a table of current against time beside the brief");
            return null;
        }

        string[] lines = Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF').Split('\n');
        string[] heads = CellsOf(lines[0]);
        bool isAmperes = heads is ["time s", "current A"];
        if (!isAmperes && heads is not ["time s", "factor"])
        {
            sink.Error(BriefCodes.LoadTable, new SourcePosition(path, 1, 1), $"the headings '{string.Join(", ", heads)}'", "`time s, factor` or `time s, current A`");
            return null;
        }

        if (isAmperes && enteringA is null)
        {
            sink.Error(BriefCodes.LoadTable, new SourcePosition(path, 1, 1), "amperes for all currents together", "`time s, factor`; amperes belong to one stretch");
            return null;
        }

        List<LoadPoint> points = [];
        for (int line = 1; line < lines.Length && points.Count <= LoadProfileReader.MostPoints; line++)
        {
            if (string.IsNullOrWhiteSpace(lines[line]))
            {
                continue;
            }

            if (CellsOf(lines[line]) is not [var time, var load] || NumberOf(time) is not { } timeS || NumberOf(load) is not { } value
                || value / (isAmperes ? enteringA!.Value : 1) > MostFactor)
            {
                sink.Error(BriefCodes.LoadTable, new SourcePosition(path, line + 1, 1), $"'{lines[line].Trim()}'",
                    "two numbers that are not negative, the second at most 1000 times what is stated");
                return null;
            }

            points.Add(new LoadPoint(timeS, value / (isAmperes ? enteringA!.Value : 1)));
        }

        if (points.Count == 0)
        {
            sink.Error(BriefCodes.LoadTable, SourcePosition.WholeFile(path), "no point", "at least one line of numbers");
        }

        return points;
    }

    private static string[] CellsOf(string line) => [.. line.Split(line.Contains(';') ? ';' : ',').Select(cell => cell.Trim())];

    private static double? NumberOf(string cell) =>
        double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number >= 0 && double.IsFinite(number) ? number : null;
}
