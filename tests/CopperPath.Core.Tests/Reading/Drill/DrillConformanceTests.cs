using System.Globalization;
using System.Text;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Reading.Drill;

namespace CopperPath.Core.Tests.Reading.Drill;

/// <summary>
/// Cases K68 to K83 of the project's format digest (section 8), written from the command set before the reader was:
/// input lines joined by " / ", expected holes and slots in millimetres.
/// </summary>
public class DrillConformanceTests
{
    [Theory]
    [InlineData("K68", "M48 / METRIC / T1C0.8 / % / T1 / X1.5Y-2.25 / M30", "hole 1.5 -2.25 d0.8")]
    [InlineData("K69", "M48 / METRIC,LZ,000.000 / T1C1.0 / % / T01 / X0105Y002 / M30", "hole 10.5 2 d1")]
    [InlineData("K70", "M48 / METRIC,TZ,000.000 / T1C1.0 / % / T1 / X10500Y-2000 / M30", "hole 10.5 -2 d1")]
    [InlineData("K71", "M48 / METRIC,TZ,0000.00 / T1C1.0 / % / T1 / X1050Y200 / M30", "hole 10.5 2 d1")]
    [InlineData("K72", "M48 / INCH,TZ / T1C0.04 / % / T1 / X10000Y500 / M30", "hole 25.4 1.27 d1.016")]
    [InlineData("K73", "M48 / INCH,LZ / T1C0.04 / % / T1 / X015Y01 / M30", "hole 38.1 25.4 d1.016")]
    [InlineData("K74", "M48 / METRIC / T01F200S65C0.5 / % / T1 / X1.0Y2.0 / X3.0 / T0 / M30", "hole 1 2 d0.5; hole 3 2 d0.5")]
    [InlineData("K75", "M48 / METRIC / T1C1.0 / % / T1 / X0.0Y0.0G85X5.0 / M30", "slot 0 0 5 0 d1")]
    [InlineData("K76", "M48 / METRIC / T1C2.0 / % / G00X0.0Y0.0 / T1 / M15 / G01X10.0 / M16 / G05 / X1.0Y5.0 / M30", "slot 0 0 10 0 d2; hole 1 5 d2")]
    [InlineData("K78", "M48 / METRIC / T1C1.0 / % / T1 / X0.0Y0.0 / R3X2.0 / M30", "hole 0 0 d1; hole 2 0 d1; hole 4 0 d1; hole 6 0 d1")]
    [InlineData("K79", "M48 / METRIC / T1C1.0 / % / T1 / M25 / X0.0Y0.0 / X1.0 / M01 / R2M02X5.0Y0.0 / M08 / M30", "hole 0 0 d1; hole 1 0 d1; hole 5 0 d1; hole 6 0 d1; hole 10 0 d1; hole 11 0 d1")]
    [InlineData("K80", "M48 / METRIC / T1C1.0 / % / T1 / X1.0Y1.0 / G91 / X2.0Y0.0 / X2.0Y0.0 / M30", "hole 1 1 d1; hole 3 1 d1; hole 5 1 d1")]
    [InlineData("K81", "M48 / ;FILE_FORMAT=4:4 / METRIC,TZ / T1C1.0 / % / T1 / X15000Y20000 / M30", "hole 1.5 2 d1")]
    [InlineData("K82", "M48 / METRIC / % / T2C1.2 / X0.0Y0.0 / M30", "hole 0 0 d1.2")]
    [InlineData("K83", "M48 / METRIC / T1C1.0 / % / T1 / X2.0Y2.0G85X2.0Y2.0 / M30", "hole 2 2 d1")]
    public void HolesStandWhereTheDigestSays(string caseName, string input, string expected)
    {
        DrillReading reading = DrillReader.Read(caseName, Lines(input));

        reading.Diagnostics.Where(d => d.Severity != Severity.Note).ShouldBeEmpty();
        reading.Artwork.ShouldNotBeNull();
        string.Join("; ", reading.Artwork.Features.Select(Describe)).ShouldBe(expected);
    }

    [Fact]
    public void K77RoutedArcKeepsItsRadiusAndTakesTheShortWay()
    {
        DrillReading reading = DrillReader.Read(
            "K77", Lines("M48 / METRIC / T1C1.0 / % / T1 / G00X5.0Y0.0 / M15 / G03X0.0Y5.0A5.0 / M16 / M30"));

        DrilledFeature cut = reading.Artwork.ShouldNotBeNull().Features.ShouldHaveSingleItem();
        cut.ToolDiameterNm.ShouldBe(1_000_000);
        (cut.Path[0].X, cut.Path[0].Y).ShouldBe((5_000_000L, 0L));
        (cut.Path[^1].X, cut.Path[^1].Y).ShouldBe((0L, 5_000_000L));
        double lengthNm = 0;
        for (int i = 1; i < cut.Path.Length; i++)
        {
            lengthNm += cut.Path[i].DistanceNmTo(cut.Path[i - 1]);
            cut.Path[i].DistanceNmTo(default).ShouldBe(5_000_000, tolerance: 1);
            cut.Path[i].X.ShouldBeInRange(0, 5_000_000);
        }

        // Quarter circle: pi r / 2; chords within 1 um of the arc are short by less than one part in 10^3.
        lengthNm.ShouldBe(Math.PI * 2_500_000, tolerance: 2_000);
    }

    private static ReadOnlyMemory<byte> Lines(string input) => Encoding.ASCII.GetBytes(input.Replace(" / ", "\n", StringComparison.Ordinal));

    private static string Describe(DrilledFeature feature)
    {
        string points = string.Join(' ', feature.Path.Select(p => $"{Mm(p.X)} {Mm(p.Y)}"));
        return $"{(feature.IsRoundHole ? "hole" : "slot")} {points} d{Mm(feature.ToolDiameterNm)}";
    }

    private static string Mm(long nm) => (nm / 1_000_000m).ToString("0.######", CultureInfo.InvariantCulture);
}
