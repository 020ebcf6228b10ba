using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Tests.Overlays;

public sealed class ValueScaleTests
{
    [Theory]
    [InlineData(0.0, 56.5, "0 10 20 30 40 50 60")]
    [InlineData(0.0, 3.0, "0.0 0.5 1.0 1.5 2.0 2.5 3.0")]
    [InlineData(50.2, 96.8, "50 60 70 80 90 100")]
    [InlineData(0.001, 0.0119, "0.000 0.002 0.004 0.006 0.008 0.010 0.012")]
    [InlineData(-3.2, 4.1, "−4 −2 0 2 4 6")]
    [InlineData(98.21, 98.74, "98.2 98.3 98.4 98.5 98.6 98.7 98.8")]
    public void LinearTicksAreRoundAndEncloseTheValues(double least, double most, string labels)
    {
        ValueScale scale = ValueScale.For(new ScaleSpec("q", "u", ScaleKind.Linear), [least, most]);

        string.Join(' ', scale.Ticks.Select(t => t.Label)).ShouldBe(labels);
        scale.Bottom.ShouldBeLessThanOrEqualTo(least);
        scale.Top.ShouldBeGreaterThanOrEqualTo(most);
    }

    [Theory]
    [InlineData(new[] { 2.63, 56.5 }, "2 5 10 20 50 100")]
    [InlineData(new[] { 0.004, 73 }, "0.1 0.2 0.5 1 2 5 10 20 50 100")]
    [InlineData(new[] { 0, 0.3, 61 }, "0.2 0.5 1 2 5 10 20 50 100")]
    public void LogarithmicTicksAreRoundAndReachTheTop(double[] values, string labels)
    {
        ValueScale scale = ValueScale.For(new ScaleSpec("q", "u", ScaleKind.Logarithmic), values);

        string.Join(' ', scale.Ticks.Select(t => t.Label)).ShouldBe(labels);
        scale.Top.ShouldBeGreaterThanOrEqualTo(values.Max());
    }

    [Fact]
    public void PlacesFollowTheKindOfScale()
    {
        ValueScale linear = ValueScale.For(new ScaleSpec("q", "u", ScaleKind.Linear, Top: 100, Bottom: 0), []);
        ValueScale logarithmic = ValueScale.For(new ScaleSpec("q", "u", ScaleKind.Logarithmic, Top: 100, Bottom: 1), []);

        linear.PlaceOf(25).ShouldBe(0.25, 1e-12);
        logarithmic.PlaceOf(10).ShouldBe(0.5, 1e-12);
        logarithmic.PlaceOf(-1).ShouldBe(0);
        linear.PlaceOf(1e9).ShouldBe(1);
    }

    [Theory]
    [InlineData(ScaleKind.Linear, 0.0)]
    [InlineData(ScaleKind.Linear, 5.0)]
    [InlineData(ScaleKind.Linear, -5.0)]
    [InlineData(ScaleKind.Logarithmic, 0.0)]
    [InlineData(ScaleKind.Logarithmic, -2.0)]
    [InlineData(ScaleKind.Logarithmic, 5.0)]
    public void OneValueAloneStillHasAScale(ScaleKind kind, double value)
    {
        ValueScale scale = ValueScale.For(new ScaleSpec("q", "u", kind), [value, value]);

        scale.Top.ShouldBeGreaterThan(scale.Bottom);
        scale.PlaceOf(value).ShouldBeInRange(0, 1);
        scale.Ticks.Count.ShouldBeGreaterThan(1);
    }

    [Theory]
    [InlineData(0.7, 0.5, 1.0)]
    [InlineData(1.0, 1.0, 1.0)]
    [InlineData(2.0001, 2.0, 5.0)]
    [InlineData(0.05, 0.05, 0.05)]
    [InlineData(7300.0, 5000.0, 10000.0)]
    [InlineData(0.00031, 0.0002, 0.0005)]
    public void RoundNumbersBracketAnyNumber(double value, double atMost, double atLeast)
    {
        RoundNumbers.AtMost(value).ShouldBe(atMost);
        RoundNumbers.AtLeast(value).ShouldBe(atLeast);
    }
}
