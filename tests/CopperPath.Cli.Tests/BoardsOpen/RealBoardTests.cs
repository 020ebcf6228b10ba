using System.Text.Json;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests;

namespace CopperPath.Cli.Tests.BoardsOpen;

/// <summary>
/// Briefs of ours for two real boards run to a report; each net is solved and its books balance. Both ship and work: judged by
/// themselves they pass, where chart relations for long isolated conductors failed their short necks and their holes.
/// </summary>
public sealed class RealBoardTests
{
    [Theory]
    [InlineData("picopd-v12", 3)]
    [InlineData("bitaxe-ultra", 4)]
    public void BriefRunsToAReport(string board, int nets)
    {
        SharedData.Require("boards-open", board);
        string brief = Path.Combine(SharedData.ProjectRoot, "tests", "CopperPath.Cli.Tests", "BoardsOpen", $"{board}.yaml");
        string folder = Directory.CreateTempSubdirectory("copperpath-real-").FullName;
        try
        {
            CommandRun run = CommandRun.Of("check", brief, "--output", folder);
            run.ExitCode.ShouldBe(0, run.Error);
            using JsonDocument results = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "results.json")));
            results.RootElement.GetProperty("heat").GetProperty("temperatureIsJudged").GetBoolean().ShouldBeTrue();
            JsonElement[] solved = [.. results.RootElement.GetProperty("nets").EnumerateArray()];
            solved.Length.ShouldBe(nets);
            foreach (JsonElement net in solved)
            {
                net.GetProperty("status").GetString().ShouldBe("solved");
                net.GetProperty("currentBalanceRatio").GetDouble().ShouldBeLessThan(1e-9);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
