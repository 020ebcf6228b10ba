using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// Against three-dimensional models by a general finite-element program: <c>tests/independent/board_heat_fe.py</c>, whose numbers, at
/// the fineness named beside them, stand here. Stated films on both faces and no radiation, as there.
/// </summary>
public sealed class FiniteElementTests(ITestOutputHelper output)
{
    /// <summary>What the two may differ by, a peak's share.</summary>
    private const double Share = 0.03;

    /// <summary>The largest estimate, a reading's share: that of the plane below the package.</summary>
    private const double MostEstimate = 0.06;

    [Fact]
    public void NeckBetweenPoursOverAPlane()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 5, 5, 19.5, 25).Rectangle(1, 19.5, 14.9, 20.5, 15.1).Rectangle(1, 20.5, 5, 35, 25).Rectangle(2, 0, 0, 40, 30).Rectangle(1, 1.5, 1.5, 2.5, 2.5).PlatedSlot(2, 2, 2, 2, 0.3);
        Review review = Check(board, 0.2, Bar(1, 5, 5, 35, 25, "15 A"), 200, "");

        // The neck is five squares, and heats its pours where the current spreads: handed over as their mean it would be 2 % too cool.
        double neckW = CopperLoss.Of(SharedHeat.StretchesOf(review.Nets, null), review.Stack!).Triangles
            .Where(triangle => (triangle.A.XM + triangle.B.XM + triangle.C.XM) / 3 is > 19.5e-3 and < 20.5e-3).Sum(triangle => triangle.PowerW);
        neckW.ShouldBe(FiniteElements.NeckLossW, 0.005 * FiniteElements.NeckLossW);
        review.Nets.Single().Conduction.LossW.ShouldBe(FiniteElements.NeckAllLossW, 0.005 * FiniteElements.NeckAllLossW);
        Compare(review.Heat!, "neck", at => at.RiseK(1, 20e-3, 15e-3), FiniteElements.Neck);
        Compare(review.Heat!, "pour", at => at.RiseK(1, 14.5e-3, 15e-3), FiniteElements.NeckPour);
    }

    [Fact]
    public void BarrelBetweenPoursItsMiddleToo()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 30, 30).Rectangle(2, 0, 0, 30, 30).PlatedSlot(15, 15, 15, 15, 0.3);
        Review review = Check(board, 1.5, """
              - name: Path
                at: { layer: top, x: 5 mm, y: 5 mm }
                terminals:
                  - { name: in, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 30 mm] }, enters: 15 A }
                  - { name: out, rectangle: { layer: bottom, from: [29 mm, 0 mm], to: [30 mm, 30 mm] }, leaves: 15 A }

            """, 200, "");
        BarrelCurrent barrel = review.Nets[0].Conduction.Barrels.Single();

        Compare(review.Heat!, "middle of the hole", at => at.HottestOfHoleK(barrel.Barrel), FiniteElements.BarrelMiddle);
        Compare(review.Heat!, "pour", at => at.RiseK(1, 10e-3, 15e-3), FiniteElements.BarrelPour);
    }

    [Fact]
    public void PackageOnALandWithNineHoles()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 18.5, 13.5, 21.5, 16.5).Rectangle(2, 0, 0, 40, 30);
        for (int k = 0; k < 9; k++)
        {
            board.PlatedSlot(19 + (k % 3), 14 + (k / 3), 19 + (k % 3), 14 + (k / 3), 0.3);
        }

        Review review = Check(board, 1.5, Bar(2, 0, 0, 40, 30, "1 mA"), 50,
            "losses: { name: U1, rectangle: { layer: top, from: [18.5 mm, 13.5 mm], to: [21.5 mm, 16.5 mm] }, power: 1.5 W }");

        Compare(review.Heat!, "hottest place", at => at.Hottest().RiseK, FiniteElements.PackageHottest);
        Compare(review.Heat!, "plane", at => at.RiseK(2, 20.5e-3, 15.5e-3), FiniteElements.PackagePlane);
    }

    [Fact]
    public void NeckOnALargeBoard()
    {
        using SyntheticBoard board = new(8);
        board.Rectangle(1, 125, 115, 148.5, 135).Rectangle(1, 148.5, 124.9, 151.5, 125.1).Rectangle(1, 151.5, 115, 175, 135);
        Planes(board);
        Review review = Check(board, 0.2, Bar(1, 125, 115, 175, 135, "10 A"), 15, "");

        Compare(review.Heat!, "neck", at => at.RiseK(1, 150e-3, 125e-3), FiniteElements.LargeNeck);
    }

    [Fact]
    public void PartOnALargeBoard()
    {
        using SyntheticBoard board = new(8);
        board.Rectangle(1, 149.25, 124.25, 150.75, 125.75);
        Planes(board);
        Review review = Check(board, 0.2, Bar(8, 0, 0, 300, 250, "1 mA"), 15,
            "losses: { name: Q1, rectangle: { layer: top, from: [149.25 mm, 124.25 mm], to: [150.75 mm, 125.75 mm] }, power: 1 W }");

        Compare(review.Heat!, "pad", at => at.Hottest().RiseK, FiniteElements.LargePart);
        review.Heat!.Hottest().Layer.ShouldBe(1);
    }

    private static void Planes(SyntheticBoard board)
    {
        for (int layer = 2; layer <= 8; layer++)
        {
            board.Rectangle(layer, 0, 0, 300, 250);
        }

        // A board of several layers has holes; this one is far from everything.
        board.Rectangle(1, 4.5, 4.5, 5.5, 5.5).PlatedSlot(5, 5, 5, 5, 0.3);
    }

    private void Compare(TemperatureField field, string place, Func<TemperatureField, double> reading, double reference)
    {
        (double riseK, double estimateK) = (reading(field), field.EstimateK(reading));
        output.WriteLine(FormattableString.Invariant(
            $"{place}: {riseK:F3} K, estimate {estimateK:F3} K, finite elements {reference:F3} K, {(riseK / reference) - 1:+0.0%;-0.0%}"));
        riseK.ShouldBe(reference, Share * reference, place);
        estimateK.ShouldBeLessThan(Math.Max(0.5, MostEstimate * riseK));
    }

    /// <summary>A bar whose ends of 1 mm are its contacts.</summary>
    internal static string Bar(int layer, double x0, double y0, double x1, double y1, string current) => string.Create(CultureInfo.InvariantCulture, $$"""
              - name: Bar
                at: { layer: {{layer}}, x: {{x0 + 2}} mm, y: {{y0 + 2}} mm }
                terminals:
                  - { name: left, rectangle: { layer: {{layer}}, from: [{{x0}} mm, {{y0}} mm], to: [{{x0 + 1}} mm, {{y1}} mm] }, enters: {{current}} }
                  - { name: right, rectangle: { layer: {{layer}}, from: [{{x1 - 1}} mm, {{y0}} mm], to: [{{x1}} mm, {{y1}} mm] }, leaves: {{current}} }

            """);

    internal static Review Check(SyntheticBoard board, double dielectricMm, string nets, double filmWPerM2K, string losses)
    {
        string brief = board.WriteBrief(nets + string.Create(CultureInfo.InvariantCulture,
            $"thermal: {{ top: {{ film: {filmWPerM2K} W/m2K, emissivity: 0 }}, bottom: {{ film: {filmWPerM2K} W/m2K, emissivity: 0 }}{(losses.Length > 0 ? ", " + losses : "")} }}\n"));
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("1.5 mm", string.Create(CultureInfo.InvariantCulture, $"{dielectricMm} mm"), StringComparison.Ordinal));
        Review review = Analysis.Check(brief);
        review.Diagnostics.Where(diagnostic => diagnostic.Severity == CopperPath.Diagnostics.Severity.Error).Select(diagnostic => diagnostic.ToString()).ShouldBeEmpty();
        review.Heat.ShouldNotBeNull().Result.Status.ShouldBe(ThermalStatus.Solved);
        return review;
    }

    /// <summary>Rises in kelvin and losses from the script, with elements of degree 2 where nothing else is said.</summary>
    private static class FiniteElements
    {
        public const double Neck = 76.18;
        public const double NeckPour = 5.84;
        public const double NeckLossW = 0.5553;
        public const double NeckAllLossW = 1.0000;
        public const double BarrelMiddle = 11.55;
        public const double BarrelPour = 2.22;
        public const double PackageHottest = 66.55;
        public const double PackagePlane = 43.60;

        /// <summary>Degree 1.</summary>
        public const double LargeNeck = 173.9;

        /// <summary>Degree 1.</summary>
        public const double LargePart = 230.2;
    }
}
