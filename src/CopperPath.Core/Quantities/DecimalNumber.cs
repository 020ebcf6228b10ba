using System.Globalization;

namespace CopperPath.Quantities;

/// <summary>The decimal number at the start of a quantity: sign, digits, point, exponent; nothing of any culture.</summary>
internal static class DecimalNumber
{
    /// <summary>The minus sign of typeset numbers, such as this program's own; the keyboard has only a hyphen.</summary>
    private const char Minus = '\u2212';

    /// <summary>Index just after the number the text starts with, 0 when it starts with none.</summary>
    public static int End(string text)
    {
        int i = text.Length > 0 && IsSign(text[0]) ? 1 : 0;
        int wholeEnd = SkipDigits(text, i);
        int digits = wholeEnd - i;
        i = wholeEnd;
        if (i < text.Length && text[i] == '.')
        {
            int fractionEnd = SkipDigits(text, i + 1);
            digits += fractionEnd - i - 1;
            i = fractionEnd;
        }

        return digits == 0 ? 0 : SkipExponent(text, i);
    }

    /// <summary>
    /// The number times ten to the given power, rounded once; null when it overflows, or when digits other than zero
    /// would vanish.
    /// </summary>
    public static double? Read(string number, int powerOfTen)
    {
        number = number.Replace(Minus, '-');
        int exponentMark = number.AsSpan().IndexOfAny('e', 'E');
        ReadOnlySpan<char> mantissa = exponentMark < 0 ? number : number.AsSpan(0, exponentMark);
        int ownExponent = 0;
        if (exponentMark >= 0 && !int.TryParse(
                number.AsSpan(exponentMark + 1), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out ownExponent))
        {
            return null;
        }

        string scaled = string.Create(CultureInfo.InvariantCulture, $"{mantissa}E{(long)ownExponent + powerOfTen}");
        if (!double.TryParse(scaled, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            || !double.IsFinite(value))
        {
            return null;
        }

        return value == 0 && mantissa.ContainsAnyInRange('1', '9') ? null : value;
    }

    private static bool IsSign(char c) => c is '+' or '-' or Minus;

    private static int SkipExponent(string text, int start)
    {
        if (start >= text.Length || text[start] is not ('e' or 'E'))
        {
            return start;
        }

        int digitsStart = start + 1 < text.Length && IsSign(text[start + 1]) ? start + 2 : start + 1;
        int end = SkipDigits(text, digitsStart);
        return end == digitsStart ? start : end;
    }

    private static int SkipDigits(string text, int start)
    {
        int i = Math.Min(start, text.Length);
        while (i < text.Length && char.IsAsciiDigit(text[i]))
        {
            i++;
        }

        return i;
    }
}
