using System.Diagnostics;

namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>
/// Damaged files: whatever the bytes, each reader answers, soon, within bounds, and says why when it gives nothing.
/// The same inputs on every run; the long run is documented in docs/readers-limits.md.
/// </summary>
public sealed class FuzzTests : IDisposable
{
    private const long MostMemoryBytes = 512L << 20;

    /// <summary>In memory where the system has such a place: archives are opened from files, a million times.</summary>
    private readonly string _folder = Directory.CreateDirectory(Path.Combine(
        Directory.Exists("/dev/shm") ? "/dev/shm" : Path.GetTempPath(), Path.GetRandomFileName())).FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void DamagedGerberIsAnswered() => ShouldBeAnswered(FuzzTargets.Gerber(1), 12_000);

    [Fact]
    public void DamagedDrillFilesAreAnswered() => ShouldBeAnswered(FuzzTargets.Drill(1), 10_000);

    [Fact]
    public void DamagedBriefsAreAnswered() => ShouldBeAnswered(FuzzTargets.Brief(1), 1_000);

    [Fact]
    public void DamagedArchivesAreAnswered()
    {
        ShouldBeAnswered(FuzzTargets.Zip(1, _folder), 600);
        ShouldBeAnswered(FuzzTargets.ZipOfDamagedFiles(1, _folder), 600);
    }

    /// <summary>
    /// A million inputs in all. Run it alone in its process: the working set is part of what is asserted.
    /// </summary>
    [Theory]
    [Trait("Category", "Soak")]
    [InlineData("Gerber", 550_000)]
    [InlineData("drill", 350_000)]
    [InlineData("brief", 50_000)]
    [InlineData("archive, damaged", 25_000)]
    [InlineData("archive of damaged files", 25_000)]
    public void AMillionDamagedInputsAreAnswered(string name, int count)
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("COPPERPATH_SOAK") is not null, "set COPPERPATH_SOAK to run");
        FuzzTarget[] targets =
        [
            FuzzTargets.Gerber(2), FuzzTargets.Drill(2), FuzzTargets.Brief(2), FuzzTargets.Zip(2, _folder),
            FuzzTargets.ZipOfDamagedFiles(2, _folder),
        ];
        var clock = Stopwatch.StartNew();
        FuzzTally tally = targets.Single(target => target.Name == name).Run(count);
        using var process = Process.GetCurrentProcess();
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{name}: {tally.Inputs} inputs, {tally.Refused} refused, slowest {tally.Slowest.TotalMilliseconds:0} ms, "
            + $"most allocated by one {tally.MostAllocatedBytes / 1048576.0:0.0} MiB, {clock.Elapsed.TotalSeconds:0} s in all, "
            + $"peak working set of the process {process.PeakWorkingSet64 / 1048576.0:0} MiB");
        process.PeakWorkingSet64.ShouldBeLessThan(MostMemoryBytes);
    }

    private static void ShouldBeAnswered(FuzzTarget target, int count)
    {
        FuzzTally tally = target.Run(count);

        // Some damage must be noticed and some must not, or the run would prove little.
        tally.Refused.ShouldBeInRange(count / 100, count - (count / 100));
        tally.MostAllocatedBytes.ShouldBeLessThan(MostMemoryBytes);
    }
}
