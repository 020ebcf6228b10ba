using System.Globalization;
using System.Text;

namespace CopperPath.OutsideText;

/// <summary>
/// Text for people to read that may come from outside: net, pin, part and file names, attributes, the brief, arguments.
/// What would act instead of being seen (a terminal's control characters, a change of direction, a line break that
/// forges a line) is written out as <c>\u{202E}</c>. Names keep every character inside; only what is shown passes here.
/// </summary>
public static class VisibleText
{
    /// <summary>Characters of a name, or of what a remark quotes, beyond which it is cut: nobody reads more.</summary>
    public const int MostCharacters = 1_000;

    /// <summary>The same for a sentence, which quotes several.</summary>
    public const int MostOfSentence = 8_000;

    /// <summary>The text with everything unseen written out; what is already visible comes back as it is.</summary>
    /// <param name="text">Any text, broken surrogate pairs included.</param>
    /// <param name="mostCharacters">Characters kept at most; what is cut is counted in a mark at the end.</param>
    public static string Of(string text, int mostCharacters = MostCharacters)
    {
        int kept = CutAt(text, mostCharacters);
        string seen = Escaped(text.AsSpan(0, kept), keepsLines: false) ?? text[..kept];
        return kept == text.Length ? seen : FormattableString.Invariant($"{seen}\u2026 ({text.Length - kept} more characters)");
    }

    /// <summary>The same uncut, for a text whose own line breaks and tabs belong to it, such as the brief quoted in a report.</summary>
    public static string OfLines(string text) => Escaped(text, keepsLines: true) ?? text;

    /// <summary>
    /// Whether a character is seen where it stands. Unseen are controls, formats (directions and widths of zero among
    /// them), separators of lines and paragraphs, half surrogate pairs, noncharacters, and what renderers may leave
    /// out: <c>Default_Ignorable_Code_Point</c> of the Unicode Character Database (UAX #44), from memory.
    /// </summary>
    /// <param name="codePoint">A Unicode code point, or half a surrogate pair.</param>
    public static bool IsSeen(int codePoint) =>
        codePoint is >= 0x20 and < 0x7F
        || (!IsIgnorable(codePoint) && (codePoint & 0xFFFE) != 0xFFFE && codePoint is not (>= 0xFDD0 and <= 0xFDEF)
            && CharUnicodeInfo.GetUnicodeCategory(codePoint) is not (UnicodeCategory.Control or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate));

    /// <summary>Where to cut a text that is to have at most so many characters: never inside a surrogate pair.</summary>
    public static int CutAt(string text, int mostCharacters) =>
        text.Length <= mostCharacters ? text.Length
        : mostCharacters > 0 && char.IsSurrogatePair(text[mostCharacters - 1], text[mostCharacters]) ? mostCharacters - 1
        : mostCharacters;

    /// <summary>The code point that begins at a place, and its length; half a surrogate pair counts as one.</summary>
    internal static int CodePointAt(ReadOnlySpan<char> text, int index, out int length)
    {
        bool isPair = index + 1 < text.Length && char.IsSurrogatePair(text[index], text[index + 1]);
        length = isPair ? 2 : 1;
        return isPair ? char.ConvertToUtf32(text[index], text[index + 1]) : text[index];
    }

    /// <summary>Null where nothing has to be written out, which is nearly always.</summary>
    private static string? Escaped(ReadOnlySpan<char> text, bool keepsLines)
    {
        StringBuilder? written = null;
        for (int i = 0; i < text.Length;)
        {
            int codePoint = CodePointAt(text, i, out int length);
            if (!IsSeen(codePoint) && !(keepsLines && IsOfLines(text, i)))
            {
                written ??= new StringBuilder(text.Length + 16).Append(text[..i]);
                written.Append("\\u{").Append(codePoint.ToString("X", CultureInfo.InvariantCulture)).Append('}');
            }
            else
            {
                written?.Append(text.Slice(i, length));
            }

            i += length;
        }

        return written?.ToString();
    }

    /// <summary>A line break as files have it, or a tab; a return alone would take the place of its line.</summary>
    private static bool IsOfLines(ReadOnlySpan<char> text, int index) =>
        text[index] is '\n' or '\t' || (text[index] == '\r' && index + 1 < text.Length && text[index + 1] == '\n');

    private static bool IsIgnorable(int codePoint) => codePoint
        is 0x034F or 0x115F or 0x1160 or 0x17B4 or 0x17B5 or (>= 0x180B and <= 0x180F) or 0x2065
        or 0x3164 or (>= 0xFE00 and <= 0xFE0F) or 0xFFA0 or (>= 0xFFF0 and <= 0xFFF8) or (>= 0xE0000 and <= 0xE0FFF);
}
