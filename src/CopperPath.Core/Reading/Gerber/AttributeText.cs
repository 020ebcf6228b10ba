using System.Globalization;
using System.Text;

namespace CopperPath.Reading.Gerber;

/// <summary>
/// The text of an attribute command: fields between commas, UTF-8, line breaks dropped, <c>\uXXXX</c> for any
/// character (a comma inside a field must be written so).
/// </summary>
internal static class AttributeText
{
    /// <summary>Characters of <c>\uXXXX</c>.</summary>
    private const int EscapeLength = 6;

    /// <summary>The name and then the values.</summary>
    public static string[] Fields(ReadOnlySpan<byte> text)
    {
        string whole = Encoding.UTF8.GetString(text).Replace("\r", "", StringComparison.Ordinal)
            .Replace("\n", "", StringComparison.Ordinal);
        string[] fields = whole.Split(',');
        for (int i = 0; i < fields.Length; i++)
        {
            fields[i] = Unescaped(fields[i]);
        }

        return fields;
    }

    /// <summary>
    /// A backslash that begins no escape stays as it is: older files did not escape. Half a surrogate pair is no
    /// character, so an escape of one alone is none.
    /// </summary>
    private static string Unescaped(string text)
    {
        if (!text.Contains('\\', StringComparison.Ordinal))
        {
            return text;
        }

        var plain = new StringBuilder(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            if (IsEscape(text, i, out char unit) && !char.IsSurrogate(unit))
            {
                plain.Append(unit);
                i += EscapeLength - 1;
            }
            else if (IsEscape(text, i, out char high) && IsEscape(text, i + EscapeLength, out char low) && char.IsSurrogatePair(high, low))
            {
                plain.Append(high).Append(low);
                i += (2 * EscapeLength) - 1;
            }
            else
            {
                plain.Append(text[i]);
            }
        }

        return plain.ToString();
    }

    private static bool IsEscape(string text, int index, out char unit)
    {
        bool isEscape = index + EscapeLength <= text.Length && text[index] == '\\' && text[index + 1] == 'u';
        bool isRead = ushort.TryParse(
            isEscape ? text.AsSpan(index + 2, 4) : "", NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out ushort number);
        unit = (char)number;
        return isRead;
    }

    /// <summary>
    /// The attribute inside a comment, such as <c>#@! TF.Part,Single</c> or <c>@! TD</c>; false for any other comment.
    /// </summary>
    public static bool TryFindInComment(ReadOnlySpan<byte> comment, out int start)
    {
        start = SkipBlanks(comment, 0);
        if (start < comment.Length && comment[start] == (byte)'#')
        {
            start = SkipBlanks(comment, start + 1);
        }

        if (!comment[start..].StartsWith("@!"u8))
        {
            return false;
        }

        start = SkipBlanks(comment, start + 2);
        ReadOnlySpan<byte> text = comment[start..];
        return text.Length >= 2 && text[0] == (byte)'T'
            && text[1] is (byte)'F' or (byte)'A' or (byte)'O' or (byte)'D';
    }

    private static int SkipBlanks(ReadOnlySpan<byte> text, int index)
    {
        while (index < text.Length && text[index] <= (byte)' ')
        {
            index++;
        }

        return index;
    }
}
