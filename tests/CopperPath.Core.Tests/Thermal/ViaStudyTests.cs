using CopperPath.Core.Tests.Gallery;
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
