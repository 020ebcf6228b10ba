using System.Text;
using CopperPath.Core.Tests.Fuzzing;
using CopperPath.Diagnostics;
using CopperPath.Reading.Drill;

namespace CopperPath.Core.Tests.Reading.Drill;

/// <summary>
/// Seeded damage to a file that uses every command: whatever happens to its bytes, reading ends, does not throw, and
/// either gives holes or says why not.
/// </summary>
public class DrillGremlinTests
{
    private const string Sample = FuzzTargets.DrillSample;

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
