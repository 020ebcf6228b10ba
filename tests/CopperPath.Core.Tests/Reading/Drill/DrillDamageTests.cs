using System.Text;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Reading.Drill;

namespace CopperPath.Core.Tests.Reading.Drill;

/// <summary>What is said about input that is damaged, incomplete or unsupported, to the word.</summary>
public class DrillDamageTests
{
    private const string Head = "M48 / METRIC / T1C1.0 / % / T1 / ";

    [Theory]
    [InlineData("", "f.drl: error DRL001: found an empty file; expected a drill file in plain text")]
    [InlineData("M48 / METRIC / % / X1.0Y1.0 / M30", "f.drl:4:1: error DRL006: found a hole while no tool is selected; expected a tool definition with diameter before its first hole")]
    [InlineData("M48 / METRIC / % / T3 / X1.0Y1.0 / X2.0 / M30", "f.drl:5:1: error DRL006: found a hole with tool 3, which is not defined; expected a tool definition with diameter before its first hole")]
    [InlineData("M48 / T1C1.0 / % / T1 / X1.0Y1.0 / M30", "f.drl:5:1: error DRL004: found a length before any unit; expected INCH, METRIC, M71 or M72 before it, or a drill format given for the file")]
    [InlineData("M48 / M72 / T1C0.04 / % / T1 / X10000Y500 / X2Y2 / M30", "f.drl:6:1: error DRL005: found 'X10000' without decimal point, and no statement of digits and zeros; expected LZ or TZ and digits in the header, decimal points, or a drill format given for the file")]
    [InlineData(Head + "X1.0Y / M30", "f.drl:6:5: error DRL003: found 'Y'; expected a number after the letter, such as X1.5 or X-01500")]
    [InlineData(Head + "X1.0.0Y1 / M30", "f.drl:6:1: error DRL003: found 'X1.0.0'; expected a number after the letter, such as X1.5 or X-01500")]
    [InlineData(Head + "X1.0Y1.0? / M30", "f.drl:6:9: error DRL002: found '?'; expected a letter A to Z with its number")]
    [InlineData(Head + "X1.0Y1.0X2.0 / M30", "f.drl:6:9: error DRL002: found 'X2.0'; expected one X and one Y, or a command of the drill format")]
    [InlineData(Head + "G77X1.0 / M30", "f.drl:6:1: error DRL002: found 'G77'; expected a command of the drill format")]
    [InlineData(Head + "M66 / X1.0Y1.0 / M30", "f.drl:6:1: error DRL002: found 'M66'; expected a command of the drill format")]
    [InlineData("M48 / METRIC / WOBBLE,1 / T1C1.0 / % / T1 / X1.0Y1.0 / M30", "f.drl:3:1: error DRL002: found 'WOBBLE,1'; expected a command of the drill format")]
    [InlineData("M48 / METRIC,XZ / T1C1.0 / % / T1 / X1.0Y1.0 / M30", "f.drl:2:1: error DRL002: found 'XZ' after the unit; expected LZ, TZ or digits such as 000.000")]
    [InlineData("M48 / METRIC / T1C0.0 / % / T1 / X1.0Y1.0 / M30", "f.drl:6:1: error DRL007: found a hole with tool 1 of diameter 0 mm; expected a diameter above 0 and up to 100 mm")]
    [InlineData("M48 / METRIC / T1Cx / % / T1C1.0 / X1.0Y1.0 / M30", "f.drl:3:4: error DRL002: found 'x'; expected a letter A to Z with its number")]
    [InlineData(Head + "X99999.0Y0.0 / M30", "f.drl:6:1: error DRL011: found 'X99999.0'; expected a length of at most 10 m")]
    [InlineData("M48 / METRIC,LZ / T1C1.0 / % / T1 / X1234567Y0 / M30", "f.drl:6:1: error DRL010: found 'X1234567'; expected at most 6 digits in format 3.3: with trailing zeros omitted the point is lost")]
    [InlineData(Head + "G41 / X1.0Y1.0 / M30", "f.drl:6:1: error DRL012: found 'G41'; expected plain holes, G85 slots and routing without cutter compensation")]
    [InlineData(Head + "G32X1.0Y1.0A5.0 / M30", "f.drl:6:1: error DRL012: found 'G32'; expected plain holes, G85 slots and routing without cutter compensation")]
    [InlineData(Head + "M25 / X1.0Y1.0 / M01 / M02X5.0M70 / M08 / M30", "f.drl:9:8: error DRL012: found 'M70'; expected patterns repeated without swapping or mirroring axes")]
    [InlineData(Head + "G00X0.0Y0.0 / M15 / G03X9.0Y0.0A1.0 / M16 / M30", "f.drl:8:4: error DRL013: found an arc whose centre can not be placed; expected A with at least half the distance of its ends, or I and J to a centre equally far from both ends")]
    [InlineData(Head + "G00X5.0Y0.0 / M15 / G03X0.0Y6.0I-5.0J0.0 / M16 / M30", "f.drl:8:4: error DRL013: found an arc whose centre can not be placed; expected A with at least half the distance of its ends, or I and J to a centre equally far from both ends")]
    [InlineData(Head + "M01 / X1.0Y1.0 / M30", "f.drl:6:1: error DRL015: found M01 without an open pattern; expected M25 before it")]
    [InlineData(Head + "X1.0Y1.0 / M02X5.0 / M30", "f.drl:7:1: error DRL015: found M02 without a finished pattern; expected M25, holes and M01 before it")]
    [InlineData(Head + "R3X2.0 / M30", "f.drl:6:1: error DRL022: found 'R3' without a hole to repeat; expected a drilled hole before it")]
    [InlineData(Head + "X1.0Y1.0 / R0X2.0 / M30", "f.drl:7:1: error DRL022: found 'R0'; expected a repeat count from 1 to 1000000")]
    [InlineData(Head + "X1.0Y1.0G85 / M30", "f.drl:6:9: error DRL003: found G85 without a second point; expected X, Y or both after G85")]
    public void RejectedFilesSayWhyAndWhereAndGiveNoHoles(string input, string expected)
    {
        DrillReading reading = Read(input);

        reading.Artwork.ShouldBeNull();
        Diagnostic error = reading.Diagnostics.First(d => d.Severity == Severity.Error);
        error.ToString().ShouldBe(expected);
        error.AffectsCopper.ShouldBeTrue();
        reading.Diagnostics.Count(d => d.Severity == Severity.Error).ShouldBe(1);
    }

    [Theory]
    [InlineData(Head + "X1.0Y1.0", "f.drl:6:1: warning DRL016: found end of file without M30; expected M30 at the end; the file may be cut short", 1)]
    [InlineData(Head + "X1.0Y1.0 / M30 / X2.0Y2.0 / X3.0Y3.0", "f.drl:8:1: warning DRL029: found a line after the end of the program; expected nothing after M30; the rest is not read", 1)]
    [InlineData(Head + "M30", "f.drl: warning DRL033: found no hole; expected at least one hole in a drill file", 0)]
    [InlineData("M48 / METRIC / T1C1.0 / T1C1.2 / % / T1 / X1.0Y1.0 / M30", "f.drl:4:3: warning DRL008: found a second diameter for tool 1; expected each tool defined once; the later diameter holds from here on", 1)]
    [InlineData("M48 / METRIC / T0101C1.0 / % / T01 / X1.0Y1.0 / M30", "f.drl:3:1: warning DRL009: found 'T0101'; expected at most three digits; the first two are taken as the tool, the others as its compensation", 1)]
    [InlineData("M48 / METRIC / T1C1 / % / T1 / X1.0Y1.0 / M30", "f.drl:3:3: warning DRL028: found 'C1' without decimal point; expected a decimal point in tool diameters; read as whole units", 1)]
    [InlineData("M48 / METRIC,TZ / T1C1.0 / % / T1 / X1234567Y0 / M30", "f.drl:6:1: warning DRL010: found 'X1234567'; expected at most 6 digits in format 3.3; read from the right", 1)]
    [InlineData("M48 / METRIC / T1C1.0 / % / T1 / X1500Y0 / M30", "f.drl:6:1: warning DRL017: found numbers without decimal point and neither LZ nor TZ; expected LZ or TZ after the unit; read as TZ, millimetre, 3.3, leading zeros omitted, until the copper confirms it", 1)]
    [InlineData(Head + "G00X0.0Y0.0 / G01X5.0 / M16 / M30", "f.drl:7:4: warning DRL014: found a routed line with the tool up; expected M15 before it; taken as a cut", 1)]
    [InlineData(Head + "G00X0.0Y0.0 / M15 / G01X5.0 / G05 / M30", "f.drl:9:1: warning DRL024: found a cut that is still open; expected M16 or M17 before it; the cut ends here", 1)]
    [InlineData(Head + "G93X10.0Y0.0 / X1.0Y1.0 / M30", "f.drl:6:1: warning DRL021: found 'G93'; expected coordinates from one zero; read as a shift of all later absolute coordinates", 1)]
    [InlineData("M48 / METRIC / T1C1.0 / X1.0Y1.0 / M30", "f.drl:4:1: warning DRL034: found coordinates in the header; expected % or M95 before the first hole", 0)]
    [InlineData("M48 / ;TYPE=GILDED / METRIC / T1C1.0 / % / T1 / X1.0Y1.0 / M30", "f.drl:2:1: warning DRL027: found TYPE=GILDED; expected TYPE=PLATED or TYPE=NON_PLATED", 1)]
    [InlineData("M48 / ; #@! TF.FileFunction,Plated,1,2,PTH / ;TYPE=NON_PLATED / METRIC / T1C1.0 / % / T1 / X1.0Y1.0 / M30", "f.drl:3:1: warning DRL032: found TYPE=NON_PLATED in a file declared Plated,1,2,PTH; expected the two to agree; the comment next to the tool stands", 1)]
    [InlineData("M48 / ;FILE_FORMAT=4:4 / METRIC,TZ,000.000 / T1C1.0 / % / T1 / X1.0Y1.0 / M30", "f.drl:3:1: warning DRL035: found 3.3 after 4.4; expected one number format in a file; the later statement holds from here on", 1)]
    [InlineData("M48 / FMAT,1 / METRIC / T1C1.0 / % / T1 / X1.0Y1.0 / M30", "f.drl:2:1: warning DRL026: found 'FMAT,1'; expected FMAT,2; codes common to both generations are read alike", 1)]
    public void SettledOdditiesAreSaidAndReadOn(string input, string expected, int holes)
    {
        DrillReading reading = Read(input);

        reading.Diagnostics.First(d => d.Severity != Severity.Note).ToString().ShouldBe(expected);
        (reading.Artwork?.Features.Count ?? 0).ShouldBe(holes);
    }

    [Fact]
    public void AGivenFormatFillsOnlyWhatTheFileLeavesOpen()
    {
        DrillFormat given = new(DrillUnit.Millimetre, OmittedZeros.Leading, 2, 5);
        DrillReading reading = DrillReader.Read("f.drl", Lines("M48 / M72 / T1C0.04 / % / T1 / X100000Y50000 / M30"), given);

        DrilledFeature hole = reading.Artwork.ShouldNotBeNull().Features.ShouldHaveSingleItem();
        hole.Path[0].X.ShouldBe(25_400_000); // 1.00000 in: the unit of the file stands, the digits are the given ones
        reading.Format.ShouldBe("inch, 2.5, leading zeros omitted (given)");
        reading.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(DrillCode.FormatConflict);
    }

    [Fact]
    public void ZeroSetShiftsLaterAbsoluteCoordinates()
    {
        DrillReading reading = Read(Head + "X1.0Y1.0 / G93X10.0Y-5.0 / X1.0Y1.0 / M30");

        reading.Artwork.ShouldNotBeNull().Features.Select(f => (f.Path[0].X, f.Path[0].Y))
            .ShouldBe([(1_000_000L, 1_000_000L), (11_000_000L, -4_000_000L)]);
    }

    [Fact]
    public void FullCircleByCentreCutsTheWholeRing()
    {
        DrillReading reading = Read(Head + "G00X5.0Y0.0 / M15 / G02X5.0Y0.0I-5.0J0.0 / M16 / M30");

        PointNmPath(reading).Length.ShouldBeGreaterThan(100);
        PointNmPath(reading).ShouldAllBe(p => Math.Abs(p.DistanceNmTo(default) - 5_000_000) <= 1);

        static Geometry.PointNm[] PointNmPath(DrillReading r) => r.Artwork.ShouldNotBeNull().Features[0].Path;
    }

    [Fact]
    public void MarksAtToolsGivePlatingAndFunctionToTheirHoles()
    {
        DrillReading reading = Read(
            "M48 / ; #@! TF.FileFunction,MixedPlating,1,6 / METRIC / ; #@! TA.AperFunction,Plated,PTH,ViaDrill / T1C0.3 / "
            + "; #@! TA.AperFunction,NonPlated,NPTH,ComponentDrill / T2C1.0 / ; #@! TD / T3C2.0 / % / "
            + "T1 / X1.0Y1.0 / T2 / X2.0Y2.0 / T3 / X3.0Y3.0 / M30");

        DrillArtwork artwork = reading.Artwork.ShouldNotBeNull();
        (artwork.FirstLayer, artwork.LastLayer).ShouldBe((1, 6));
        artwork.Features.Select(f => (f.Plating, f.Function)).ShouldBe(
        [
            (Plating.Plated, "ViaDrill"), (Plating.NonPlated, "ComponentDrill"), (Plating.Unknown, null),
        ]);
    }

    [Fact]
    public void HostileRepeatCountsEndAtALimit()
    {
        DrillReading reading = Read(Head + "M25 / X0.0Y0.0 / R1000000X0.000001 / M01 / R1000000M02X0.000001 / M30");

        reading.Artwork.ShouldBeNull();
        reading.Diagnostics.ShouldContain(d => d.Code == DrillCode.TooManyHoles);
    }

    private static DrillReading Read(string input) => DrillReader.Read("f.drl", Lines(input));

    private static ReadOnlyMemory<byte> Lines(string input) =>
        Encoding.ASCII.GetBytes(input.Replace(" / ", "\n", StringComparison.Ordinal));
}
