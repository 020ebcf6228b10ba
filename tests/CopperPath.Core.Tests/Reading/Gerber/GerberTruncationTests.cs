using System.Globalization;
using System.Text;
using CopperPath.Geometry;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>Files cut off anywhere, and noise; random damage is dealt with under Fuzzing.</summary>
public sealed class GerberTruncationTests
{
    private static readonly GerberReadOptions SmallLimits =
        new() { MaximumObjects = 20_000, MaximumVertices = 2_000_000 };

    [Fact]
    public void NoTruncationOfTheConformanceFilesThrows()
    {
        foreach (ConformanceCase source in ConformanceCases.All)
        {
            byte[] original = Encoding.UTF8.GetBytes(source.Text);
            for (int length = 0; length < original.Length; length++)
            {
                Check(original.AsMemory(0, length), source.Name);
            }
        }
    }

    [Fact]
    public void EveryByteAloneAndRandomBytesAreSurvived()
    {
        var random = new Random(4_711);
        for (int value = 0; value < 256; value++)
        {
            Check(new[] { (byte)value }, "one byte");
            byte[] noise = new byte[200];
            random.NextBytes(noise);
            Check(noise, "noise");
        }
    }

    private static void Check(ReadOnlyMemory<byte> bytes, string what)
    {
        GerberReading reading;
        try
        {
            reading = GerberReader.Read("mutant.gbr", bytes, SmallLimits);
        }
        catch (Exception e)
        {
            Assert.Fail($"{what}: {Encoding.Latin1.GetString(bytes.Span)}: {e}");
            return;
        }

        bool hasError = reading.Diagnostics.Any(d => d.Severity == CopperPath.Diagnostics.Severity.Error);
        if (reading.Artwork is null)
        {
            hasError.ShouldBeTrue(Encoding.Latin1.GetString(bytes.Span));
        }
        else
        {
            BoxNm limit = new(-3 * PointNm.LimitNm, -3 * PointNm.LimitNm, 3 * PointNm.LimitNm, 3 * PointNm.LimitNm);
            BoxNm bounds = reading.Artwork.Bounds;
            (bounds.IsEmpty || limit.Including(bounds) == limit).ShouldBeTrue();
        }
    }
}

/// <summary>Numbers are read the same where a comma is the decimal sign.</summary>
public sealed class GerberCultureTests
{
    [Fact]
    public void ACommaDecimalCultureChangesNothing()
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            foreach (ConformanceCase source in ConformanceCases.All)
            {
                byte[] bytes = Encoding.UTF8.GetBytes(source.Text);
                CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
                GerberReading expected = GerberReader.Read("a.gbr", bytes);
                CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
                GerberReading found = GerberReader.Read("a.gbr", bytes);
                found.Artwork.ShouldNotBeNull().Bounds.ShouldBe(expected.Artwork.ShouldNotBeNull().Bounds);
                found.Diagnostics.Select(d => d.ToString()).ShouldBe(expected.Diagnostics.Select(d => d.ToString()));
            }
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
