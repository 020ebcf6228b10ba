using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Commands;

/// <summary>Bad input ends in one clear line with its place, exit code 2, and a report that says no more.</summary>
public sealed class BadInputTests
{
    private const string Bar = """
          - name: Bar
            at: { layer: top, x: 10 mm, y: 5 mm }
            terminals:
              - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }, enters: 1 A }
              - { name: right, rectangle: { layer: top, from: [45 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 1 A }
        """;

    [Fact]
    public void MissingBriefIsNamed()
    {
        CommandRun run = CommandRun.Of("check", Path.Combine(Path.GetTempPath(), "no-such-brief.yaml"));

        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().ShouldContain("no-such-brief.yaml: error BRF000: found no such file");
    }

    [Fact]
    public void MissingBoardFolderIsNamed()
    {
        using SyntheticBoard board = new(1);
        string brief = board.Rectangle(1, 0, 0, 50, 10).WriteBrief(Bar);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("files: .", "files: nowhere", StringComparison.Ordinal));

        CommandRun run = CommandRun.Of("check", brief);

        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().ShouldContain("nowhere");
        ShouldSayThatItCouldNotJudge(board);
    }

    [Fact]
    public void TruncatedGerberCanNotPass()
    {
        using SyntheticBoard board = new(1);
        string brief = board.Rectangle(1, 0, 0, 50, 10).WriteBrief(Bar);
        string layer = Path.Combine(board.Folder, "layer1.gbr");
        string text = File.ReadAllText(layer);
        File.WriteAllText(layer, text[..(text.LastIndexOf("%LPD", StringComparison.Ordinal) + 3)]);

        CommandRun run = CommandRun.Of("check", brief);

        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldNotBeEmpty();
        run.Errors[0].ShouldContain("layer1.gbr:5:1: error");
        ShouldSayThatItCouldNotJudge(board);
    }

    [Fact]
    public void UnknownApertureHasLineAndColumn()
    {
        using SyntheticBoard board = new(1);
        string brief = board.Rectangle(1, 0, 0, 50, 10).Draw(1, "D77*X1000000Y1000000D03*").WriteBrief(Bar);

        CommandRun run = CommandRun.Of("check", brief);

        run.ExitCode.ShouldBe(2);
        run.Errors[0].ShouldContain("layer1.gbr:");
        run.Errors[0].ShouldContain("D77");
        ShouldSayThatItCouldNotJudge(board);
    }

    [Fact]
    public void UnknownPinPointsAtItsLineOfTheBrief()
    {
        using SyntheticBoard board = new(1);
        string brief = board.Draw(1, "%TO.P,J1,1*%").Draw(1, "%ADD10C,2*%D10*X2500000Y5000000D03*%TD*%").Rectangle(1, 0, 0, 50, 10)
            .WriteBrief(Bar.Replace("rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }", "pins: [J1.9]", StringComparison.Ordinal));

        CommandRun run = CommandRun.Of("check", brief);

        run.ExitCode.ShouldBe(2);
        string line = run.Errors.ShouldHaveSingleItem();
        line.ShouldMatch(@"brief\.yaml:17:\d+: error CIR010: found the pin J1\.9; expected a pin on net .*did you mean J1\.1\?");
        ShouldSayThatItCouldNotJudge(board);
    }

    [Fact]
    public void CurrentWithoutUnitIsRefused()
    {
        using SyntheticBoard board = new(1);
        string brief = board.Rectangle(1, 0, 0, 50, 10).WriteBrief(Bar.Replace("enters: 1 A", "enters: 1", StringComparison.Ordinal));

        CommandRun run = CommandRun.Of("check", brief);

        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().ShouldMatch(@"brief\.yaml:17:\d+: error BRF\d+: .*A");
        ShouldSayThatItCouldNotJudge(board);
    }

    [Fact]
    public void MissingArgumentShowsHelpAndCanNotJudge()
    {
        CommandRun run = CommandRun.Of("check");

        run.ExitCode.ShouldBe(2);
        run.Error.ShouldContain("BRIEF");
    }

    private static void ShouldSayThatItCouldNotJudge(SyntheticBoard board) =>
        File.ReadAllText(Path.Combine(board.Folder, "copperpath-report", "brief", "results.json")).ShouldContain("\"could not judge\"");
}
