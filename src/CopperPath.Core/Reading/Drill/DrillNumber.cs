using System.Globalization;
using CopperPath.Quantities;

namespace CopperPath.Reading.Drill;

/// <summary>
/// A number as written: sign, digits, and where the decimal point stands. It becomes a length only together with a
/// unit and, when it has no point, a format; the one rounding happens there.
/// </summary>
/// <param name="IsNegative">True after a minus sign.</param>
/// <param name="Digits">All digits without the point.</param>
/// <param name="DecimalsWritten">Digits after a written point, or -1 when there is no point.</param>
internal readonly record struct DrillNumber(bool IsNegative, string Digits, int DecimalsWritten)
{
    /// <summary>More digits than any drill machine resolves; keeps the arithmetic inside 128 bits.</summary>
    private const int MaxDigits = 18;

    public bool HasPoint => DecimalsWritten >= 0;

    /// <summary>Reads <c>[+-]digits[.digits]</c>; null when the text is anything else.</summary>
    public static DrillNumber? Parse(ReadOnlySpan<char> text)
    {
        bool negative = text is ['-', ..];
        if (text is ['+' or '-', ..])
        {
            text = text[1..];
        }

        int point = text.IndexOf('.');
        string digits = point < 0 ? text.ToString() : string.Concat(text[..point], text[(point + 1)..]);
        if (digits.Length is 0 or > MaxDigits || digits.AsSpan().ContainsAnyExceptInRange('0', '9'))
        {
            return null;
        }

        return new DrillNumber(negative, digits, point < 0 ? -1 : digits.Length - point);
    }

    /// <summary>Length of a number that has a point, or of one read as if a point stood at its end.</summary>
    public long PlainNm(DrillUnit unit) => Scaled(Digits, Math.Max(DecimalsWritten, 0), unit);

    /// <summary>
    /// Length of a number without a point. Null when trailing zeros are omitted and there are more digits than the
    /// format holds: the place of the point is then unknown.
    /// </summary>
    public long? FormattedNm(DrillFormat format)
    {
        int width = format.IntegerDigits + format.DecimalDigits;
        if (format.Zeros == OmittedZeros.Leading)
        {
            return Scaled(Digits, format.DecimalDigits, format.Unit);
        }

        return Digits.Length > width ? null : Scaled(Digits.PadRight(width, '0'), format.DecimalDigits, format.Unit);
    }

    private long Scaled(string digits, int decimals, DrillUnit unit)
    {
        Int128 numerator = Int128.Parse(digits, CultureInfo.InvariantCulture)
            * (unit == DrillUnit.Inch ? Units.NmPerInch : Units.NmPerMm);
        Int128 divisor = 1;
        for (int i = 0; i < decimals; i++)
        {
            divisor *= 10;
        }

        // Round half away from zero, so that mirrored boards stay mirrored.
        Int128 nm = (numerator + (divisor / 2)) / divisor;
        long bounded = (long)Int128.Min(nm, long.MaxValue);
        return IsNegative ? -bounded : bounded;
    }
}
