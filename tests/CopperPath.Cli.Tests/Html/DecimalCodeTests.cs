using System.Globalization;
using CopperPath.Cli.Report.Html;

namespace CopperPath.Cli.Tests.Html;

/// <summary>Oracle: the framework's own exponent format with two decimals.</summary>
public sealed class DecimalCodeTests
{
    [Theory]
    [InlineData(1.234)]
    [InlineData(9.996)]
    [InlineData(99949.9)]
    [InlineData(1e-30)]
    [InlineData(3.14159e8)]
    [InlineData(0.000999)]
    public void ACodeHoldsThreeSignificantDigits(double value)
    {
        ushort code = DecimalCode.Of(value);

        string text = FormattableString.Invariant($"{100 + ((code - 2) % 900)}E{((code - 2) / 900) - 38}");
        double.Parse(text, CultureInfo.InvariantCulture)
            .ShouldBe(double.Parse(value.ToString("E2", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture));
    }

    /// <summary>Single-precision numbers of any size, as the fields hold them; the seed is arbitrary.</summary>
    [Fact]
    public void ACodeAgreesWithTheFormatForAnyNumber()
    {
        Random random = new(20251125);
        for (int i = 0; i < 200_000; i++)
        {
            ShouldAgree(BitConverter.Int32BitsToSingle(random.Next(int.MinValue, int.MaxValue)));
        }
    }

    /// <summary>Halves of the last digit, exact where binary can hold them, and their next neighbours; powers of ten and theirs.</summary>
    [Fact]
    public void ACodeAgreesWithTheFormatWhereItIsDecided()
    {
        for (int power = -38; power <= 38; power++)
        {
            for (int mantissa = 100; mantissa <= 1000; mantissa++)
            {
                foreach (string text in new[] { $"{mantissa}.5E{power - 2}", $"{mantissa}E{power - 2}" })
                {
                    double value = double.Parse(text, CultureInfo.InvariantCulture);
                    ShouldAgree(value);
                    ShouldAgree(Math.BitIncrement(value));
                    ShouldAgree(Math.BitDecrement(value));
                    ShouldAgree((float)value);
                }
            }
        }
    }

    private static void ShouldAgree(double value)
    {
        int code = DecimalCode.Of(value);
        int expected = Expected(value);
        if (code != expected)
        {
            code.ShouldBe(expected, FormattableString.Invariant($"{value:R}"));
        }
    }

    private static int Expected(double value)
    {
        if (!double.IsFinite(value) || value < 0)
        {
            return 0;
        }

        string text = value.ToString("E2", CultureInfo.InvariantCulture);
        int exponent = int.Parse(text[5..], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);
        int mantissa = int.Parse(text[0] + text[2..4], CultureInfo.InvariantCulture);
        return mantissa == 0 || exponent < -36 ? 1 : exponent > 35 ? 0 : 2 + ((exponent + 36) * 900) + mantissa - 100;
    }

    [Fact]
    public void NothingAndZeroHaveCodesOfTheirOwn()
    {
        DecimalCode.Of(double.NaN).ShouldBe((ushort)0);
        DecimalCode.Of(double.PositiveInfinity).ShouldBe((ushort)0);
        DecimalCode.Of(0).ShouldBe((ushort)1);
    }

    [Fact]
    public void LargerValuesHaveLargerCodes()
    {
        ushort[] codes = [.. Enumerable.Range(-300, 600).Select(i => DecimalCode.Of(Math.Pow(10, i / 10.0)))];

        codes.ShouldBeInOrder(SortDirection.Ascending);
        codes.ShouldBeUnique();
    }
}
