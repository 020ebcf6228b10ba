using CopperPath.Brief;
using CopperPath.Diagnostics;

namespace CopperPath.Core.Tests.Brief;

/// <summary>Kirchhoff's current law on a net: what enters leaves.</summary>
public class CurrentBalanceTests
{
    [Fact]
    public void UnequalSumsAreAnErrorThatStatesBoth()
    {
        BriefReading reading = ExampleBrief.ReadTerminals(
            "name: a, pins: [J1.1], enters: 9 A", "name: b, component: U1, leaves: 8999 mA");

        reading.Brief.ShouldBeNull();
        Diagnostic only = reading.Diagnostics.ShouldHaveSingleItem();
        only.Code.ShouldBe("BRF033");
        only.Found.ShouldBe("9 A entering and 8.999 A leaving in net 'n'");
        only.Expected.ShouldContain("takes: rest");
        only.Position.Line.ShouldBe(8);
    }

    [Fact]
    public void DecimalRoundingIsNoImbalance()
    {
        // In binary 0.1 + 0.2 is not 0.3.
        BriefReading reading = ExampleBrief.ReadTerminals(
            "name: a, pins: [J1.1], enters: 0.1 A", "name: b, pins: [J1.2], enters: 0.2 A", "name: c, component: U1, leaves: 0.3 A");

        reading.Diagnostics.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("1.0000000005 A", true)]
    [InlineData("1.000000002 A", false)]
    public void TheToleranceIsOnePartInABillion(string leaves, bool accepted)
    {
        BriefReading reading = ExampleBrief.ReadTerminals(
            "name: a, pins: [J1.1], enters: 1 A", $"name: b, component: U1, leaves: {leaves}");

        (reading.Brief is not null).ShouldBe(accepted);
    }

    [Fact]
    public void TheRestBalancesWhicheverWayItFlows()
    {
        Terminals("enters: 9 A", "leaves: 2.5 A").ShouldBe([9, -2.5, -6.5]);
        Terminals("enters: 2 A", "leaves: 2.5 A").ShouldBe([2, -2.5, 0.5]);

        static IEnumerable<double> Terminals(string first, string second) => ExampleBrief
            .ReadTerminals($"name: a, pins: [J1.1], {first}", $"name: b, pins: [J1.2], {second}", "name: c, component: U1, takes: rest")
            .Brief.ShouldNotBeNull().Nets[0].Terminals.Select(t => t.CurrentA);
    }

    [Fact]
    public void ASecondRestIsAnError() => ExampleBrief
        .ReadTerminals("name: a, pins: [J1.1], enters: 1 A", "name: b, component: U1, takes: rest", "name: c, component: U2, takes: rest")
        .Diagnostics.ShouldHaveSingleItem().Code.ShouldBe("BRF032");

    [Fact]
    public void ARestOfNothingIsRemarkedOn()
    {
        BriefReading reading = ExampleBrief.ReadTerminals(
            "name: a, pins: [J1.1], enters: 1 A", "name: b, component: U1, leaves: 1 A", "name: c, component: U2, takes: rest");

        reading.Brief.ShouldNotBeNull().Nets[0].Terminals[2].CurrentA.ShouldBe(0);
        Diagnostic only = reading.Diagnostics.ShouldHaveSingleItem();
        (only.Code, only.Severity).ShouldBe(("BRF038", Severity.Warning));
    }

    [Fact]
    public void ANetWithoutCurrentIsAnError() => ExampleBrief
        .ReadTerminals("name: a, pins: [J1.1], enters: 0 A", "name: b, component: U1, takes: rest")
        .Diagnostics.ShouldHaveSingleItem().Code.ShouldBe("BRF034");

    [Fact]
    public void OneTerminalIsTooFew() => ExampleBrief
        .ReadTerminals("name: a, pins: [J1.1], enters: 1 A")
        .Diagnostics.ShouldHaveSingleItem().Code.ShouldBe("BRF037");

    [Fact]
    public void ACurrentTooSmallForAnyPowerPathIsRefused() =>
        ExampleBrief.ReadTerminals("name: a, pins: [J1.1], enters: 1e-200 A", "name: b, component: U1, takes: rest").Diagnostics
            .ShouldContain(diagnostic => diagnostic.ToString().Contains("found `1e-200 A`; expected 0 A, or a current of at least 1.00 nA", StringComparison.Ordinal));
}
