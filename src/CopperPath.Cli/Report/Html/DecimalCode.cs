using System.Globalization;

namespace CopperPath.Cli.Report.Html;

/// <summary>
/// A number of three significant decimal digits in 16 bits, without loss: 0 for no value, 1 for zero, and from 2 on 900
/// mantissas (100 to 999) for each power of ten from -36 up. Rounded as the text output rounds, so that what the
/// report shows at a point is what every other output says there.
/// </summary>
internal static class DecimalCode
{
    public const ushort None = 0;
    private const ushort Zero = 1;
    private const int FirstExponent = -36;
    private const int LastExponent = 35;

    /// <summary>How near half a digit binary arithmetic can not be trusted to round; a thousand times its error.</summary>
    private const double NearHalf = 1e-9;

    private static readonly double s_log10Of2 = Math.Log10(2);

    /// <summary>What brings a value of each power of ten, from one below the first on, to three digits before the point.</summary>
    private static readonly double[] s_toHundreds = [.. Enumerable.Range(FirstExponent - 1, LastExponent - FirstExponent + 3)
        .Select(power => double.Parse($"1E{2 - power}", CultureInfo.InvariantCulture))];

    /// <param name="value">Not negative; what is negative or not finite has no code.</param>
    public static ushort Of(double value)
    {
        if (!double.IsFinite(value) || value < 0)
        {
            return None;
        }

        // The decimal exponent, or one less: a power of two is never above the number.
        int exponent = value == 0 ? int.MinValue : (int)Math.Floor(Math.ILogB(value) * s_log10Of2);
        if (exponent < FirstExponent - 1 || exponent > LastExponent)
        {
            return exponent < 0 ? Zero : None;
        }

        double digits = value * s_toHundreds[exponent - FirstExponent + 1];
        if (digits >= 1000)
        {
            exponent++;
            digits = value * s_toHundreds[exponent - FirstExponent + 1];
        }

        double whole = Math.Floor(digits);
        double part = digits - whole;
        return Math.Abs(part - 0.5) < NearHalf ? AsFormatted(value) : Code(exponent, (int)whole + (part > 0.5 ? 1 : 0));
    }

    /// <summary>By the framework's own formatting, which decides by the exact binary value.</summary>
    private static ushort AsFormatted(double value)
    {
        // "1.23E+004": one digit, the point, two digits, E, sign and three digits.
        Span<char> text = stackalloc char[16];
        value.TryFormat(text, out int length, "E2", CultureInfo.InvariantCulture);
        int exponent = int.Parse(text[5..length], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        return Code(exponent, ((text[0] - '0') * 100) + ((text[2] - '0') * 10) + (text[3] - '0'));
    }

    private static ushort Code(int exponent, int mantissa)
    {
        if (mantissa == 1000)
        {
            (exponent, mantissa) = (exponent + 1, 100);
        }

        return exponent < FirstExponent ? Zero
            : exponent > LastExponent ? None
            : (ushort)(2 + ((exponent - FirstExponent) * 900) + (mantissa - 100));
    }
}
