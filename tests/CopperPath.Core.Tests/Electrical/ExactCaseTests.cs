using System.Globalization;
using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>Every case of <see cref="ExactCases"/> at the settings of a review.</summary>
public sealed class ExactCaseTests(ITestOutputHelper output)
{
    /// <summary>Largest relative error at default settings.</summary>
    private const double LargestError = 2e-3;

    public static TheoryData<string> Names => [.. ExactCases.All.Select(each => each.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void ResistanceIsWithinATwoThousandthsOfTheExactValue(string name)
    {
        ExactCase exact = ExactCases.All.Single(each => each.Name == name);
        ConductionResult result = exact.Piece().Solve();

        double squares = exact.Measured(result);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name} | {exact.Squares:F6} | {squares:F6} | {(squares / exact.Squares) - 1:P3} | {result.UnknownCount}"));
        squares.ShouldBe(exact.Squares, LargestError * exact.Squares);
        result.CurrentBalanceRatio.ShouldBeLessThan(1e-9);
    }
}
