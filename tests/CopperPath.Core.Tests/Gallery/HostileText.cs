using System.Globalization;
using System.Text;

namespace CopperPath.Core.Tests.Gallery;

/// <summary>Names that a file may bring and nobody would give: seeded, so that a failure can be repeated.</summary>
public static class HostileText
{
    /// <summary>
    /// Characters that order text from right to left or back: Unicode Standard Annex #9, table of explicit directional
    /// formatting characters and implicit marks (section 2; from memory).
    /// </summary>
    public const string Directions = "\u061C\u200E\u200F\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069";

    private static readonly string[] s_pieces =
    [
        "\0", "\a", "\b", "\t", "\n", "\r", "\r\n", "\v", "\f", "\u001b[2J", "\u001b]0;x\u0007", "\u007f", "\u0085", "\u009b31m", "\u2028", "\u2029",
        "\u00AD", "\u200B", "\u200C", "\u200D", "\u2060", "\uFEFF", "\uFFF9", "\uFFFE", "\uFFFF", "\uFDD0", "\u3164", "\uFE0F", "\U000E0041", "\U0001F600",
        ": ", " #", "- ", "? ", "'", "\"", "''", "\\", "\\n", "\\u000A", "%", "&a", "*a", "!t", "|", ">", "{", "}", "[", "]", ",", "`", "@", "~", "null", "=", "+", "-",
        "waivers:", "copperpath: 2", "...", "---", "<b>", "</script>", "&amp;", ";", "=cmd|' /C calc'!A0", "Verdict: all within limits.",
        "VCC", "GND", " ", "\u00A0", "\u00C4\u00B5\u03A9", "e\u0301", "\u05E9\u05DC", "\u6F22\u5B57", "12", "0x1", ".5",
        .. Directions.Select(c => c.ToString()),
    ];

    /// <summary>As many names as asked for, of one to ten pieces each.</summary>
    /// <param name="seed">Of the names.</param>
    /// <param name="count">How many.</param>
    /// <param name="withHalfPairs">Whether halves of surrogate pairs, which no encoding has, are among the pieces.</param>
    public static IEnumerable<string> Names(int seed, int count, bool withHalfPairs = false)
    {
        Random random = new(seed);
        for (int n = 0; n < count; n++)
        {
            StringBuilder name = new();
            for (int pieces = random.Next(1, 11); pieces > 0; pieces--)
            {
                name.Append(withHalfPairs && random.Next(10) == 0 ? ((char)random.Next(0xD800, 0xE000)).ToString() : s_pieces[random.Next(s_pieces.Length)]);
            }

            yield return name.ToString();
        }
    }

    /// <summary>
    /// Characters of a text that act on whoever shows it: by general category (controls, formats, separators of lines and
    /// paragraphs, half surrogate pairs; The Unicode Standard, section 4.5), without those a text may hold.
    /// </summary>
    public static IReadOnlyList<string> ActingIn(string text, string allowed = "") => [.. Enumerable.Range(0, text.Length)
        .Where(i => !allowed.Contains(text[i], StringComparison.Ordinal))
        .Where(i => CharUnicodeInfo.GetUnicodeCategory(text, i) is UnicodeCategory.Control or UnicodeCategory.Format
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator
            || (char.IsSurrogate(text[i]) && !char.IsSurrogatePair(text, i) && !(i > 0 && char.IsSurrogatePair(text, i - 1))))
        .Select(i => $"U+{(int)text[i]:X4} at {i}")];

    /// <summary>A name as a field of a Gerber attribute: every unit as <c>\uXXXX</c> (layer format specification, section on attributes; from memory).</summary>
    public static string InGerber(string name) => string.Concat(name.Select(c => $"\\u{(int)c:X4}"));
}
