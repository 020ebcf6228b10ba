using System.Globalization;

namespace CopperPath.Cli.Overlays;

/// <summary>Numbers a reader takes in at a glance: 1, 2 or 5 times a power of ten.</summary>
public static class RoundNumbers
{
    private static readonly double[] Leads = [1, 2, 5];

    /// <summary>The largest round number not above <paramref name="value"/>, which is positive and finite.</summary>
    public static double AtMost(double value)
    {
        int exponent = (int)Math.Floor(Math.Log10(value)) + 1;
        double best = WithExponent(1, exponent - 2);
        for (int e = exponent - 2; e <= exponent; e++)
        {
            foreach (double lead in Leads)
            {
                double candidate = WithExponent(lead, e);
                best = candidate <= value ? candidate : best;
            }
        }

        return best;
    }

    /// <summary>The smallest round number not below <paramref name="value"/>, which is positive and finite.</summary>
    public static double AtLeast(double value)
    {
        double below = AtMost(value);
        return below >= value ? below : Next(below);
    }

    /// <summary>The round number before a round number.</summary>
    public static double Below(double round) => AtMost(round * (1 - 1e-9));

    /// <summary>Step that parts a span into at most <paramref name="mostSteps"/> round steps.</summary>
    public static double Step(double span, int mostSteps) => AtLeast(span / mostSteps);

    /// <summary>Whole multiples of <paramref name="step"/> from <paramref name="low"/> to <paramref name="high"/>.</summary>
    public static IReadOnlyList<double> Multiples(double low, double high, double step)
    {
        double slack = step * 1e-9;
        long first = (long)Math.Ceiling((low - slack) / step);
        long last = (long)Math.Floor((high + slack) / step);
        return [.. Enumerable.Range(0, (int)Math.Max(0, last - first + 1)).Select(i => Multiple(first + i, step))];
    }

    /// <summary>A multiple of a round step: the double nearest to the decimal number.</summary>
    public static double Multiple(long count, double step) =>
        step >= 1 ? count * step : count / Math.Round(1 / step, 9);

    /// <summary>Round numbers from <paramref name="low"/> to <paramref name="high"/>, both positive.</summary>
    /// <param name="low">Lower end, included.</param>
    /// <param name="high">Upper end, included.</param>
    /// <param name="decadesOnly">True for powers of ten alone.</param>
    public static IReadOnlyList<double> Between(double low, double high, bool decadesOnly)
    {
        List<double> numbers = [];
        for (double n = AtLeast(low * (1 - 1e-9)); n <= high * (1 + 1e-9); n = Next(n))
        {
            if (!decadesOnly || IsPowerOfTen(n))
            {
                numbers.Add(n);
            }
        }

        return numbers;
    }

    /// <summary>A value written with as many decimals as its step needs, with a true minus sign.</summary>
    public static string Text(double value, double step)
    {
        int decimals = Math.Clamp(-(int)Math.Floor(Math.Log10(step) + 1e-9), 0, 12);
        return Signed(value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
    }

    /// <summary>A round value written without idle zeros.</summary>
    public static string Plain(double round) =>
        Math.Abs(round) is >= 1e7 or < 1e-6 and > 0
            ? Signed(round.ToString("0.##E0", CultureInfo.InvariantCulture))
            : Signed(round.ToString("0.########", CultureInfo.InvariantCulture));

    /// <summary>A measured value written to three significant digits, never in exponent form between 1e-4 and 1e6.</summary>
    public static string ThreeDigits(double value)
    {
        double size = Math.Abs(value);
        return size == 0 ? "0"
            : size is >= 1e6 or < 1e-4 ? Signed(value.ToString("0.##E0", CultureInfo.InvariantCulture))
            : Text(value, Math.Pow(10, Math.Min(0, Math.Floor(Math.Log10(size)) - 2)));
    }

    private static string Signed(string text) => text.Replace('-', '\u2212');

    private static double Next(double round)
    {
        int exponent = (int)Math.Floor(Math.Log10(round) + 1e-9);
        double lead = Math.Round(round / WithExponent(1, exponent));
        return lead < 2 ? WithExponent(2, exponent) : lead < 5 ? WithExponent(5, exponent) : WithExponent(1, exponent + 1);
    }

    private static bool IsPowerOfTen(double round)
    {
        double log = Math.Log10(round);
        return Math.Abs(log - Math.Round(log)) < 1e-9;
    }

    // Dividing by a whole power of ten gives the nearest double to the decimal number; multiplying by 0.1 does not.
    private static double WithExponent(double lead, int exponent) =>
        exponent >= 0 ? lead * Math.Pow(10, exponent) : lead / Math.Pow(10, -exponent);
}
