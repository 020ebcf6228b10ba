using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.Core.Tests.ArtworkRoom;

/// <summary>Centre lines joined to contours, as a profile needs them.</summary>
public sealed class CentreLinesTests
{
    private static readonly PointNm A = new(0, 0);
    private static readonly PointNm B = new(10, 0);
    private static readonly PointNm C = new(10, 10);
    private static readonly PointNm D = new(0, 10);

    [Fact]
    public void SidesInAnyOrderAndDirectionMakeOneClosedLine()
    {
        List<PointNm[]> joined = Lines((A, B), (D, C), (A, D), (C, B)).Joined();
        joined.ShouldHaveSingleItem().ShouldBe([A, B, C, D, A]);
    }

    [Fact]
    public void OpenLinesGrowAtBothEnds() =>
        Lines((B, C), (A, B), (C, D)).Joined().ShouldHaveSingleItem().ShouldBe([A, B, C, D]);

    [Fact]
    public void LinesThatDoNotMeetStayApart() => Lines((A, B), (C, D)).Joined().Count.ShouldBe(2);

    [Fact]
    public void AFurtherLineAtAClosedCornerStaysApart()
    {
        List<PointNm[]> joined = Lines((A, B), (B, C), (C, A), (A, D)).Joined();
        joined[0].ShouldBe([A, B, C, A]);
        joined[1].ShouldBe([A, D]);
    }

    [Fact]
    public void AProfileOfLinesAndArcsReadsAsOneContour()
    {
        LayerArtwork artwork = Reading.Gerber.GerberText.Read(
            Reading.Gerber.GerberText.Head + "%ADD10C,0*%D10*G75*X0Y0D02*G01*X100000D01*"
            + "X0Y0D02*Y50000D01*X100000D01*G02*X100000Y0I0J-25000D01*M02*").Artwork.ShouldNotBeNull();
        PointNm[] contour = artwork.Contours.ShouldHaveSingleItem();
        contour[0].ShouldBe(contour[^1]);
        double expectedMm2 = 50 + (Math.PI * 2.5 * 2.5 / 2);
        Math.Abs(Ring.SignedAreaNm2(contour[1..]) / 1e12).ShouldBe(expectedMm2, 1e-5);
    }

    private static CentreLines Lines(params (PointNm From, PointNm To)[] strokes)
    {
        var lines = new CentreLines();
        foreach ((PointNm from, PointNm to) in strokes)
        {
            lines.BeginStroke(from);
            lines.AddPoint(to);
        }

        return lines;
    }
}
