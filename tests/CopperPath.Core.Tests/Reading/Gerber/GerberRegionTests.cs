using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>Contours of regions, and clear copies: areas from plane geometry, in mm2.</summary>
public sealed class GerberRegionTests
{
    private const string H = GerberText.Head + "%ADD10R,1X1*%\nD10*\nG75*\n";

    [Fact]
    public void ACutInMayLeadToAFullCircle() => AreaMm2(
        "G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*Y50000D01*X30000D01*"
        + "G02*X30000Y50000I20000J0D01*G01*X0D01*Y0D01*G37*").ShouldBe(100 - (4 * Math.PI), 1e-4);

    [Fact]
    public void ACircleCutOutTheSameWayRoundIsNoHole() => AreaMm2(
        "G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*Y50000D01*X30000D01*"
        + "G03*X30000Y50000I20000J0D01*G01*X0D01*Y0D01*G37*").ShouldBe(100, 1e-4);

    [Fact]
    public void ContoursOfEitherDirectionAreUnited() => AreaMm2(
        "G36*G01*X0Y0D02*X20000D01*Y20000D01*X0D01*Y0D01*X10000Y10000D02*Y30000D01*X30000D01*Y10000D01*X10000D01*"
        + "X50000Y0D02*X60000D01*Y10000D01*X50000Y0D01*G37*").ShouldBe(4 + 4 - 1 + 0.5, 1e-6);

    /// <summary>A contour that winds twice is filled, not emptied, where it does: a five-pointed star is whole.</summary>
    [Fact]
    public void WhereAContourWindsTwiceItIsFilled()
    {
        // Pentagram in a circle of 5 mm, every second of five corners; area of its outline from trigonometry.
        string star = string.Concat(Enumerable.Range(0, 6).Select(i =>
        {
            double angle = (Math.PI / 2) + (4 * Math.PI * i / 5);
            return string.Create(
                System.Globalization.CultureInfo.InvariantCulture,
                $"X{50000 * Math.Cos(angle):0}Y{50000 * Math.Sin(angle):0}D0{(i == 0 ? 2 : 1)}*");
        }));
        double inner = 5 * Math.Cos(2 * Math.PI / 5) / Math.Cos(Math.PI / 5);
        AreaMm2("G36*G01*" + star + "G37*").ShouldBe(5 * 5 * inner * Math.Sin(Math.PI / 5), 1e-3);
    }

    /// <summary>The radius runs from 5 to 5.025 mm with the angle: a sector of (r0^2 + r0 r1 + r1^2) / 3 times its angle by 2.</summary>
    [Fact]
    public void AnArcOfSlightlyDifferentRadiiKeepsBothEnds()
    {
        GerberReading reading = GerberText.Read(
            H + "G36*X0Y0D02*G01*X50000D01*G03*X0Y50250I-50000J0D01*G01*Y0D01*G37*M02*");
        LayerArtwork artwork = reading.Artwork.ShouldNotBeNull();
        reading.Diagnostics.ShouldHaveSingleItem().Severity.ShouldBe(Severity.Warning);
        artwork.Objects[0].Rings[0].ShouldContain(new CopperPath.Geometry.PointNm(0, 5_025_000));
        artwork.Objects[0].Rings[0].ShouldContain(new CopperPath.Geometry.PointNm(5_000_000, 0));
        double meanSquare = (25 + (5 * 5.025) + (5.025 * 5.025)) / 3;
        (ImageOracle.Compose(artwork).Area * 1e-12).ShouldBe(meanSquare * Math.PI / 4, 1e-4);
    }

    /// <summary>
    /// Each copy is a square of 1 mm and a clear one at the place of a neighbour: copies run along y first, so the copy
    /// at (0, 2) is drawn before that at (2, 0), and its clear square is covered again; the other way round it stays.
    /// </summary>
    [Theory]
    [InlineData("X20000Y-20000", 4)]
    [InlineData("X-20000Y20000", 3)]
    [InlineData("X0Y-20000", 2)]
    [InlineData("X0Y20000", 4)]
    [InlineData("X-20000Y0", 2)]
    [InlineData("X20000Y0", 4)]
    public void AClearPartOfACopyRemovesEarlierCopiesOnly(string clearAt, double expectedMm2) => AreaMm2(
        "%SRX2Y2I2J2*%X0Y0D03*%LPC*%" + clearAt + "D03*%LPD*%%SR*%").ShouldBe(expectedMm2, 1e-9);

    private static double AreaMm2(string body)
    {
        GerberReading reading = GerberText.Read(H + body + "M02*");
        return ImageOracle.Compose(reading.Artwork.ShouldNotBeNull()).Area * 1e-12;
    }
}
