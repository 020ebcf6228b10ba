using System.Globalization;
using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>Every case of <see cref="ExactCases"/> at the settings of a review.</summary>
public sealed class ExactCaseTests(ITestOutputHelper output)
{
    /// <summary>Largest relative error at default settings.</summary>
    private const double LargestError = 2e-3;

    /// <summary>Rounding: where the field is linear the bounds meet.</summary>
    private const double Rounding = 1e-9;

    public static TheoryData<string> Names => [.. ExactCases.All.Select(each => each.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void TheExactValueLiesInsideTheBoundsAndNearTheirMiddle(string name)
    {
        ExactCase exact = ExactCases.All.Single(each => each.Name == name);
        ConductionResult result = exact.Piece().Solve();

        double squares = exact.Measured(result);
        Bracket bounds = result.DropBoundsV;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {exact.Squares:F6} | {bounds.Least:F6} to {bounds.Greatest:F6} | {(squares / exact.Squares) - 1:+0.000 %;-0.000 %} | {result.UnknownCount} |"));
        squares.ShouldBe(exact.Squares, LargestError * exact.Squares);
        if (exact.IsBounded)
        {
            exact.Squares.ShouldBeInRange(bounds.Least * (1 - Rounding), bounds.Greatest * (1 + Rounding));
            bounds.RelativeWidth.ShouldBeLessThanOrEqualTo(SolveDemand.Default.Accuracy);
        }

        result.CurrentBalanceRatio.ShouldBeLessThan(1e-9);
    }
}
