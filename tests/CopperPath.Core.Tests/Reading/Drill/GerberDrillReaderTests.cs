using System.Text;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.Drill;

namespace CopperPath.Core.Tests.Reading.Drill;

/// <summary>
/// Drill data in Gerber form, after the published layer format: flashes of circles are holes, strokes with circles
/// slots, the file function says plating and layers. Expected values are those written into the files.
/// </summary>
public class GerberDrillReaderTests
{
    private const string Head = "%TF.FileFunction,Plated,1,4,PTH*%%FSLAX46Y46*%%MOMM*%";

    [Theory]
    [InlineData(0.3, 300_000)]
    [InlineData(0.0254, 25_400)]
    [InlineData(0.8, 800_000)]
    [InlineData(3.2004, 3_200_400)]
    [InlineData(6.35, 6_350_000)]
    public void FlashOfACircleIsAHoleOfItsDiameter(double diameterMm, long diameterNm)
    {
        DrilledFeature hole = Read(FormattableString.Invariant($"{Head}%ADD10C,{diameterMm}*%D10*X1234567Y-7654321D03*M02*")).ShouldHaveSingleItem();

        hole.Path.ShouldBe([new PointNm(1_234_567, -7_654_321)]);
        ((double)hole.ToolDiameterNm).ShouldBe(diameterNm, tolerance: 2);
        hole.Plating.ShouldBe(Plating.Plated);
    }

    [Theory]
    [InlineData("X0Y0D02*G01*X5000000Y0D01*", 0, 0, 5_000_000, 0)]
    [InlineData("X1000001Y2000003D02*G01*X-333333Y4444447D01*", 1_000_001, 2_000_003, -333_333, 4_444_447)]
    [InlineData("X0Y0D02*G01*X1000Y0D01*", 0, 0, 1_000, 0)]
    public void StrokeIsASlotBetweenTheCentresOfItsEnds(string strokes, long x1, long y1, long x2, long y2)
    {
        DrilledFeature slot = Read($"{Head}%ADD10C,1*%D10*{strokes}M02*").ShouldHaveSingleItem();

        slot.Path[0].ShouldBe(new PointNm(x1, y1));
        slot.Path[^1].DistanceNmTo(new PointNm(x2, y2)).ShouldBeLessThanOrEqualTo(3);
        ((double)slot.ToolDiameterNm).ShouldBe(1_000_000, tolerance: 2);
    }

    [Fact]
    public void LineOfNoLengthIsAHole() =>
        Read($"{Head}%ADD10C,1*%D10*X7Y7D02*G01*X7Y7D01*M02*").ShouldHaveSingleItem().IsRoundHole.ShouldBeTrue();

    [Fact]
    public void FunctionAndSpanComeFromTheAttributes()
    {
        DrillReading reading = GerberDrillReader.Read("npth.gbr", Encoding.ASCII.GetBytes(
            "%TF.FileFunction,NonPlated,1,2,NPTH*%%FSLAX46Y46*%%MOMM*%%TA.AperFunction,MechanicalDrill,Tooling*%%ADD10C,3*%%TD*%D10*X0Y0D03*M02*"));

        DrillArtwork artwork = reading.Artwork.ShouldNotBeNull();
        (artwork.FirstLayer, artwork.LastLayer).ShouldBe((1, 2));
        (artwork.Features[0].Plating, artwork.Features[0].Function).ShouldBe((Plating.NonPlated, "MechanicalDrill,Tooling"));
        reading.Diagnostics.ShouldBeEmpty();
    }

    [Fact]
    public void RepeatedAndMirroredBlocksAreHolesToo() =>
        Read($"{Head}%ADD10C,1*%%SRX3Y2I5J4*%D10*X0Y0D03*%SR*%M02*").Select(hole => hole.Path[0]).Order(Comparer<PointNm>.Create(
            (a, b) => (a.X, a.Y).CompareTo((b.X, b.Y)))).ShouldBe(
            [new(0, 0), new(0, 4_000_000), new(5_000_000, 0), new(5_000_000, 4_000_000), new(10_000_000, 0), new(10_000_000, 4_000_000)]);

    [Theory]
    [InlineData("%ADD10R,1X1*%D10*X0Y0D03*", "h.gbr:1:71: error DRL036: found a flash of a shape that is not a solid circle")]
    [InlineData("%ADD10P,1X12*%D10*X0Y0D03*", "h.gbr:1:72: error DRL036: found a flash of a shape that is not a solid circle")]
    [InlineData("%ADD10C,1X0.5*%D10*X0Y0D03*", "h.gbr:1:73: error DRL036: found a flash of a shape that is not a solid circle")]
    [InlineData("%ADD10C,1*%%LPC*%D10*X0Y0D03*", "h.gbr:1:75: error DRL036: found an object of clear polarity")]
    [InlineData("G36*X0Y0D02*G01*X9D01*Y9D01*X0Y0D01*G37*", "h.gbr:1:58: error DRL036: found a region")]
    [InlineData("%ADD10C,1*%D10*G75*X5000000Y0D02*G03*X0Y5000000I-5000000J0D01*", "h.gbr:1:91: error DRL036: found an arc, or a line drawn with a shape that is not a solid circle")]
    public void WhatNoDrillMakesRejectsTheFile(string body, string expected)
    {
        DrillReading reading = GerberDrillReader.Read("h.gbr", Encoding.ASCII.GetBytes($"{Head}{body}M02*"));

        reading.Artwork.ShouldBeNull();
        Diagnostic error = reading.Diagnostics.Single(d => d.Severity == Severity.Error);
        error.ToString().ShouldStartWith(expected);
        error.AffectsCopper.ShouldBeTrue();
    }

    private static IReadOnlyList<DrilledFeature> Read(string text)
    {
        DrillReading reading = GerberDrillReader.Read("h.gbr", Encoding.ASCII.GetBytes(text));
        reading.Diagnostics.ShouldBeEmpty();
        return reading.Artwork.ShouldNotBeNull().Features;
    }
}
