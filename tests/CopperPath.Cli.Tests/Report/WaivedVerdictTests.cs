using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Report;

/// <summary>What was waived stands beside the verdict wherever the verdict stands, and holds for these files alone.</summary>
public sealed class WaivedVerdictTests : IDisposable
{
    private const string Answer = "all within limits that could be judged over the range of what is not known, 2 findings waived by lead engineer; the board's temperature is not: heat of parts is neither stated nor follows from an efficiency.";

    private readonly SyntheticBoard _board = new(1);
    private readonly string _brief;
    private readonly string _folder;

    /// <summary>A bar with far too much current: its section and its own temperature are beyond the limit.</summary>
    public WaivedVerdictTests()
    {
        _brief = _board.Rectangle(1, 0, 0, 50, 10).WriteBrief("""
              - name: Bar
                at: { layer: top, x: 10 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [5 mm, 10 mm] }, enters: 90 A }
                  - { name: right, rectangle: { layer: top, from: [45 mm, 0 mm], to: [50 mm, 10 mm] }, leaves: 90 A }
            """);
        File.WriteAllText(_brief, File.ReadAllText(_brief).Replace("rise: 200 K", "rise: 20 K\n  voltage drop: 1 mV", StringComparison.Ordinal));
        _folder = Path.Combine(_board.Folder, "out");
    }

    [Fact]
    public void TheVerdictSaysWhatWasWaivedAndByWhom()
    {
        string unwaived = File.ReadAllText(_brief);

        // Without the fingerprint, or with that of other files, nothing is waived and the line to put there is printed.
        CommandRun refused = Check(unwaived, ("drop", ""), ("heat", ", fingerprint: '00000000deadbeef'"));
        refused.ExitCode.ShouldBe(1);
        refused.Output.ShouldContain("Verdict: 2 findings beyond limits.");
        refused.Error.ShouldContain("warning JDG003");
        refused.Error.ShouldContain("warning JDG004");
        using JsonDocument before = JsonDocument.Parse(Text("results.json"));
        before.RootElement.GetProperty("verdict").GetString().ShouldBe("beyond limits");
        before.RootElement.GetProperty("waivedFindings").GetInt32().ShouldBe(0);
        string line = $"fingerprint: '{before.RootElement.GetProperty("fingerprint").GetString()}'";
        Regex.Count(refused.Error, line).ShouldBe(2);
        refused.Output.ShouldContain($"`{line}`");

        CommandRun waived = Check(unwaived, ("drop", $", {line}"), ("heat", $", {line}"));
        waived.ExitCode.ShouldBe(0, waived.Error);
        waived.Error.ShouldBeEmpty();
        waived.Output.ShouldContain($"Verdict: {Answer}");
        CommandRun.Of("check", _brief, "--output", _folder, "--quiet").Output.Trim().ShouldBe($"Verdict: {Answer}");

        using JsonDocument results = JsonDocument.Parse(Text("results.json"));
        MachineOutputTests.ShouldFollowTheSchema(results.RootElement);
        JsonElement root = results.RootElement;
        (root.GetProperty("verdict").GetString(), root.GetProperty("verdictText").GetString()).ShouldBe(("within limits", Answer));
        (root.GetProperty("waivedFindings").GetInt32(), root.GetProperty("waivedBy")[0].GetString()).ShouldBe((2, "lead engineer"));

        using JsonDocument sarif = JsonDocument.Parse(Text("findings.sarif"));
        MachineOutputTests.ShouldFollowTheSarifSchema(sarif.RootElement);
        JsonElement run = sarif.RootElement.GetProperty("runs")[0];
        run.GetProperty("properties").GetProperty("verdictText").GetString().ShouldBe(Answer);
        run.GetProperty("results").EnumerateArray().Count(result => result.TryGetProperty("suppressions", out JsonElement suppressions)
            && suppressions[0].GetProperty("justification").GetString() == "lead engineer: pulses only").ShouldBe(2);
        WebUtility.HtmlDecode(Text("report.html")).ShouldContain(Answer);
        Text("findings.csv").Split("lead engineer").Length.ShouldBe(3);
    }

    /// <summary>A picture can be filed on its own: its fingerprint is that of all that was read, the brief too.</summary>
    [Fact]
    public void TheFingerprintOnPicturesCoversTheBrief()
    {
        string first = Printed();
        Printed().ShouldBe(first);
        File.AppendAllText(_brief, "\n# as discussed\n");
        Printed().ShouldNotBe(first);

        string Printed()
        {
            CommandRun.Of("check", _brief, "--output", _folder, "--pictures", "svg", "--picture-width", "800");
            string printed = Regex.Match(Text("layer-1.svg"), "[0-9a-f]{16}").Value;
            printed.ShouldNotBeEmpty();
            return printed;
        }
    }

    public void Dispose() => _board.Dispose();

    private string Text(string file) => File.ReadAllText(Path.Combine(_folder, file));

    private CommandRun Check(string brief, params (string Rule, string Fingerprint)[] waivers)
    {
        File.WriteAllText(_brief, $"{brief}\nwaivers:\n" + string.Concat(waivers.Select(waiver =>
            $"  - {{ rule: {waiver.Rule}, net: Bar, reason: pulses only, by: lead engineer{waiver.Fingerprint} }}\n")));
        return CommandRun.Of("check", _brief, "--output", _folder);
    }
}
