using CopperPath.Brief;
using CopperPath.Diagnostics;

namespace CopperPath.Core.Tests.Brief;

/// <summary>Damages a good brief at random, the same way on every run: whatever comes, the reader answers.</summary>
public class BriefMutationTests
{
    private const string Alphabet = "abz019 \t\n:-,.{}[]&*!|>'\"%@`#?~\\\u00B5\uFEFF\uD800\0";

    [Fact]
    public void DamagedBriefsAreAnsweredWithDiagnostics() => Damage(seed: 1, count: 800);

    [Fact]
    [Trait("Category", "Soak")]
    public void DamagedBriefsAreAnsweredForLong()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        Damage(seed: 2, count: 100_000);
    }

    private static void Damage(int seed, int count)
    {
        Random random = new(seed);
        int refused = 0;
        for (int i = 0; i < count; i++)
        {
            string text = Mutate(ExampleBrief.Full, random);

            BriefReading reading = BriefReader.Read("b.yaml", text);

            bool hasError = reading.Diagnostics.Any(d => d.Severity == Severity.Error);
            hasError.ShouldBe(reading.Brief is null, text);
            int lines = text.Split('\n').Length;
            reading.Diagnostics.All(d => d.Found.Length > 0 && d.Expected.Length > 0 && d.Position.Line <= lines + 1)
                .ShouldBeTrue(text);
            if (reading.Brief is { } brief)
            {
                foreach (NetReview net in brief.Nets)
                {
                    net.Terminals.Sum(t => t.CurrentA).ShouldBe(0, 1e-6);
                }
            }

            refused += hasError ? 1 : 0;
        }

        // Most damage must be noticed, or the loop above would prove little.
        refused.ShouldBeGreaterThan(count / 3);
    }

    private static string Mutate(string text, Random random)
    {
        int edits = random.Next(1, 5);
        for (int i = 0; i < edits; i++)
        {
            int at = random.Next(text.Length);
            int length = Math.Min(random.Next(1, 40), text.Length - at);
            text = random.Next(4) switch
            {
                0 => text.Remove(at, length),
                1 => text.Insert(at, Alphabet[random.Next(Alphabet.Length)].ToString()),
                2 => text.Insert(random.Next(text.Length), text.Substring(at, length)),
                _ => text.Remove(at, 1).Insert(at, Alphabet[random.Next(Alphabet.Length)].ToString()),
            };
        }

        return text;
    }
}
