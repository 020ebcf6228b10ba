using System.Text.Json;

namespace CopperPath.Cli.Tests.Report;

/// <summary>Rule and level are called alike in every file, and no name of the program's own leaks into any.</summary>
public sealed class SameWordsTests(ReviewedNeck review) : IClassFixture<ReviewedNeck>
{
    [Fact]
    public void RuleAndLevelAreTheSameWordsEverywhere()
    {
        using JsonDocument results = JsonDocument.Parse(review.Text("results.json"));
        using JsonDocument sarif = JsonDocument.Parse(review.Text("findings.sarif"));
        (string Rule, string Level)[] inJson = [.. results.RootElement.GetProperty("findings").EnumerateArray()
            .Select(finding => (finding.GetProperty("rule").GetString()!, finding.GetProperty("level").GetString()!))];
        (string, string)[] inCsv = [.. review.Text("findings.csv").Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1)
            .Select(line => (line.Split(',')[0], line.Split(',')[1]))];
        (string, string)[] inSarif = [.. sarif.RootElement.GetProperty("runs")[0].GetProperty("results").EnumerateArray()
            .Where(result => result.TryGetProperty("properties", out _))
            .Select(result => (result.GetProperty("ruleId").GetString()!, result.GetProperty("properties").GetProperty("level").GetString()!))];
        string page = review.Text("report.html");

        inJson.ShouldContain(finding => finding.Level == "beyond limit");
        inCsv.ShouldBe(inJson);
        inSarif.ShouldBe(inJson);
        foreach ((string rule, string level) in inJson)
        {
            page.ShouldContain($">{rule}</span> {level}");
        }
    }

    [Theory]
    [InlineData("results.json")]
    [InlineData("findings.sarif")]
    [InlineData("findings.csv")]
    [InlineData("report.html")]
    public void NoNameOfTheProgramLeaks(string file)
    {
        string text = review.Text(file);
        foreach (string name in new[] { "BeyondLimit", "WithinLimits", "CouldNotJudge", "Undecided", "Ipc2152", "NotConnected", "SolderMask", "LegendTop" })
        {
            text.ShouldNotContain(name, Case.Sensitive);
        }

        foreach (string name in new[] { "Remark", "Solved" })
        {
            text.ShouldNotContain($"\"{name}\"", Case.Sensitive);
        }
    }
}
