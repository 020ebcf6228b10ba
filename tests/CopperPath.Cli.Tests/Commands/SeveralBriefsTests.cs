using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Commands;

/// <summary>Every brief of the command line is judged, in order; nothing of it is passed over in silence.</summary>
public sealed class SeveralBriefsTests : IDisposable
{
    private readonly SyntheticBoard _board = new(1);
    private readonly string _good;
    private readonly string _bad;
    private readonly string _missing;

    public SeveralBriefsTests()
    {
        _good = _board.Rectangle(1, 0, 0, 50, 10).WriteBrief("""
              - name: Bar
                at: { layer: top, x: 10 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }, enters: 1 A }
                  - { name: right, rectangle: { layer: top, from: [45 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 1 A }
            """);
        _bad = Copy("bad.yaml", text => text.Replace("1 A", "90 A", StringComparison.Ordinal).Replace("rise: 200 K", "rise: 1 K", StringComparison.Ordinal));
        _missing = Path.Combine(_board.Folder, "missing.yaml");
    }

    private const string Good = "all within limits that could be judged over the range of what is not known; the board's temperature is not: heat of parts is neither stated nor follows from an efficiency.";

    [Fact]
    public void EachIsJudgedInOrderAndTheLargestCodeIsTheAnswer()
    {
        string output = Path.Combine(_board.Folder, "out");
        CommandRun run = CommandRun.Of("check", _good, _bad, "--output", output, "--quiet");

        run.ExitCode.ShouldBe(1, run.Error);
        Lines(run.Output).ShouldBe([$"Verdict of {_good}: {Good}", $"Verdict of {_bad}: 1 finding beyond limits."]);
        foreach (string name in new[] { "brief", "bad" })
        {
            File.Exists(Path.Combine(output, name, "results.json")).ShouldBeTrue(name);
        }
    }

    [Fact]
    public void AMissingOneIsOneLineAndTheOthersAreStillJudged()
    {
        string output = Path.Combine(_board.Folder, "out");
        CommandRun run = CommandRun.Of("check", _missing, _bad, _good, "--output", output);

        run.ExitCode.ShouldBe(2);
        run.Errors.ShouldHaveSingleItem().ShouldContain("missing.yaml: error BRF000: found no such file");
        Lines(run.Output)[^3..].ShouldBe(
        [
            $"Verdict of {_missing}: could not judge: nothing was written.",
            $"Verdict of {_bad}: 1 finding beyond limits.",
            $"Verdict of {_good}: {Good}",
        ]);
        Directory.GetDirectories(output).Select(Path.GetFileName).Order(StringComparer.Ordinal).ShouldBe(["bad", "brief"]);
    }

    /// <summary>Briefs of one name, from two folders or with two endings, beside them and in a folder asked for.</summary>
    [Fact]
    public void BriefsOfOneNameDoNotOverwriteEachOther()
    {
        string twin = Copy("brief.yml", text => text);
        string inner = Path.Combine(Directory.CreateDirectory(Path.Combine(_board.Folder, "inner")).FullName, "Brief.yaml");
        File.WriteAllText(inner, File.ReadAllText(_good).Replace("files: .", "files: ..", StringComparison.Ordinal));
        string output = Path.Combine(_board.Folder, "out");

        CommandRun.Of("check", _good, inner, "--output", output, "--quiet").ExitCode.ShouldBe(0);
        CommandRun.Of("check", _good, twin, "--quiet").ExitCode.ShouldBe(0);

        foreach (string folder in new[] { "out/brief", "out/Brief-2", "copperpath-report/brief", "copperpath-report/brief-2" })
        {
            File.Exists(Path.Combine(_board.Folder, folder, "results.json")).ShouldBeTrue(folder);
        }
    }

    [Theory]
    [InlineData("survey", "folder or archive")]
    [InlineData("curve", "brief")]
    public void CommandsThatTakeOneRefuseASecond(string command, string takes)
    {
        CommandRun run = CommandRun.Of(command, command == "survey" ? _board.Folder : _good, "second");

        run.ExitCode.ShouldBe(2);
        run.Output.ShouldBeEmpty();
        Lines(run.Error).ShouldBe([$"{command}: error CMD001: found 'second' after the first argument; expected one {takes}"]);
    }

    public void Dispose() => _board.Dispose();

    private string Copy(string name, Func<string, string> change)
    {
        string path = Path.Combine(_board.Folder, name);
        File.WriteAllText(path, change(File.ReadAllText(_good)));
        return path;
    }

    private static string[] Lines(string text) => text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}
