using System.Diagnostics;

namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>
/// Damaged files: whatever the bytes, each reader answers, soon, within bounds, and says why when it gives nothing.
/// The same inputs on every run; the long run is documented in docs/readers-limits.md.
/// </summary>
public sealed class FuzzTests : IDisposable
{
    private const long MostMemoryBytes = 512L << 20;

    private readonly string _folder = Directory.CreateTempSubdirectory("copperpath-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void DamagedGerberIsAnswered() => ShouldBeAnswered(FuzzTargets.Gerber(1), 12_000);

    [Fact]
    public void DamagedDrillFilesAreAnswered() => ShouldBeAnswered(FuzzTargets.Drill(1), 10_000);

    [Fact]
    public void DamagedBriefsAreAnswered() => ShouldBeAnswered(FuzzTargets.Brief(1), 1_000);

    [Fact]
    public void DamagedArchivesAreAnswered() => ShouldBeAnswered(FuzzTargets.Zip(1, _folder), 1_500);

    /// <summary>
    /// A million inputs, or as many as COPPERPATH_FUZZ_INPUTS says. Run it alone in its process: the working set is
    /// part of what is asserted.
    /// </summary>
    [Fact]
    [Trait("Category", "Soak")]
    public void AMillionDamagedInputsAreAnswered()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        int inputs = int.TryParse(Environment.GetEnvironmentVariable("COPPERPATH_FUZZ_INPUTS"), out int asked) ? asked : 1_000_000;
        foreach ((FuzzTarget target, double share) in new[]
        {
            (FuzzTargets.Gerber(2), 0.5),
            (FuzzTargets.Drill(2), 0.3),
            (FuzzTargets.Brief(2), 0.1),
            (FuzzTargets.Zip(2, _folder), 0.1),
        })
        {
            var clock = Stopwatch.StartNew();
            FuzzTally tally = target.Run((int)(inputs * share));
            using var process = Process.GetCurrentProcess();
            TestContext.Current.TestOutputHelper?.WriteLine(
                $"{target.Name}: {tally.Inputs} inputs, {tally.Refused} refused, slowest {tally.Slowest.TotalMilliseconds:0} ms, "
                + $"most allocated {tally.MostAllocatedBytes / 1048576.0:0.0} MiB, {clock.Elapsed.TotalSeconds:0} s, "
                + $"peak working set so far {process.PeakWorkingSet64 / 1048576.0:0} MiB");
            process.PeakWorkingSet64.ShouldBeLessThan(MostMemoryBytes);
        }
    }

    private static void ShouldBeAnswered(FuzzTarget target, int count)
    {
        FuzzTally tally = target.Run(count);

        // Most damage must be noticed and some must not, or the run would prove little.
        tally.Refused.ShouldBeInRange(count / 10, count - (count / 100));
        tally.MostAllocatedBytes.ShouldBeLessThan(MostMemoryBytes);
    }
}
