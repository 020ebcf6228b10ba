using System.Text;
using CopperPath.Diagnostics;
using CopperPath.Reading.Drill;

namespace CopperPath.Core.Tests.Reading.Drill;

/// <summary>
/// Seeded damage to a file that uses every command: whatever happens to its bytes, reading ends, does not throw, and
/// either gives holes or says why not.
/// </summary>
public class DrillGremlinTests
{
    private const string Sample = """
        M48
        ;FILE_FORMAT=4:4
        ; #@! TF.FileFunction,Plated,1,4,PTH
        METRIC,TZ,0000.0000
        FMAT,2
        ; #@! TA.AperFunction,Plated,PTH,ViaDrill
        T1C0.3F200S65
        ;TYPE=NON_PLATED
        T2C1.0
        %
        G90
        G05
        T1
        X15000Y20000
        X1.5Y2.25
        R3X2.0
        M25
        X1.0Y1.0G85X3.0
        M01
        R2M02X5.0Y0.0
        M08
        T2
        G00X5.0Y0.0
        M15
        G03X0.0Y5.0A5.0
        G01X-5.0
        G02X5.0Y5.0I5.0J0.0
        M16
        G05
        G91
        X1.0
        G93X0Y0
        M30
        """;

    [Fact]
    public void EverySingleByteChangeIsEitherReadOrExplained()
    {
        byte[] bytes = Encoding.ASCII.GetBytes(Sample);
        byte[] replacements = [0, (byte)'\n', (byte)' ', (byte)'*', (byte)'9', (byte)'X', (byte)'-', (byte)'.', (byte)'%', 0xC3, 0xFF];
        for (int i = 0; i < bytes.Length; i++)
        {
            byte before = bytes[i];
            foreach (byte replacement in replacements)
            {
                bytes[i] = replacement;
                ShouldBeReadOrExplained(bytes);
            }

            bytes[i] = before;
        }
    }

    [Fact]
    public void SeededHeavyDamageIsEitherReadOrExplained()
    {
        Random random = new(20260911);
        for (int round = 0; round < 2_000; round++)
        {
            List<byte> bytes = [.. Encoding.ASCII.GetBytes(Sample)];
            for (int change = random.Next(1, 12); change > 0; change--)
            {
                int at = random.Next(bytes.Count);
                switch (random.Next(4))
                {
                    case 0:
                        bytes.RemoveAt(at);
                        break;
                    case 1:
                        bytes.Insert(at, (byte)random.Next(1, 256));
                        break;
                    case 2:
                        bytes[at] = (byte)random.Next(32, 127);
                        break;
                    default:
                        int length = Math.Min(random.Next(1, 40), bytes.Count - at);
                        bytes.InsertRange(random.Next(bytes.Count), bytes.GetRange(at, length));
                        break;
                }
            }

            ShouldBeReadOrExplained([.. bytes]);
        }
    }

    private static void ShouldBeReadOrExplained(byte[] bytes)
    {
        DrillReading reading = DrillReader.Read("gremlin.drl", bytes);
        if (reading.Artwork is null)
        {
            reading.Diagnostics.ShouldContain(d => d.Severity == Severity.Error);
            return;
        }

        foreach (Artwork.DrilledFeature feature in reading.Artwork.Features)
        {
            feature.ToolDiameterNm.ShouldBePositive();
            feature.Path.ShouldNotBeEmpty();
        }
    }
}
