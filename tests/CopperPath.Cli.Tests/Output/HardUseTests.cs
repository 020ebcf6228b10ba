using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests;

namespace CopperPath.Cli.Tests.Output;

/// <summary>
/// The program as a process among others: streams that take nothing, disks that are full, signals. Exit codes of signals are those
/// of the shell (POSIX, IEEE Std 1003.1, 2.8.2: more than 128; 128 and the number by common practice).
/// </summary>
public sealed class HardUseTests
{
    private static bool IsSoak => Environment.GetEnvironmentVariable("COPPERPATH_SOAK") == "1";

    [Theory]
    [InlineData("\"$@\" > /dev/full", 2, "standard output: error OUT004: found a place that can not be written (No space left on device); expected one that takes the answer\n")]
    [InlineData("\"$@\" >&-", 2, "standard output: error OUT004")]
    [InlineData("\"$@\" > /dev/full 2> /dev/full", 2, "")]
    [InlineData("{ \"$@\"; echo $? >&2; } | true", 0, "0\n")]
    public void AnAnswerThatNobodyTakesLosesNoFiles(string shell, int exit, string said)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs /dev/full");
        using SmallReview review = new();
        using ProgramProcess program = ProgramProcess.StartBy(shell, "check", review.Brief);

        (int Exit, _, string error) = program.End();

        Exit.ShouldBe(exit);
        error.ShouldStartWith(said);
        error.Split('\n').Length.ShouldBeLessThanOrEqualTo(2);
        File.Exists(Path.Combine(review.Report, "report.html")).ShouldBeTrue();
        SmallReview.Names(review.Home).ShouldBe(["brief"]);
    }

    [Fact]
    public void AFullDiskLeavesTheEarlierReportWholeAndTheAnswerSaid()
    {
        using MemoryDisk mounted = MemoryDisk.Of("size=400k");
        string disk = mounted.Folder;
        using SmallReview review = new();
        string folder = Path.Combine(disk, "report");
        review.Check("--output", folder, "--picture-width", "600").ExitCode.ShouldBe(0);
        string before = SmallReview.Content(disk);

        CommandRun run = review.Check("--output", folder, "--picture-width", "600", "--pictures", "png,svg,pdf");

        run.ExitCode.ShouldBe(2);
        run.Output.ShouldStartWith("Verdict: all within limits");
        run.Errors.ShouldHaveSingleItem().ShouldContain("error OUT001: found a folder that can not be written (No space left on device");
        SmallReview.Content(disk).ShouldBe(before);
    }

    [Fact]
    public void ADiskThatIsFullBeforehandIsToldBeforeTheWork()
    {
        using MemoryDisk mounted = MemoryDisk.Of("size=16k");
        string disk = mounted.Folder;
        using SmallReview review = new();
        File.WriteAllBytes(Path.Combine(disk, "full"), new byte[16 << 10]);

        CommandRun run = review.Check("--output", Path.Combine(disk, "report"));

        run.ExitCode.ShouldBe(2);
        run.Output.ShouldBeEmpty();
        run.Errors.ShouldHaveSingleItem().ShouldContain("No space left on device");
        SmallReview.Names(disk).ShouldBe(["full"]);
    }

    [Fact]
    public void AFolderThatCanNotBeMovedIsToldBeforeTheWork()
    {
        using MemoryDisk mounted = MemoryDisk.Of("size=1m");
        string disk = mounted.Folder;
        using SmallReview review = new();

        CommandRun run = review.Check("--output", disk);

        run.ExitCode.ShouldBe(2);
        run.Output.ShouldBeEmpty();
        run.Errors.ShouldHaveSingleItem().ShouldContain("busy");
        SmallReview.Names(disk).ShouldBeEmpty();
    }

    [Fact]
    public void AFolderThatOnlyGivesIsToldBeforeTheWork()
    {
        using MemoryDisk mounted = MemoryDisk.Of("size=16k,ro");
        string disk = mounted.Folder;
        using SmallReview review = new();

        CommandRun run = review.Check("--output", Path.Combine(disk, "report"));

        run.ExitCode.ShouldBe(2);
        run.Output.ShouldBeEmpty();
        run.Errors.ShouldHaveSingleItem().ShouldContain("error OUT001: found a folder that can not be written (Read-only file system");
    }

    /// <summary>
    /// A signal at instants spread over a review of the demo board, drawn from a seed. Either it came too late and the new report is
    /// whole, or the earlier one is as it was.
    /// </summary>
    [Fact]
    public void AnInterruptionAtAnyStageEndsTheRunAndLeavesTheEarlierReport()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "sends signals");
        string brief = Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", "revision-a.yaml");
        string home = Directory.CreateTempSubdirectory("copperpath-").FullName;
        string folder = Path.Combine(home, "report");
        CommandRun.Of("check", brief, "--quiet", "--output", folder).ExitCode.ShouldBe(1);
        string whole = SmallReview.Content(folder);
        File.WriteAllText(Path.Combine(folder, "results.json"), "the earlier report");
        string earlier = SmallReview.Content(folder);
        Random random = new(8);
        int interrupted = 0, runs = IsSoak ? 60 : 3;
        for (int i = 0; i < runs; i++)
        {
            string signal = i % 2 == 0 && !IsInterruptIgnored() ? "INT" : "TERM";
            using ProgramProcess program = ProgramProcess.Start("check", brief, "--quiet", "--output", folder);

            // The draft beside the folder shows that the program is under way; what happens before touches no disk.
            for (int waited = 0; SmallReview.Names(home).Length == 1 && waited < 6_000; waited++)
            {
                Thread.Sleep(10);
            }

            Thread.Sleep((i * 2000 / runs) + random.Next(100));
            program.Send(signal);
            (int exit, _, string error) = program.End();

            SmallReview.Names(home).ShouldBe(["report"], $"run {i}");
            if (exit == 1)
            {
                SmallReview.Content(folder).ShouldBe(whole);
                File.WriteAllText(Path.Combine(folder, "results.json"), "the earlier report");
                continue;
            }

            interrupted++;
            exit.ShouldBe(signal == "INT" ? 130 : 143, error);
            error.ShouldBe("Interrupted.\n");
            SmallReview.Content(folder).ShouldBe(earlier);
        }

        interrupted.ShouldBeGreaterThan(0);
        Directory.Delete(home, recursive: true);
    }

    /// <summary>A process that a shell started in the background ignores Ctrl-C, and so do its children (proc(5), SigIgn).</summary>
    private static bool IsInterruptIgnored() => File.Exists("/proc/self/status") && File.ReadLines("/proc/self/status")
        .Any(line => line.StartsWith("SigIgn:", StringComparison.Ordinal) && (Convert.ToUInt64(line[7..].Trim(), 16) & 2) != 0);
}
