using System.Globalization;
using System.Text.RegularExpressions;

namespace CopperPath.Reading.Netlist;

/// <summary>The fields of one point record, cut from its line. Lengths are counts of the file's unit.</summary>
internal sealed partial record NetlistColumns(
    string Net,
    string Component,
    string Pin,
    bool IsMidNet,
    long? HoleCounts,
    bool? IsPlated,
    int AccessLayer,
    long XCounts,
    long YCounts)
{
    /// <summary>Fields by their columns: X in column 42, Y in column 50. Null when those do not hold.</summary>
    public static NetlistColumns? Aligned(string line)
    {
        if (line.Length < 57 || line[41] != 'X' || line[49] != 'Y'
            || Count(line.AsSpan(42, 7)) is not { } x || Count(line.AsSpan(50, 7)) is not { } y)
        {
            return null;
        }

        bool hasHole = line[32] == 'D';
        return new NetlistColumns(
            Field(line, 4, 17),
            Field(line, 21, 26),
            Field(line, 28, 31),
            line[31] == 'M',
            hasHole ? Count(line.AsSpan(33, 4)) : null,
            PlatedFlag(line[37]),
            line[38] == 'A' && Count(line.AsSpan(39, 2)) is { } access ? (int)access : 0,
            x,
            y);
    }

    /// <summary>Fields found by their leading letters, for writers whose columns drift.</summary>
    public static NetlistColumns? ByLetters(string line)
    {
        Match match = Lettered().Match(line);
        if (!match.Success
            || Count(match.Groups["x"].ValueSpan) is not { } x || Count(match.Groups["y"].ValueSpan) is not { } y)
        {
            return null;
        }

        return new NetlistColumns(
            match.Groups["net"].Value,
            match.Groups["part"].Value,
            match.Groups["pin"].Value,
            match.Groups["mid"].Success,
            match.Groups["hole"].Success ? Count(match.Groups["hole"].ValueSpan) : null,
            match.Groups["plated"].Success ? match.Groups["plated"].Value == "P" : null,
            match.Groups["access"].Success && Count(match.Groups["access"].ValueSpan) is { } access ? (int)access : 0,
            x,
            y);
    }

    private static string Field(string line, int first, int last) => line[(first - 1)..last].Trim();

    private static bool? PlatedFlag(char flag) => flag switch
    {
        'P' => true,
        'U' => false,
        _ => null,
    };

    private static long? Count(ReadOnlySpan<char> text) =>
        long.TryParse(text.Trim(), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value) ? value : null;

    [GeneratedRegex(
        @"^\d{3}(?<net>\S{1,14})\s+(?:(?<part>[^\s-]{1,6})\s*-(?<pin>[A-Z0-9]{1,4}))?\s*(?<mid>M)?\s*(?:D(?<hole>\d{4}))?(?<plated>[PU])?\s*(?:A(?<access>\d{2}))?\s*X(?<x>[+-]?\s*\d{1,7})\s*Y(?<y>[+-]?\s*\d{1,7})",
        RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Lettered();
}
