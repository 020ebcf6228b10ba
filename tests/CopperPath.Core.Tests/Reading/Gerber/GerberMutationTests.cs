using System.Diagnostics;
using System.Globalization;
using System.Text;
using CopperPath.Geometry;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>Damaged files: whatever the bytes, the reader returns, soon, and says why when it gives no image.</summary>
public sealed class GerberMutationTests
{
    private static readonly GerberReadOptions SmallLimits =
        new() { MaximumObjects = 20_000, MaximumVertices = 2_000_000 };

    /// <summary>Bytes that matter to the grammar: mutations made of them go deeper than random ones.</summary>
    private static readonly byte[] Telling = [.. "%*,$XYIJDGMABFSLTO0123456789.+-()/=x\r\n \0\u007F"u8];

    [Fact]
    public void NoMutationOfTheConformanceFilesThrows()
    {
        var random = new Random(20_260);
        var clock = Stopwatch.StartNew();
        foreach (ConformanceCase source in ConformanceCases.All)
        {
            byte[] original = Encoding.UTF8.GetBytes(source.Text);
            for (int i = 0; i < 60; i++)
            {
                Check(Mutated(original, random), source.Name);
            }
        }

        clock.Elapsed.ShouldBeLessThan(TimeSpan.FromSeconds(60));
    }

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

    private static byte[] Mutated(byte[] original, Random random)
    {
        List<byte> bytes = [.. original];
        for (int edits = random.Next(1, 5); edits > 0; edits--)
        {
            int at = random.Next(bytes.Count);
            byte value = random.Next(4) == 0 ? (byte)random.Next(256) : Telling[random.Next(Telling.Length)];
            switch (random.Next(4))
            {
                case 0:
                    bytes.RemoveAt(at);
                    break;
                case 1:
                    bytes.Insert(at, value);
                    break;
                case 2:
                    int length = Math.Min(random.Next(1, 30), bytes.Count - at);
                    bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, length));
                    break;
                default:
                    bytes[at] = value;
                    break;
            }
        }

        return [.. bytes];
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
