using System.Collections.Concurrent;
using System.Text.Json;
using CopperPath.Core.Tests;
using CopperPath.Judging;

namespace CopperPath.Cli.Tests.Commands;

/// <summary>The demo board: every planted fault of revision A is found where it was planted, revision B passes.</summary>
public sealed class DemoBoardTests
{
    /// <summary>A page that can be mailed: five megabytes.</summary>
    private const long MostReportBytes = 5_000_000;

    /// <summary>The bare drill file rounds the lone via of 0.25 mm to 0.0098 in: 0.43 % narrower.</summary>
    private const double InchRounding = 4.3e-3;

    private static string Brief(string name) => Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", name);

    private static readonly ConcurrentDictionary<string, Lazy<(int Exit, JsonElement Results)>> _checked = new();

    /// <summary>Rule that speaks of each kind of planted fault.</summary>
    private static readonly Dictionary<string, string> _ruleFor = new()
    {
        ["neck"] = RuleCatalogue.Heat.Id,
        ["overloaded vias"] = RuleCatalogue.Heat.Id,
        ["switch node area"] = RuleCatalogue.SwingArea.Id,
        ["plane slot"] = RuleCatalogue.ReturnSlot.Id,
    };

    [Theory]
    [InlineData("revision-a.yaml")]
    [InlineData("revision-a-bare.yaml")]
    public void RevisionANamesEachPlantedFaultAndItsPlace(string brief)
    {
        (int exit, JsonElement results) = Check(brief);

        exit.ShouldBe(1);
        using JsonDocument planted = JsonDocument.Parse(File.ReadAllText(Brief("planted-faults.json")));
        foreach (JsonElement fault in planted.RootElement.GetProperty("faults").EnumerateArray())
        {
            string rule = _ruleFor[fault.GetProperty("kind").GetString()!];
            JsonElement box = fault.GetProperty("box_mm");
            results.GetProperty("findings").EnumerateArray().ShouldContain(
                finding => finding.GetProperty("rule").GetString() == rule && IsInside(finding, box),
                $"the planted fault {fault.GetProperty("id").GetString()}");
        }
    }

    [Theory]
    [InlineData("revision-b.yaml")]
    [InlineData("revision-b-bare.yaml")]
    public void RevisionBIsWithinLimits(string brief)
    {
        (int exit, JsonElement results) = Check(brief);

        results.GetProperty("findings").EnumerateArray().Select(finding => finding.GetProperty("level").GetString()).Distinct()
            .ShouldBe([FindingLevel.Remark.Word()], "nothing above a remark on the mended board");
        exit.ShouldBe(0);
    }

    /// <summary>The same board under a brief that claims twice the phases its copper has.</summary>
    [Fact]
    public void AClaimOfEightPhasesIsAnsweredWithFour()
    {
        string folder = Directory.CreateTempSubdirectory("copperpath-claim-").FullName;
        try
        {
            string brief = Path.Combine(folder, "claim.yaml");
            string files = Path.Combine(SharedData.ProjectRoot, "boards", "furrow-compute", "revision-b", "bare").Replace('\\', '/');
            string text = File.ReadAllText(Brief("revision-b-bare.yaml")).Replace("phases: 4", "phases: 8", StringComparison.Ordinal)
                .Replace("files: revision-b/bare", $"files: '{files}'", StringComparison.Ordinal);
            File.WriteAllText(brief, text);

            CommandRun run = CommandRun.Of("check", brief, "--output", Path.Combine(folder, "out"));

            run.ExitCode.ShouldBe(1);
            run.Output.ShouldContain("The brief claims 8 phases; the copper has 4 separate switch nodes");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("revision-a")]
    [InlineData("revision-b")]
    public void BothDialectsGiveTheSameResistances(string revision)
    {
        JsonElement attributed = Check($"{revision}.yaml").Results;
        JsonElement bare = Check($"{revision}-bare.yaml").Results;

        foreach ((JsonElement one, JsonElement other) in attributed.GetProperty("nets").EnumerateArray()
            .Zip(bare.GetProperty("nets").EnumerateArray()))
        {
            double drop = one.GetProperty("dropV").GetDouble();
            other.GetProperty("dropV").GetDouble().ShouldBe(drop, drop * InchRounding, one.GetProperty("name").GetString());
            double area = one.GetProperty("areaM2").GetDouble();
            other.GetProperty("areaM2").GetDouble().ShouldBe(area, area * 1e-3);
        }
    }

    private static bool IsInside(JsonElement finding, JsonElement box)
    {
        double x = finding.GetProperty("xM").GetDouble() * 1e3;
        double y = finding.GetProperty("yM").GetDouble() * 1e3;
        JsonElement from = box.GetProperty("from");
        JsonElement to = box.GetProperty("to");
        return x >= from[0].GetDouble() && x <= to[0].GetDouble() && y >= from[1].GetDouble() && y <= to[1].GetDouble();
    }

    /// <summary>Each brief is checked once: several tests look at the same results.</summary>
    private static (int Exit, JsonElement Results) Check(string brief) =>
        _checked.GetOrAdd(brief, name => new Lazy<(int, JsonElement)>(() => Run(name))).Value;

    private static (int Exit, JsonElement Results) Run(string brief)
    {
        string folder = Directory.CreateTempSubdirectory("copperpath-demo-").FullName;
        try
        {
            CommandRun run = CommandRun.Of("check", Brief(brief), "--output", folder);
            run.Errors.ShouldBeEmpty();
            using JsonDocument results = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "results.json")));
            Report.MachineOutputTests.ShouldFollowTheSchema(results.RootElement);
            Directory.EnumerateFiles(folder, "layer-*.png").Count().ShouldBe(4);
            new FileInfo(Path.Combine(folder, "report.html")).Length.ShouldBeLessThan(MostReportBytes);
            return (run.ExitCode, results.RootElement.Clone());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
