using System.Text.Json;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Report;

/// <summary>What is within limits as stated and not over the range of what is not known has an exit code and words of its own everywhere.</summary>
public sealed class AsStatedVerdictTests : IDisposable
{
    private const string Answer = "within limits as stated only: 1 finding not over the range of what is not known.";

    private readonly SyntheticBoard _board = new(1);
    private readonly string _brief;
    private readonly string _folder;

    /// <summary>A bar that its own current warms by 27 K, and by 47 K with weak films and thin copper.</summary>
    public AsStatedVerdictTests()
    {
        _brief = _board.Rectangle(1, 0, 0, 50, 10).WriteBrief("""
              - name: Bar
                at: { layer: top, x: 10 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [0.05 mm, 10 mm] }, enters: 10 A }
                  - { name: right, rectangle: { layer: top, from: [49.95 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 10 A }
            thermal: { top: { film: 10 W/m2K, emissivity: 0 }, bottom: { film: 10 W/m2K, emissivity: 0 } }
            """);
        _folder = Path.Combine(_board.Folder, "out");
    }

    [Theory]
    [InlineData("20 K", "", 1)]
    [InlineData("35 K", "", 3)]
    [InlineData("35 K", "tolerance: as stated", 0)]
    [InlineData("35 K", "tolerance: { film: -2..2 %, copper: -5..5 % }", 0)]
    [InlineData("60 K", "", 0)]
    public void EachStepHasItsExitCode(string riseK, string tolerance, int exitCode) => Check(riseK, tolerance).ExitCode.ShouldBe(exitCode);

    [Fact]
    public void TheWordsStandInEveryFile()
    {
        CommandRun run = Check("35 K", "");

        run.Output.ShouldContain($"Verdict: {Answer}");
        run.Output.ShouldContain("Within the limit as stated, not over the range of what is not known:");
        run.Output.ShouldMatch(@"by 27\.\d K of 35\.0 K as stated; 4[67]\.\d K with everything that is not known at its worse end, most of it where copper is at its least\.");
        run.Output.ShouldContain("Assumed: range, stated film: -15..15 % (common practice, no source)");

        using JsonDocument results = JsonDocument.Parse(File.ReadAllText(Path.Combine(_folder, "results.json")));
        MachineOutputTests.ShouldFollowTheSchema(results.RootElement);
        (results.RootElement.GetProperty("verdict").GetString(), results.RootElement.GetProperty("verdictText").GetString())
            .ShouldBe(("within limits as stated only", Answer));
        JsonElement finding = results.RootElement.GetProperty("findings")[0];
        finding.GetProperty("level").GetString().ShouldBe("within as stated only");
        (finding.GetProperty("value").GetDouble(), finding.GetProperty("worst").GetDouble()).ShouldSatisfyAllConditions(
            both => both.Item1.ShouldBe(27.3, 0.2), both => both.Item2.ShouldBe(47.0, 0.4));
        results.RootElement.GetProperty("tolerance").GetProperty("nets")[0].GetProperty("ownRiseK").GetProperty("worst").GetDouble().ShouldBe(47.0, 0.4);

        using JsonDocument sarif = JsonDocument.Parse(File.ReadAllText(Path.Combine(_folder, "findings.sarif")));
        JsonElement result = sarif.RootElement.GetProperty("runs")[0].GetProperty("results")[0];
        (result.GetProperty("level").GetString(), result.GetProperty("properties").GetProperty("level").GetString()).ShouldBe(("warning", "within as stated only"));

        File.ReadAllText(Path.Combine(_folder, "report.html")).ShouldContain("""<p class="verdict verdict-stated">""");
    }

    /// <summary>Of several briefs the gravest verdict counts, whatever its number.</summary>
    [Theory]
    [InlineData(3, 0, 3)]
    [InlineData(1, 3, 0, 1)]
    [InlineData(2, 1, 3, 2)]
    [InlineData(0, 0)]
    public void OfSeveralTheGravestCounts(int expected, params int[] codes) => ExitCode.Gravest(codes).ShouldBe(expected);

    private CommandRun Check(string rise, string tolerance)
    {
        string text = File.ReadAllText(_brief);
        File.WriteAllText(_brief, text.Replace("rise: 200 K", $"rise: {rise}", StringComparison.Ordinal) + $"\n{tolerance}\n");
        return CommandRun.Of("check", _brief, "--output", _folder, "--verbose");
    }

    public void Dispose() => _board.Dispose();
}
