using System.Diagnostics;
using System.Text;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>
/// The reader against a pass that only splits the same bytes at '*' into strings. Run with COPPERPATH_SOAK=1 on a
/// quiet machine: <c>dotnet test --filter FullyQualifiedName~GerberSpeedTests</c>.
/// </summary>
[Trait("Category", "Soak")]
public sealed class GerberSpeedTests
{
    private const int Runs = 15;

    [Fact]
    public void ReadingIsComparedWithSplitting()
    {
        if (Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is null)
        {
            Assert.Skip("set COPPERPATH_SOAK to measure");
        }

        string folder = SharedData.Require("boards-open");
        double splitting = 0;
        double reading = 0;
        foreach (string file in Directory.GetFiles(folder, "*", SearchOption.AllDirectories)
            .Where(f => new FileInfo(f).Length > 200_000 && IsGerber(f)).Order(StringComparer.Ordinal))
        {
            byte[] bytes = File.ReadAllBytes(file);
            double split = Best(() => Split(bytes));
            double read = Best(() => GerberReader.Read("x", bytes).Diagnostics.Count);
            splitting += split;
            reading += read;
            TestContext.Current.TestOutputHelper?.WriteLine(
                $"{Path.GetFileName(file),-40} {bytes.Length / 1e6,6:0.00} MB split {split,7:0.00} ms read {read,7:0.00} ms x{read / split:0.0}");
        }

        TestContext.Current.TestOutputHelper?.WriteLine(
            $"all files: split {splitting:0.0} ms, read {reading:0.0} ms, x{reading / splitting:0.00}");
    }

    private static bool IsGerber(string file) =>
        File.ReadLines(file).Take(40).Any(line => line.StartsWith("%FS", StringComparison.Ordinal));

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

    private static double Best(Func<int> work)
    {
        double best = double.MaxValue;
        for (int i = 0; i < Runs; i++)
        {
            long start = Stopwatch.GetTimestamp();
            work();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        return best;
    }
}
