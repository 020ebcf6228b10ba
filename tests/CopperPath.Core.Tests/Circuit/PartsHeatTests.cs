using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Converter;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Circuit;

/// <summary>
/// Heat of parts from a converter's efficiency, by conservation of energy: what goes in less what comes out is heat, and
/// all of it leaves the board.
/// </summary>
public sealed class PartsHeatTests
{
    // 1.2 V at 20 A; at 0.92 the parts lose 24 W (1 / 0.92 - 1).
    private const double PartsW = 24 * ((1 / 0.92) - 1);

    private static readonly Lazy<Review> s_review = new(() => Board().Check());

    [Fact]
    public void TheLossLiesOnThePartsByTheirShares()
    {
        PartsHeat heat = s_review.Value.PartsHeat.ShouldNotBeNull();
        LossShares shares = LossShares.Common;
        double laid = shares.HighSide + shares.LowSide + shares.Inductor;

        heat.IsKnown.ShouldBeTrue();
        heat.Losses.Sum(loss => loss.PowerW).ShouldBe(PartsW, 1e-12);
        foreach ((string part, double share) in new[] { ("Q11", shares.HighSide), ("Q12", shares.LowSide), ("L1", shares.Inductor), ("L2", shares.Inductor) })
        {
            heat.Losses.Single(loss => loss.Place is ComponentContact place && place.Component == part).PowerW
                .ShouldBe(PartsW * share / laid / 2, 1e-12, part);
        }
    }

    [Fact]
    public void HeatInIsHeatOutOverTheWholeBoard()
    {
        HeatBalance balance = s_review.Value.Heat.ShouldNotBeNull().Result.Balance;

        balance.ComponentW.ShouldBe(PartsW, 1e-9);
        balance.OutW.ShouldBe(balance.JouleW + PartsW, 1e-6 * PartsW);
    }

    /// <summary>What a part gives straight to the air does not pass the board: with no resistance to the air the board stays cold.</summary>
    [Fact]
    public void APartMayGiveItsHeatToTheAir()
    {
        const string Part = "thermal: {{ losses: {{ name: hot, circle: {{ layer: top, x: 40 mm, y: 10 mm, diameter: 6 mm }}, power: 4 W{0} }} }}\n";
        HeatBalance inBoard = BalanceWith("");
        HeatBalance toAir = BalanceWith(", to air: 10 K/W");

        inBoard.SunkW.ShouldBe(0);
        toAir.SunkW.ShouldBeGreaterThan(1);
        toAir.OutW.ShouldBe(toAir.JouleW + 4, 1e-5);

        HeatBalance BalanceWith(string key) =>
            new BuckBoard { Sections = string.Format(System.Globalization.CultureInfo.InvariantCulture, Part, key) }.Check().Heat!.Result.Balance;
    }

    [Fact]
    public void APartWithAStatedLossKeepsThat()
    {
        PartsHeat heat = (Board() with { Sections = "thermal: { losses: { name: driver stage, component: Q11, power: 0.1 W } }\n" }).Check().PartsHeat!;

        heat.Losses.Single(loss => loss.Place is ComponentContact { Component: "Q11" }).PowerW.ShouldBe(0.1);
        heat.Losses.Sum(loss => loss.PowerW).ShouldBeLessThan(PartsW);
        heat.Sources.ShouldHaveSingleItem().ShouldContain("keep that");
    }

    /// <summary>The rise that the copper's own current adds hardly depends on what parts add: only resistivity and films change.</summary>
    [Fact]
    public void TheOwnRiseDoesNotCountTheParts()
    {
        double alone = PeakOf(new BuckBoard().Check());
        double beside = PeakOf(s_review.Value);

        beside.ShouldBe(alone, 0.25 * alone);
        s_review.Value.Heat!.Hottest().RiseK.ShouldBeGreaterThan(2 * alone);

        static double PeakOf(Review review) => review.Nets.Max(net => NetTemperatures.Of(net, review.Own!).PeakK);
    }

    [Fact]
    public void WithoutAnyLossOfPartsTheTemperatureIsNotKnown() =>
        new BuckBoard().Check().PartsHeat.ShouldNotBeNull().IsKnown.ShouldBeFalse();

    private static BuckBoard Board() => new() { Efficiency = 0.92 };
}
