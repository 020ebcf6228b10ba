using System.Text;
using CopperPath.Reading.Placement;

namespace CopperPath.Reading.BoardFiles;

/// <summary>Tells the kind of a file from its content alone.</summary>
internal static class ContentSniffer
{
    /// <summary>Bytes looked at: headers of all formats fit.</summary>
    private const int HeadBytes = 64 * 1024;

    private const int HeadLines = 200;

    private static readonly string[] _gerberMarks = ["%FS", "%MO", "%AD", "%AM", "%TF", "%LP", "%IP", "%SF", "%IN"];

    public static FileContent Sniff(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length == 0)
        {
            return FileContent.Empty;
        }

        ReadOnlySpan<byte> head = bytes[..Math.Min(bytes.Length, HeadBytes)];
        if (head.Contains((byte)0))
        {
            return FileContent.Binary;
        }

        string text = Encoding.UTF8.GetString(head).TrimStart('\uFEFF');
        string[] lines = [.. text.Split('\n').Take(HeadLines).Select(l => l.Trim())];
        if (text.TrimStart().StartsWith('{'))
        {
            return IsJobFile(text) ? FileContent.JobFile : FileContent.Text;
        }

        return IsGerber(text, lines) ? FileContent.Gerber
            : IsDrill(lines) ? FileContent.Drill
            : lines.Any(IsNetlistLine) ? FileContent.Netlist
            : lines.Any(IsPlacementHeader) ? FileContent.Placement
            : FileContent.Text;
    }

    private static bool IsJobFile(string text) =>
        text.Contains("\"FilesAttributes\"", StringComparison.Ordinal)
        || text.Contains("\"MaterialStackup\"", StringComparison.Ordinal)
        || text.Contains("\"GeneralSpecs\"", StringComparison.Ordinal);

    private static bool IsGerber(string text, string[] lines) =>
        text.Contains('*', StringComparison.Ordinal)
        && (lines.Any(HasMark) || lines.Any(IsPlottedLine));

    /// <summary>An extended command where commands stand, not one quoted in a sentence: notes on a board quote them.</summary>
    private static bool HasMark(string line) => _gerberMarks.Any(mark =>
        line.StartsWith(mark, StringComparison.Ordinal)
        || line.Contains("*" + mark, StringComparison.Ordinal)
        || line.Contains("%" + mark, StringComparison.Ordinal));

    /// <summary>A coordinate line of the oldest form, which has no extended commands: <c>X100Y200D02*</c>.</summary>
    private static bool IsPlottedLine(string line) =>
        line is ['X' or 'Y' or 'G' or 'D', ..] && line.EndsWith('*') && line.Contains('D', StringComparison.Ordinal)
        && !line.StartsWith("G04", StringComparison.Ordinal);

    private static bool IsDrill(string[] lines) =>
        lines.Contains("M48")
        || (lines.Any(l => l is ['T', >= '0' and <= '9', ..] && !l.Contains(' ', StringComparison.Ordinal))
            && lines.Any(l => l is ['X', '-' or '+' or '.' or (>= '0' and <= '9'), ..] && l.Contains('Y', StringComparison.Ordinal)));

    private static bool IsNetlistLine(string line) =>
        line.StartsWith("C  IPC-D-356", StringComparison.Ordinal)
        || line.StartsWith("P  UNITS", StringComparison.Ordinal)
        || line.StartsWith("P  JOB", StringComparison.Ordinal)
        || (line.Length >= 57 && (line.StartsWith("317", StringComparison.Ordinal) || line.StartsWith("327", StringComparison.Ordinal)));

    /// <summary>Headings of a table of placements: beside names and places, how the parts are turned or on which side they are.</summary>
    private static bool IsPlacementHeader(string line)
    {
        string heading = PlacementColumns.HeadingOf(line);
        return PlacementColumns.Of(TableLine.Split(heading, TableLine.DelimiterOf(heading), out _)) is { Rotation: >= 0 } or { Side: >= 0 };
    }
}
