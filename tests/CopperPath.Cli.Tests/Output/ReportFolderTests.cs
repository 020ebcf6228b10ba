using System.Text.Json;
using CopperPath.Cli.Output;
using CopperPath.Cli.Report;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests;
using CopperPath.Core.Tests.Files;
using Json.Schema;

namespace CopperPath.Cli.Tests.Output;

/// <summary>A report's folder holds one report, whole, and nothing of anybody else's is touched.</summary>
public sealed class ReportFolderTests
{
    [Fact]
    public void AnUndecidedReviewTakesThePlaceOfAPassingReport()
    {
        using SmallReview review = new();
        review.Check().ExitCode.ShouldBe(0);
        File.Exists(Path.Combine(review.Report, "layer-1.png")).ShouldBeTrue();
        File.WriteAllText(review.Brief, File.ReadAllText(review.Brief).Replace("net: BAR", "net: RAB", StringComparison.Ordinal));

        CommandRun run = review.Check();

        run.ExitCode.ShouldBe(2);
        ShouldSayUndecided(review, "CIR001");
    }

    [Fact]
    public void SoDoesABriefThatCanNotBeRead()
    {
        using SmallReview review = new();
        review.Check().ExitCode.ShouldBe(0);
        review.BreakBrief();

        review.Check().ExitCode.ShouldBe(2);

        ShouldSayUndecided(review, "BRF001");
    }

    [Fact]
    public void SoDoesABriefThatIsGone()
    {
        using SmallReview review = new();
        review.Check().ExitCode.ShouldBe(0);
        File.Delete(review.Brief);

        review.Check().ExitCode.ShouldBe(2);

        ShouldSayUndecided(review, "BRF000");
    }

    [Fact]
    public void ABriefThatNeverWasLeavesNothing()
    {
        using SmallReview review = new();
        File.Delete(review.Brief);

        review.Check().ExitCode.ShouldBe(2);

        Directory.Exists(review.Home).ShouldBeFalse();
    }

    [Fact]
    public void PicturesOfAnotherRunDoNotStayAmongNewOnes()
    {
        using SmallReview review = new();
        review.Check("--pictures", "svg,png").ExitCode.ShouldBe(0);
        File.Exists(Path.Combine(review.Report, "layer-1.svg")).ShouldBeTrue();

        review.Check().ExitCode.ShouldBe(0);

        File.Exists(Path.Combine(review.Report, "layer-1.svg")).ShouldBeFalse();
        File.Exists(Path.Combine(review.Report, "layer-1.png")).ShouldBeTrue();
        SmallReview.Names(review.Home).ShouldBe(["brief"]);
    }

    [Theory]
    [InlineData("results.json.part")]
    [InlineData("results.json")]
    [InlineData(".copperpath-report")]
    public void NothingIsWrittenThroughALinkThatLiesInWait(string name)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links need rights of their own on this system");
        using SmallReview review = new();
        string victim = Path.Combine(review.Folder, ".victim");
        File.WriteAllText(victim, "precious");
        Directory.CreateDirectory(review.Report);
        File.CreateSymbolicLink(Path.Combine(review.Report, name), victim);

        CommandRun run = review.Check();

        File.ReadAllText(victim).ShouldBe("precious");
        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().ShouldContain(name == ".copperpath-report" ? "error OUT003" : $"error OUT003: found {name} in it");
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ALinkInPlaceOfTheReportsFolderIsRefused(bool isHome)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "links need rights of their own on this system");
        using SmallReview review = new();
        string elsewhere = Directory.CreateTempSubdirectory("copperpath-").FullName;
        if (isHome)
        {
            Directory.CreateSymbolicLink(review.Home, elsewhere);
        }
        else
        {
            Directory.CreateDirectory(review.Home);
            Directory.CreateSymbolicLink(review.Report, elsewhere);
        }

        CommandRun run = review.Check();

        SmallReview.Names(elsewhere).ShouldBeEmpty();
        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().ShouldContain("error OUT003: found a link; expected a folder: nothing is written through a link");
        Directory.Delete(elsewhere);
    }

    [Fact]
    public void FilesOfSomebodyElseAreNeverRemoved()
    {
        using SmallReview review = new();
        review.Check().ExitCode.ShouldBe(0);
        File.WriteAllText(Path.Combine(review.Report, "notes.txt"), "mine");
        string before = SmallReview.Content(review.Home);

        CommandRun run = review.Check();

        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().ShouldContain("error OUT003: found notes.txt in it, which is of no earlier report");
        SmallReview.Content(review.Home).ShouldBe(before);

        // The board's own folder and the one the command runs in are no place for a report either.
        review.Check("--output", review.Folder).ExitCode.ShouldBe(2);
        review.Check("--output", ".").Errors.ShouldHaveSingleItem().ShouldContain("the folder the command runs in");
        SmallReview.Content(review.Home).ShouldBe(before);
    }

    [Fact]
    public void AManifestThatNamesFilesElsewhereReachesNoneOfThem()
    {
        using SmallReview review = new();
        string victim = Path.Combine(review.Folder, ".victim");
        File.WriteAllText(victim, "precious");
        review.Check().ExitCode.ShouldBe(0);
        File.AppendAllText(Path.Combine(review.Report, ReportManifest.FileName), "../../.victim\n" + victim + "\n..\n");

        review.Check().ExitCode.ShouldBe(0);

        File.ReadAllText(victim).ShouldBe("precious");
    }

    [Fact]
    public void ReportsOfCheckAndCurveDoNotReplaceEachOther()
    {
        using SmallReview review = new();
        review.Check().ExitCode.ShouldBe(0);

        CommandRun.Of("curve", review.Brief, "--output", review.Report).Errors.ShouldHaveSingleItem().ShouldContain("of another command");

        File.Exists(Path.Combine(review.Report, "report.html")).ShouldBeTrue();
    }

    [Fact]
    public void APlaceThatCanNotBeWrittenIsToldBeforeTheWorkBegins()
    {
        using SmallReview review = new();
        File.WriteAllText(Path.Combine(review.Folder, ".file"), "");
        using StringWriter output = new(), error = new();

        int exit = Program.Run(
            ["check", review.Brief, "--output", Path.Combine(review.Folder, ".file", "report")], new Terminal(output, error, IsErrorRedirected: false));

        exit.ShouldBe(2);
        output.ToString().ShouldBeEmpty();
        error.ToString().ShouldContain("error OUT001: found a folder that can not be written");
        error.ToString().ShouldNotContain("Reading");
    }

    [Fact]
    public void AStarterBriefIsNewOrNotWritten()
    {
        using SmallReview review = new();
        string link = Path.Combine(review.Folder, ".new.yaml"), target = Path.Combine(review.Folder, ".target");
        File.CreateSymbolicLink(link, target);
        File.WriteAllText(Path.Combine(review.Folder, ".file"), "");

        CommandRun.Of("survey", review.Folder, "--brief", link).Errors.ShouldContain(line => line.Contains("error OUT002", StringComparison.Ordinal));
        CommandRun nowhere = CommandRun.Of("survey", review.Folder, "--brief", Path.Combine(review.Folder, ".file", "new.yaml"));
        CommandRun good = CommandRun.Of("survey", review.Folder, "--brief", Path.Combine(review.Folder, ".made", "new.yaml"));

        File.Exists(target).ShouldBeFalse();
        nowhere.Errors.ShouldContain(line => line.Contains("error OUT001", StringComparison.Ordinal));
        nowhere.Output.ShouldBeEmpty();
        good.ExitCode.ShouldBe(0);
        SmallReview.Names(Path.Combine(review.Folder, ".made")).ShouldBe(["new.yaml"]);
    }

    [Fact]
    public void AFolderRemovedMidwayIsMadeAgain()
    {
        using SmallReview review = new();
        using ReportFolder report = ReportFolder.Prepare(review.Report, "check", out _)!;
        Directory.Delete(review.Home, recursive: true);

        report.Replace([new OutputFile("a.txt", [1])]).ShouldBeNull();

        SmallReview.Names(review.Report).ShouldBe([ReportManifest.FileName, "a.txt"]);
        SmallReview.Names(review.Home).ShouldBe(["brief"]);
    }

    [Fact]
    public void ABriefABoardAndAFolderRemovedMidwayLoseNothing()
    {
        using SmallReview review = new();
        review.Check().ExitCode.ShouldBe(0);
        string whole = SmallReview.Content(review.Report);
        using Remover output = new(review);
        using StringWriter error = new();

        Program.Run(["check", review.Brief], new Terminal(output, error, IsErrorRedirected: true)).ShouldBe(0);

        error.ToString().ShouldBeEmpty();
        File.Exists(review.Brief).ShouldBeFalse();
        SmallReview.Content(review.Report).ShouldBe(whole);
        SmallReview.Names(review.Home).ShouldBe(["brief"]);
    }

    [Fact]
    public void AFileThatCanNotBeWrittenLeavesTheEarlierReportAlone()
    {
        using SmallReview review = new();
        review.Check().ExitCode.ShouldBe(0);
        string before = SmallReview.Content(review.Home);
        using (ReportFolder report = ReportFolder.Prepare(review.Report, "check", out _)!)
        {
            // Two files of one name: the second is not new.
            report.Replace([new OutputFile("a.txt", [1]), new OutputFile("a.txt", [2])])!.ShouldContain("error OUT001");
        }

        SmallReview.Content(review.Home).ShouldBe(before);
    }

    [Fact]
    public void AnExceptionThatPassesLeavesNothingBehind()
    {
        using SmallReview review = new();

        Should.Throw<InvalidOperationException>(() =>
        {
            using ReportFolder report = ReportFolder.Prepare(review.Report, "check", out _)!;
            Directory.Exists(review.Home).ShouldBeTrue();
            throw new InvalidOperationException();
        });

        Directory.Exists(review.Home).ShouldBeFalse();
    }

    [Theory]
    [InlineData("../up.txt")]
    [InlineData("below/a.txt")]
    [InlineData("")]
    [InlineData("a\nb")]
    public void NamesThatLeadElsewhereAreNotWritten(string name)
    {
        using SmallReview review = new();
        using ReportFolder report = ReportFolder.Prepare(review.Report, "check", out _)!;

        report.Replace([new OutputFile(name, [1])])!.ShouldContain("error OUT001");
        Directory.Exists(review.Report).ShouldBeFalse();
    }

    [Fact]
    public void APipeForABriefIsRefusedAtOnce()
    {
        using SmallReview review = new();
        File.Delete(review.Brief);
        SpecialFile.Make(SpecialFile.Pipe, review.Brief);

        CommandRun run = SpecialFile.Promptly(() => review.Check());

        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().ShouldContain("error BRF000: found a named pipe");
    }

    /// <summary>Removes brief, board and reports as soon as the first line is said, between reading and solving.</summary>
    private sealed class Remover(SmallReview review) : StringWriter
    {
        public override void WriteLine(string? value)
        {
            if (File.Exists(review.Brief))
            {
                File.Delete(review.Brief);
                File.Delete(Path.Combine(review.Folder, "layer1.gbr"));
                Directory.Delete(review.Home, recursive: true);
            }

            base.WriteLine(value);
        }
    }

    private static void ShouldSayUndecided(SmallReview review, string code)
    {
        SmallReview.Names(review.Report).ShouldBe([ReportManifest.FileName, "findings.sarif", "report.html", "results.json"]);
        using JsonDocument results = JsonDocument.Parse(File.ReadAllText(Path.Combine(review.Report, "results.json")));
        results.RootElement.GetProperty("verdict").GetString().ShouldBe("could not judge");
        results.RootElement.GetProperty("messages").EnumerateArray().ShouldContain(message => message.GetString()!.Contains(code));
        JsonSchema.FromText(File.ReadAllText(Path.Combine(SharedData.ProjectRoot, "docs", "results.schema.json")))
            .Evaluate(results.RootElement).IsValid.ShouldBeTrue();
        string page = File.ReadAllText(Path.Combine(review.Report, "report.html"));
        page.ShouldContain("<strong>Could not judge</strong>");
        page.ShouldContain(code);
        File.ReadAllText(Path.Combine(review.Report, "findings.sarif")).ShouldContain(code);
        SmallReview.Names(review.Home).ShouldBe(["brief"]);
    }
}
