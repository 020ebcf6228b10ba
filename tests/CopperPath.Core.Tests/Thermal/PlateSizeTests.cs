using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Geometry;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// Lengths of the films of still air: area over perimeter of a lying board, height of an upright one, both of the board's own
/// outline; and the ranges in which their correlations are published (Incropera and DeWitt, chapter 9; from memory).
/// </summary>
public sealed class PlateSizeTests
{
    private const double AirK = 298.15;

    /// <summary>Worked by hand: a square of 100 mm however it is turned, an L of 100 mm with arms of 20 mm, two squares of 40 mm.</summary>
    [Fact]
    public void LengthsAreThoseOfTheOutline()
    {
        double halfM = 0.1 / Math.Sqrt(2);
        PlateSize turned = PlateSize.Of([new PolygonNm(Plate.Ring((-halfM, 0), (0, -halfM), (halfM, 0), (0, halfM)), [])]);
        turned.AreaOverPerimeterM.ShouldBe(0.025, 1e-8);
        turned.HeightM.ShouldBe(0.1 * Math.Sqrt(2), 1e-8);

        PlateSize angle = PlateSize.Of([new PolygonNm(Plate.Ring((0, 0), (0.1, 0), (0.1, 0.02), (0.02, 0.02), (0.02, 0.1), (0, 0.1)), [])]);
        angle.AreaOverPerimeterM.ShouldBe(0.0036 / 0.4, 1e-9);

        PlateSize pair = PlateSize.Of([Square(0), Square(0.05)]);
        pair.AreaOverPerimeterM.ShouldBe(0.01, 1e-9);
        pair.HeightM.ShouldBe(0.04, 1e-9);
        PlateSize.OfRectangle(0.1, 0.2).AreaOverPerimeterM.ShouldBe(0.02 / 0.6, 1e-12);

        static PolygonNm Square(double atM) => new(Plate.Ring((atM, 0), (atM + 0.04, 0), (atM + 0.04, 0.04), (atM, 0.04)), []);
    }

    /// <summary>
    /// A square board of 100 mm, lying turned by 45 degrees, with a sink that holds it 20, 40 and 60 K above air of 25 degC:
    /// the hand-worked films of the upper and the lower face of that board, within 2 % for the air's properties.
    /// </summary>
    [Theory]
    [InlineData(20, 7.369, 3.685)]
    [InlineData(40, 8.686, 4.343)]
    [InlineData(60, 9.529, 4.764)]
    public void ATurnedBoardHasTheFilmsOfItsOutline(double riseK, double up, double down)
    {
        using SyntheticBoard board = new(1);
        string brief = board.Rectangle(1, -20, -5, 20, 5).WriteBrief("""
              - name: Bar
                at: { layer: top, x: 0 mm, y: 0 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [-20 mm, -5 mm], to: [-18 mm, 5 mm] }, enters: 1 mA }
                  - { name: right, rectangle: { layer: top, from: [18 mm, -5 mm], to: [20 mm, 5 mm] }, takes: rest }
            """);
        const double HalfMm = 70.710678;
        File.WriteAllText(Path.Combine(board.Folder, "profile.gbr"), string.Join('\n',
            "%TF.FileFunction,Profile,NP*%", "%FSLAX46Y46*%", "%MOMM*%", "%ADD10C,0.1*%", "D10*", "G01*",
            $"{SyntheticBoard.At(HalfMm, 0)}D02*", $"{SyntheticBoard.At(0, HalfMm)}D01*", $"{SyntheticBoard.At(-HalfMm, 0)}D01*",
            $"{SyntheticBoard.At(0, -HalfMm)}D01*", $"{SyntheticBoard.At(HalfMm, 0)}D01*", "M02*"));
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("ambient: 20 degC", "ambient: 25 degC", StringComparison.Ordinal)
            .Replace("conductor temperature: 20 degC", "conductor temperature: 25 degC", StringComparison.Ordinal) + string.Create(CultureInfo.InvariantCulture, $$"""

            thermal:
              cell: 5 mm
              laminate: { below: 1.5 mm }
              heat sinks: { name: held, rectangle: { layer: top, from: [-70.7 mm, -70.7 mm], to: [70.7 mm, 70.7 mm] }, temperature: {{25 + riseK}} degC }
            """));
        Review review = Analysis.Check(brief);
        ThermalResult result = review.Heat.ShouldNotBeNull(string.Join('\n', review.Diagnostics)).Result;

        result.Status.ShouldBe(ThermalStatus.Solved);
        result.FilmTopWPerM2K.ShouldBe(up, 0.02 * up);
        result.StillAirTop.ShouldNotBeNull().LengthM.ShouldBe(0.025, 1e-6);
        result.StillAirBottom.ShouldNotBeNull().LengthM.ShouldBe(0.025, 1e-6);

        // The far face is up to 7 % less warm, through 1.5 mm of laminate: a film goes as the fourth root of that.
        result.FilmBottomWPerM2K.ShouldBe(down, 0.04 * down);
    }

    /// <summary>
    /// Board of 100 mm, 20 K over air of 25 degC: Ra = g beta dT L^3 Pr / nu^2 with handbook air at 308 K (nu 1.67e-5 m2/s,
    /// Pr 0.706) is 2.5e4 on 25 mm and 1.6e6 on 100 mm, to 5 % for the air (its pressure alone makes 2.6 %).
    /// </summary>
    [Theory]
    [InlineData(FacePosture.Up, 20, 0.025, 2.5e4, true)]
    [InlineData(FacePosture.Down, 20, 0.025, 2.5e4, false)]
    [InlineData(FacePosture.Vertical, 20, 0.1, 1.61e6, true)]
    [InlineData(FacePosture.Up, 20, 0.01, 1.61e3, false)]
    [InlineData(FacePosture.Down, 20, 0.1, 1.61e6, true)]
    [InlineData(FacePosture.Up, 20, 0.2, 1.29e7, false)]
    [InlineData(FacePosture.Vertical, 20, 1, 1.61e9, false)]
    public void TheRangeOfEachCorrelationIsHeldAgainstTheRayleighNumber(
        FacePosture posture, double riseK, double lengthM, double rayleigh, bool isWithin)
    {
        StillAir air = NaturalConvection.At(posture, riseK, AirK, lengthM);

        air.Rayleigh.ShouldBe(rayleigh, 0.05 * rayleigh);
        air.IsWithinRange.ShouldBe(isWithin);
    }
}
