using System.Diagnostics;
using System.Text;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>
/// Parsing alone - bytes to objects with exact primitives - against a pass that only splits the same bytes at '*'
/// into strings, on the three largest Gerber files of the shared boards, both in turn in one run. Figures and command
/// in docs/benchmarks-reading.md.
/// </summary>
[Trait("Category", "Soak")]
public sealed class GerberSpeedTests
{
    private const int WarmUps = 60;
    private const int Runs = 61;
    private const double MostTimesSplitting = 3;

    [Fact]
    public void ParsingTakesAtMostThreeTimesAsLongAsSplitting()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to measure");
        string folder = SharedData.Require("boards-open");
        IEnumerable<string> largest = Directory.GetFiles(folder, "*", SearchOption.AllDirectories)
            .Where(IsGerber).OrderByDescending(file => new FileInfo(file).Length).Take(3);
        List<string> tooSlow = [];
        foreach (string file in largest)
        {
            byte[] bytes = File.ReadAllBytes(file);
            (List<double> split, List<double> parse, List<double> read) = Measure(bytes);
            string line = $"{Path.GetFileName(file)}: {bytes.Length} bytes, {Split(bytes)} pieces; "
                + $"median of {Runs}: split {Median(split):0.00} ms, parse {Median(parse):0.00} ms = {Median(parse) / Median(split):0.00} times, "
                + $"read and flatten {Median(read):0.00} ms; fastest: split {split[0]:0.00} ms, parse {parse[0]:0.00} ms = "
                + $"{parse[0] / split[0]:0.00} times, read and flatten {read[0]:0.00} ms";
            TestContext.Current.TestOutputHelper?.WriteLine(line);
            if (Median(parse) > MostTimesSplitting * Median(split))
            {
                tooSlow.Add(line);
            }
        }

        tooSlow.ShouldBeEmpty();
    }

    /// <summary>Times of each, in milliseconds, fastest first.</summary>
    private static (List<double> Split, List<double> Parse, List<double> Read) Measure(byte[] bytes)
    {
        for (int i = 0; i < WarmUps; i++)
        {
            Split(bytes);
            Parse(bytes);
        }

        Read(bytes);
        List<double> split = [];
        List<double> parse = [];
        List<double> read = [];
        for (int i = 0; i < Runs; i++)
        {
            split.Add(MillisecondsOf(() => Split(bytes)));
            parse.Add(MillisecondsOf(() => Parse(bytes)));
            read.Add(MillisecondsOf(() => Read(bytes)));
        }

        split.Sort();
        parse.Sort();
        read.Sort();
        return (split, parse, read);
    }

    private static bool IsGerber(string file) =>
        File.ReadLines(file).Take(40).Any(line => line.Contains("%FS", StringComparison.Ordinal));

    private static int Split(byte[] bytes)
    {
        var pieces = new List<string>();
        ReadOnlySpan<byte> rest = bytes;
        for (int star = rest.IndexOf((byte)'*'); star >= 0; star = rest.IndexOf((byte)'*'))
        {
            pieces.Add(Encoding.ASCII.GetString(rest[..star]));
            rest = rest[(star + 1)..];
        }

        return pieces.Count;
    }

    private static int Parse(byte[] bytes) =>
        GerberReader.Parse("x", bytes, GerberReadOptions.Default).Drawing.Operations.Length;

    private static int Read(byte[] bytes) => GerberReader.Read("x", bytes).Diagnostics.Count;

    private static double MillisecondsOf(Func<int> work)
    {
        long start = Stopwatch.GetTimestamp();
        work();
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static double Median(List<double> sorted) => sorted[sorted.Count / 2];
}
