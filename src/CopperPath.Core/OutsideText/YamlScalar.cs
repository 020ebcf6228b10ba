using System.Globalization;
using System.Text;

namespace CopperPath.OutsideText;

/// <summary>A text as one quoted YAML scalar on one line, whatever stands in it: reading it gives the same text back.</summary>
public static class YamlScalar
{
    /// <summary>
    /// In single quotes where every character is seen, else in double quotes with escapes (YAML 1.2.2, sections 7.3.2
    /// and 5.7). Half a surrogate pair is no character of any YAML stream and becomes U+FFFD.
    /// </summary>
    public static string Quoted(string text)
    {
        StringBuilder escaped = new("\"");
        bool isPlain = true;
        for (int i = 0; i < text.Length;)
        {
            int codePoint = VisibleText.CodePointAt(text, i, out int length);
            i += length;
            isPlain &= VisibleText.IsSeen(codePoint);
            Append(escaped, codePoint);
        }

        return isPlain ? $"'{text.Replace("'", "''", StringComparison.Ordinal)}'" : escaped.Append('"').ToString();
    }

    private static void Append(StringBuilder escaped, int codePoint)
    {
        if (codePoint is '"' or '\\')
        {
            escaped.Append('\\').Append((char)codePoint);
        }
        else if (codePoint is >= 0xD800 and <= 0xDFFF)
        {
            escaped.Append("\\uFFFD");
        }
        else if (VisibleText.IsSeen(codePoint))
        {
            escaped.Append(char.ConvertFromUtf32(codePoint));
        }
        else
        {
            bool isLong = codePoint > 0xFFFF;
            escaped.Append(isLong ? "\\U" : "\\u").Append(codePoint.ToString(isLong ? "X8" : "X4", CultureInfo.InvariantCulture));
        }
    }
}
