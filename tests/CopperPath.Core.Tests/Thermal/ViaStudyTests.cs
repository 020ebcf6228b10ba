using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// A via of 0.254 mm with 25 um of plating has nearly the section of a trace of 0.69 mm x 35 um (0.022 and 0.024 mm2).
/// Brooks, PCB Design Magazine, March and May 2016, found such a via in a long trace no hotter than the trace; his
/// temperatures were not read, so the study is set up like his and judged by its own numbers.
/// </summary>
public sealed class ViaStudyTests
{
    private const double ViaMm = 0.254;

    [Fact]
    public void ViaOfEqualSectionInALongTraceStaysCloseToTheTrace()
    {
        using SyntheticBoard board = new(2);
        Corners(board).Rectangle(1, 0, -0.345, 76.5, 0.345).Rectangle(2, 75.9, -0.345, 152.4, 0.345);
        (double viaK, double farK) = Solve(board, viaX: 76.2, farX: 40, halfWidth: 0.345, lastX: 152.4, "3 A");

        farK.ShouldBeGreaterThan(20);
        viaK.ShouldBeInRange(0.95 * farK, 1.15 * farK, $"via {viaK:0.0} K, trace {farK:0.0} K");
    }

    [Fact]
    public void LoneViaBetweenWidePoursDoesNot()
    {
        using SyntheticBoard board = new(2);
        Corners(board).Rectangle(1, 0, -14, 77.2, 14).Rectangle(2, 75.2, -14, 152.4, 14);
        (double viaK, double farK) = Solve(board, viaX: 76.2, farX: 40, halfWidth: 14, lastX: 152.4, "8.55 A");

        viaK.ShouldBeGreaterThan(3 * farK, $"via {viaK:0.0} K, pour {farK:0.0} K");
        viaK.ShouldBeLessThan(30);
    }

    /// <summary>
    /// Measured by D. Brooks and J. Adam (PCD&amp;F, February 2016; Artech House, note of 26 January 2021): a trace of 27 mil,
    /// 3 in on either face of 63 mil FR-4, joined by one plated hole of 10 mil with about 1 oz on its wall; foil and plating
    /// about 1.5 oz; still air. At 4.75 A the trace was at 66.0 degC and the via at 64.5 degC. The texts leave open the air (20 to
    /// 24 degC are taken), the board beyond the trace and the true thicknesses; none is tuned here. The solve gives 50.2 K, at 1.5 mm 51.0 K;
    /// foil of 49 um on 1.52 mm 54.3 K, of 55 um on 1.6 mm 47.2 K. With films of 6 and 3 W/m2K on 1.5 mm the mean is 52.2 K and the via 55.2 K;
    /// a cross-section by finite differences gives 54.0 K far from the ends and the via.
    /// </summary>
    [Fact]
    public void TheMeasuredTraceAndItsViaAreMet()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, -12.8, -25, -12.6, -24.8).Rectangle(1, 165, 24.8, 165.2, 25)
            .Rectangle(1, 0, -0.343, 76.5, 0.343).Rectangle(2, 75.9, -0.343, 152.4, 0.343).PlatedSlot(76.2, 0, 76.2, 0, ViaMm);
        string brief = board.WriteBrief("""
              - name: Path
                at: { layer: top, x: 20 mm, y: 0 mm }
                terminals:
                  - { name: in, rectangle: { layer: top, from: [0 mm, -0.343 mm], to: [0.2 mm, 0.343 mm] }, enters: 4.75 A }
                  - { name: out, rectangle: { layer: bottom, from: [152.2 mm, -0.343 mm], to: [152.4 mm, 0.343 mm] }, leaves: 4.75 A }
            """);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("35 um, 35 um", "52 um, 52 um", StringComparison.Ordinal)
            .Replace("plating: 25 um", "plating: 35 um", StringComparison.Ordinal).Replace("1.5 mm]", "1.6 mm]", StringComparison.Ordinal).Replace("20 degC", "22 degC", StringComparison.Ordinal));
        Review review = Analysis.Check(brief);

        double traceK = NetTemperatures.Of(review.Nets.Single(), review.Own.ShouldNotBeNull()).MeanK;
        double viaK = review.Heat!.HottestOfHoleK(review.Board!.Nets!.Nets.SelectMany(net => net.Barrels).Single());
        traceK.ShouldBeInRange(0.9 * (66 - 24), 1.1 * (66 - 20));
        viaK.ShouldBe(traceK, 6);

        // A chart for one long conductor of the hole's section is off by a quarter and more.
        ConductorRating.Shown(CopperPath.Brief.JudgingRule.Board, review.Stack!).BarrelRiseK(review.Nets[0].Conduction.Barrels[0])
            .ShouldBeGreaterThan(1.25 * (64.5 - 20));
    }

    /// <summary>Specks of copper in two corners: without a profile the board is as large as its copper.</summary>
    private static SyntheticBoard Corners(SyntheticBoard board) =>
        board.Rectangle(1, -5, -15, -4.8, -14.8).Rectangle(1, 157.2, 14.8, 157.4, 15);

    private static (double ViaK, double FarK) Solve(
        SyntheticBoard board, double viaX, double farX, double halfWidth, double lastX, string current)
    {
        board.PlatedSlot(viaX, 0, viaX, 0, ViaMm);
        Review review = Analysis.Check(board.WriteBrief(FormattableString.Invariant($$"""
              - name: Path
                at: { layer: top, x: 20 mm, y: 0 mm }
                terminals:
                  - { name: in, rectangle: { layer: top, from: [0 mm, {{-halfWidth}} mm], to: [0.2 mm, {{halfWidth}} mm] }, enters: {{current}} }
                  - { name: out, rectangle: { layer: bottom, from: [{{lastX - 0.2}} mm, {{-halfWidth}} mm], to: [{{lastX}} mm, {{halfWidth}} mm] }, leaves: {{current}} }
            thermal: { cell: 0.35 mm }
            """)));
        review.Diagnostics.ShouldNotContain(diagnostic => diagnostic.Severity == CopperPath.Diagnostics.Severity.Error);
        TemperatureField heat = review.Heat.ShouldNotBeNull();
        heat.Result.Status.ShouldBe(ThermalStatus.Solved);
        return (heat.HottestOfHoleK(review.Board!.Nets!.Nets.SelectMany(net => net.Barrels).Single()), heat.RiseK(1, farX * 1e-3, 0));
    }
}
