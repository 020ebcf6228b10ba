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
