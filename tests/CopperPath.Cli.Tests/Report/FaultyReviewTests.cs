using System.Text.Json;
using CopperPath.Cli.Commands;
using CopperPath.Cli.Report;
using CopperPath.Cli.Report.Html;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Report;

/// <summary>The gravest findings have nothing to draw, and no fault of a drawing may hide one.</summary>
public sealed class FaultyReviewTests : IDisposable
{
    private readonly SyntheticBoard _board = new(2);
    private readonly string _folder;

    public FaultyReviewTests() => _folder = Path.Combine(_board.Folder, "out");

    public void Dispose() => _board.Dispose();

    /// <summary>A gap in the copper, a missing drill file, a contact off the board: alone in its brief each is all there is to see.</summary>
    [Theory]
    [InlineData("gap")]
    [InlineData("drill")]
    [InlineData("contact")]
    public void AnOpenStretchAloneIsReportedWhole(string fault)
    {
        _board.Draw(1, "%TO.N,FEED*%").Rectangle(1, 0, 0, fault == "gap" ? 20 : 50, 10);
        _board.Draw(1, "%TO.N,FEED*%").Rectangle(fault == "drill" ? 2 : 1, 30, 0, 50, 10);
        _board.Draw(2, "%TO.N,FEED*%").Rectangle(2, 30, 0, 50, 10).SpareHole(25, 12);
        CommandRun run = Check(
            "rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }",
            fault == "drill" ? "rectangle: { layer: bottom, from: [45 mm, 0 mm], to: [50 mm, 10 mm] }"
            : fault == "gap" ? "rectangle: { layer: top, from: [45 mm, 0 mm], to: [50 mm, 10 mm] }"
            : "circle: { layer: top, x: -90 mm, y: 300 mm, diameter: 2 mm }");

        run.ExitCode.ShouldBe(1, run.Error);
        run.Output.ShouldContain("No current can flow");
        run.Error.ShouldNotContain("OUT005");
        Read("findings.csv").ShouldContain("No current can flow");
        using JsonDocument results = JsonDocument.Parse(Read("results.json"));
        MachineOutputTests.ShouldFollowTheSchema(results.RootElement);
        results.RootElement.GetProperty("findings").GetArrayLength().ShouldBe(1);
        File.Exists(Path.Combine(_folder, "layer-1.png")).ShouldBeTrue();
    }

    /// <summary>Copper all around, and yet nothing to judge: the current passes from contact to contact.</summary>
    [Theory]
    [InlineData("rectangle: { layer: top, from: [0 mm, 0 mm], to: [25 mm, 10 mm] }", "rectangle: { layer: top, from: [25 mm, 0 mm], to: [50 mm, 10 mm] }")]
    [InlineData("circle: { layer: top, x: 20 mm, y: 5 mm, diameter: 2 mm }", "circle: { layer: top, x: 21 mm, y: 5 mm, diameter: 2 mm }")]
    public void CurrentThatStaysInsideContactsIsNoPass(string from, string to)
    {
        _board.Draw(1, "%TO.N,FEED*%").Rectangle(1, 0, 0, 50, 10).Rectangle(2, 0, 0, 50, 10).SpareHole(25, 12);

        CommandRun run = Check(from, to);

        run.ExitCode.ShouldBe(2, run.Error);
        run.Output.ShouldContain("the contacts touch each other, so the current crosses no copper between them");
        using JsonDocument results = JsonDocument.Parse(Read("results.json"));
        MachineOutputTests.ShouldFollowTheSchema(results.RootElement);
        results.RootElement.GetProperty("nets")[0].GetProperty("status").GetString().ShouldBe("contacts touch");
    }

    [Fact]
    public void PicturesThatFailAreNamedAndAllElseIsMade()
    {
        Review sound = Analysis.Check(Neck());
        ReportParts parts = new();

        // A board without a name breaks the title of every picture of a layer and nothing else.
        Review faulty = sound with { Brief = sound.Brief! with { Board = sound.Brief.Board with { Name = null! } } };
        IReadOnlyList<OutputFile> files = ReviewFiles.Of(faulty, Stretch.Of(faulty), BriefSource.Of("brief.yaml", faulty), new CheckOptions(), parts);

        files.Select(file => file.Name).ShouldBe(
            ["results.json", "findings.sarif", "nets.csv", "terminals.csv", "plated-holes.csv", "sections.csv", "findings.csv", "report.html", "stages.png", "stages-top.png", "stages-bottom.png"]);
        parts.Missing.Select(part => part.Name).ShouldBe(["layer-1.png", "rise-layer-1.png"]);
        parts.Missing.ShouldAllBe(part => !part.IsResult && part.ToString().Contains(": error OUT005: found a fault while it was made (", StringComparison.Ordinal));
    }

    [Fact]
    public void ASectionThatFailsIsNamedInThePage()
    {
        Review sound = Analysis.Check(Neck());
        ReportParts parts = new();

        // The list of defaults stands in the section on what the answer rests on, and among the results.
        Review faulty = sound with { StatedDefaults = null! };
        IReadOnlyList<OutputFile> files = ReviewFiles.Of(faulty, Stretch.Of(faulty), BriefSource.Of("brief.yaml", faulty), new CheckOptions(), parts);

        parts.Missing.Select(part => (part.Name, part.IsResult)).ShouldBe([("report.html, section basis", false), ("results.json", true)]);
        string page = System.Text.Encoding.UTF8.GetString(files.Single(file => file.Name == "report.html").Content);
        page.ShouldContain("<section id=\"basis\"><h2>Missing: basis</h2><p>This section could not be made: ");
        page.ShouldContain("<section id=\"findings\"");
    }

    [Fact]
    public void ASilentStandardOutputLosesNoFile()
    {
        using StringWriter error = new();
        using BrokenWriter output = new();

        int exit = Program.Run(["check", Neck(), "--output", _folder], new Terminal(output, error, IsErrorRedirected: true));

        exit.ShouldBe(1, error.ToString());
        error.ToString().ShouldContain("standard output: error OUT005: found a fault while it was made (IOException: full)");
        Read("results.json").ShouldContain("\"beyond limits\"");
    }

    [Fact]
    public void AFaultAnywhereIsOneLineAndNoTrace()
    {
        using StringWriter error = new();
        using BrokenWriter output = new();

        int exit = Program.Run(["survey", Path.GetDirectoryName(Neck())!], new Terminal(output, error, IsErrorRedirected: true));

        exit.ShouldBe(2);
        error.ToString().TrimEnd().ShouldMatch(@"^CopperPath: error RUN001: found a fault of the program \(IOException: full\)[^\n]*$");
    }

    private string Neck()
    {
        _board.Draw(1, "%TO.N,FEED*%").Rectangle(1, 0, 0, 20, 10).Rectangle(1, 20, 4.5, 30, 5.5).Rectangle(1, 30, 0, 50, 10).Rectangle(2, 0, 0, 50, 10).SpareHole(25, 12);
        string brief = Brief("rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }", "rectangle: { layer: top, from: [45 mm, 0 mm], to: [50 mm, 10 mm] }");
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("rise: 200 K", "rise: 20 K", StringComparison.Ordinal));
        return brief;
    }

    private CommandRun Check(string from, string to) => CommandRun.Of("check", Brief(from, to), "--output", _folder);

    private string Brief(string from, string to) => _board.WriteBrief($$"""
          - name: Feed
            net: FEED
            terminals:
              - { name: connector, {{from}}, enters: 5 A }
              - { name: load, {{to}}, leaves: 5 A }
        """);

    private string Read(string file) => File.ReadAllText(Path.Combine(_folder, file));

    /// <summary>A stream on a full disk.</summary>
    private sealed class BrokenWriter : StringWriter
    {
        public override void WriteLine(string? value) => throw new IOException("full");

        public override void Write(string? value) => throw new IOException("full");
    }
}
