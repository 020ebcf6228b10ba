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

    /// <param name="value">Not negative; what is negative or not finite has no code.</param>
    public static ushort Of(double value)
    {
        if (!double.IsFinite(value) || value < 0)
        {
            return None;
        }

        // "1.23E+004": one digit, the point, two digits, E, sign and three digits.
        Span<char> text = stackalloc char[16];
        value.TryFormat(text, out int length, "E2", CultureInfo.InvariantCulture);
        int exponent = int.Parse(text[5..length], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        int mantissa = ((text[0] - '0') * 100) + ((text[2] - '0') * 10) + (text[3] - '0');
        return value == 0 || exponent < FirstExponent ? Zero
            : exponent > LastExponent ? None
            : (ushort)(2 + ((exponent - FirstExponent) * 900) + (mantissa - 100));
    }
}
