using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.DemoBoards.Furrow;
using CopperPath.DemoBoards.Kit;
using CopperPath.Judging;
using NetTopologySuite.Geometries;

namespace CopperPath.Core.Tests.DemoBoard;

/// <summary>
/// The demo's neck at widths scaled at random. The limit of each variant is the rise that a reference solve on even, finer cells finds at its
/// width: 5 % narrower the verdict must be beyond it, 5 % wider not.
/// </summary>
public sealed class ScaledNeckTests(ITestOutputHelper output)
{
    private const double Step = 1.05;

    public static TheoryData<int> Few => [1, 2, 3];

    public static TheoryData<int> Forty => [.. Enumerable.Range(1, 40)];

    [Theory]
    [MemberData(nameof(Few))]
    public void TheVerdictFlipsWhereTheReferenceCrossesTheLimit(int seed) => ShouldFlip(seed, "0.1 mm");

    [Theory]
    [MemberData(nameof(Forty))]
    [Trait("Category", "Soak")]
    public void FortyVerdictsFlipWhereTheReferenceCrossesTheLimit(int seed)
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is "1", "a soak; set COPPERPATH_SOAK=1");
        ShouldFlip(seed, "0.05 mm");
    }

    private void ShouldFlip(int seed, string referenceCell)
    {
        double widthMm = PlantedFaults.FeedTrack.WidthMm * Math.Pow(2, (2 * new Random(seed).NextDouble()) - 1);
        double limitK = PeakK(Check(widthMm, 200, $"cell: {referenceCell}, "));
        Review narrower = Check(widthMm / Step, limitK, ""), wider = Check(widthMm * Step, limitK, "");
        output.WriteLine(FormattableString.Invariant(
            $"{widthMm:F3} mm: reference {limitK:F2} K; 5 % narrower {PeakK(narrower):F2} K, wider {PeakK(wider):F2} K"));

        IsBeyond(narrower).ShouldBeTrue($"{widthMm} mm, narrower");
        IsBeyond(wider).ShouldBeFalse($"{widthMm} mm, wider");
    }

    private static bool IsBeyond(Review review) =>
        review.Findings.Any(finding => finding.Rule == RuleCatalogue.Heat.Id && finding.Level == FindingLevel.BeyondLimit);

    private static double PeakK(Review review) => NetTemperatures.Of(review.Nets.Single(), review.Own.ShouldNotBeNull()).PeakK;

    /// <summary>The feed's entry as the demo draws it, from its pour to the fuse's pad, on a piece of the card of 26 x 8 mm.</summary>
    private static Review Check(double widthMm, double limitK, string cell)
    {
        using SyntheticBoard board = new(4);
        Track track = PlantedFaults.FeedTrack;
        (PointMm from, PointMm to) = (track.Path[0], track.Path[^1]);
        Envelope pour = Feed.ForgottenPour.EnvelopeInternal;
        board.Rectangle(1, pour.MinX, pour.MinY, pour.MaxX, pour.MaxY);
        board.Rectangle(1, from.X, from.Y - (widthMm / 2), to.X, to.Y + (widthMm / 2));
        board.Rectangle(1, to.X - 1.6, to.Y - 1.9, to.X + 1.6, to.Y + 1.9);
        for (int layer = 2; layer <= 4; layer++)
        {
            board.Rectangle(layer, 10, 81, 36, 89);
        }

        string brief = board.SpareHole(11, 82).WriteBrief(string.Create(CultureInfo.InvariantCulture, $$"""
              - name: Feed
                at: { layer: top, x: 13 mm, y: 85 mm }
                terminals:
                  - { name: connector, rectangle: { layer: top, from: [13 mm, 84 mm], to: [24 mm, 86.4 mm] }, enters: 9 A }
                  - { name: fuse, rectangle: { layer: top, from: [30 mm, 83.4 mm], to: [33 mm, 87 mm] }, takes: rest }
            thermal: { {{cell}}top: { film: 60 W/m2K }, bottom: { film: 60 W/m2K } }
            """));
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("200 K", FormattableString.Invariant($"{limitK:R} K"), StringComparison.Ordinal)
            .Replace("[35 um, 35 um, 35 um, 35 um]", "[70 um, 35 um, 35 um, 70 um]", StringComparison.Ordinal)
            .Replace("[1.5 mm, 1.5 mm, 1.5 mm]", "[0.2 mm, 1 mm, 0.2 mm]", StringComparison.Ordinal));
        return Analysis.Check(brief);
    }
}
