using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Judging;

/// <summary>
/// Own rise, temperature and drop at worst are worked out from few solutions; here they are held against a whole review of the
/// board that is built so: thin copper and plating, thick laminate that conducts little, weak films.
/// </summary>
public sealed class WorstCaseSolveTests
{
    [Fact]
    public void ANeckBetweenPours()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 30, 30).Rectangle(1, 29, 14.75, 37, 15.25).Rectangle(1, 36, 0, 70, 30);
        ShouldAgree(board, """
              - name: Feed
                at: { layer: top, x: 1 mm, y: 1 mm }
                terminals:
                  - { name: on, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 30 mm] }, enters: 3 A }
                  - { name: off, rectangle: { layer: top, from: [68 mm, 0 mm], to: [70 mm, 30 mm] }, takes: rest }
            """, 1.5, "");
    }

    [Fact]
    public void HolesBetweenLayersBesideAHotPart()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 30, 20).Rectangle(2, 24, 0, 60, 20);
        foreach (double y in (double[])[4, 8, 12, 16])
        {
            board.PlatedSlot(27, y, 27, y, 0.3);
        }

        ShouldAgree(board, """
              - name: Feed
                at: { layer: top, x: 1 mm, y: 1 mm }
                terminals:
                  - { name: on, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 20 mm] }, enters: 8 A }
                  - { name: off, rectangle: { layer: bottom, from: [58 mm, 0 mm], to: [60 mm, 20 mm] }, takes: rest }
            """, 0, ", losses: { name: part, rectangle: { layer: top, from: [10 mm, 6 mm], to: [18 mm, 14 mm] }, power: 0.6 W }");
    }

    private static void ShouldAgree(SyntheticBoard board, string nets, double belowMm, string parts)
    {
        Review stated = Check(board, nets, Thermal(1, 1, 1, 1), "", _ => "");
        ToleranceStudy study = stated.Tolerance.ShouldNotBeNull();
        BoardRanges ranges = study.Ranges;
        NetTolerance net = study.Nets.Single();
        Review built = Check(board, nets, Thermal(ranges.StatedFilm.Least, ranges.LaminateThrough.Least, ranges.LaminateInPlane.Least, ranges.LaminateThickness.Most), "tolerance: as stated\n", text => text
            .Replace(CopperOf([.. ranges.CopperM.Select(range => range.Most)]), CopperOf([.. ranges.CopperM.Select(range => range.Least)]), StringComparison.Ordinal)
            .Replace("dielectric: [1.5 mm]", "dielectric: [1.65 mm]", StringComparison.Ordinal)
            .Replace("plating: 25 um", "plating: 18 um", StringComparison.Ordinal));

        double ownK = NetTemperatures.Of(built.Nets.Single(), built.Own!).PeakK;
        net.OwnRiseK!.Worst.ShouldBe(ownK, 0.04 * ownK);
        net.OwnRiseK.Worst.ShouldBeGreaterThan(1.15 * net.OwnRiseK.Nominal);
        double hottestK = built.Heat!.Hottest().RiseK;
        (study.TemperatureK!.Worst - stated.Brief!.AmbientK).ShouldBe(hottestK, 0.03 * hottestK);
        net.DropV.Worst.ShouldBe(built.Nets.Single().Conduction.DropV, 0.03 * net.DropV.Worst);

        string Thermal(double film, double through, double inPlane, double thickness) => string.Create(CultureInfo.InvariantCulture,
            $"thermal: {{ top: {{ film: {12 * film} W/m2K }}, bottom: {{ film: {8 * film} W/m2K }}, laminate: {{ {Conductivity(through, inPlane)}below: {belowMm * thickness} mm }}{parts} }}");

        static string Conductivity(double through, double inPlane) => through == 1 ? ""
            : string.Create(CultureInfo.InvariantCulture, $"through: {0.3 * through} W/mK, in plane: {0.8 * inPlane} W/mK, ");
    }

    private static string CopperOf(IReadOnlyList<double> thicknessM) =>
        "copper: [" + string.Join(", ", thicknessM.Select(m => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(m * 1e6, 9)} um"))) + "]";

    private static Review Check(SyntheticBoard board, string nets, string thermal, string tolerance, Func<string, string> change)
    {
        string brief = board.WriteBrief($"{nets}\n{thermal}\n{tolerance}");
        string text = File.ReadAllText(brief);
        File.WriteAllText(brief, change(text) is { Length: > 0 } changed ? changed : text);
        Review review = Analysis.Check(brief);
        review.Tolerance.ShouldNotBeNull(string.Join('\n', review.Diagnostics));
        return review;
    }
}
