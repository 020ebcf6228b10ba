using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>The heat handed to the temperatures is the loss that is reported, and no current is counted twice.</summary>
public sealed class SharedHeatTests
{
    /// <summary>Films so strong that nothing gets warm: the heat is the loss, resistivity and all. A neck, so that the bounds lie apart.</summary>
    [Fact]
    public void HeatIsTheReportedLoss()
    {
        Review review = Check("""
              - name: Neck
                at: { layer: top, x: 5 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }, enters: 2 A }
                  - { name: right, rectangle: { layer: top, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 2 A }
            """);

        review.Heat!.Result.Balance.JouleW.ShouldBe(review.Nets[0].Conduction.LossW, 1e-5 * review.Nets[0].Conduction.LossW);
    }

    /// <summary>
    /// Average 2.5 A and RMS sqrt(D (I^2 + dI^2/12)) of a high side over the same copper: the mean square of the whole current
    /// is the RMS squared, so the heat of both entries is that of the RMS entry alone.
    /// </summary>
    [Fact]
    public void AnAverageBesideItsRmsIsCountedOnce()
    {
        Review review = Check($"""
            {Entry("Average", "high side of core")}
            {Entry("RMS", "rms high side of core")}
            """);
        double averageW = review.Nets[0].Conduction.LossW;
        double rmsW = review.Nets[1].Conduction.LossW;

        rmsW.ShouldBeGreaterThan(5 * averageW);
        review.Heat!.Result.Balance.JouleW.ShouldBe(rmsW, 1e-3 * rmsW);
    }

    /// <summary>Without an entry that brings the average, the RMS entry makes all the heat itself.</summary>
    [Fact]
    public void AnRmsAloneMakesItsWholeHeat()
    {
        Review review = Check(Entry("RMS", "rms high side of core"));

        review.Heat!.Result.Balance.JouleW.ShouldBe(review.Nets[0].Conduction.LossW, 1e-3 * review.Nets[0].Conduction.LossW);
    }

    private static string Entry(string name, string current) => $$"""
          - name: {{name}}
            at: { layer: top, x: 5 mm, y: 5 mm }
            terminals:
              - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 10 mm] }, enters: {{current}} }
              - { name: right, rectangle: { layer: top, from: [49 mm, 0 mm], to: [50 mm, 10 mm] }, takes: rest }
        """;

    private static Review Check(string nets)
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 20, 10).Rectangle(1, 20, 4, 30, 6).Rectangle(1, 30, 0, 50, 10);
        Review review = Analysis.Check(board.WriteBrief($$"""
            {{nets}}
            accuracy: 10 %
            converters:
              - { name: core, input voltage: 12 V, output voltage: 1.2 V, load current: 25 A, phases: 1, switching frequency: 500 kHz, inductance: 0.25 uH }
            thermal: { top: { film: 100000 W/m2K, emissivity: 0 }, bottom: { film: 100000 W/m2K, emissivity: 0 } }
            """));
        review.Diagnostics.ShouldNotContain(diagnostic => diagnostic.Severity == CopperPath.Diagnostics.Severity.Error);
        return review;
    }
}
