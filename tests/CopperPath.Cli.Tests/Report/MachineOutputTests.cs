using System.Globalization;
using System.Text.Json;
using CopperPath.Core.Tests;
using CopperPath.Judging;
using Json.Schema;

namespace CopperPath.Cli.Tests.Report;

/// <summary>What other programs read: JSON by our schema, CSV by RFC 4180, SARIF by its standard.</summary>
public sealed class MachineOutputTests(ReviewedNeck review) : IClassFixture<ReviewedNeck>
{
    private static readonly JsonSchema s_schema = JsonSchema.FromText(
        File.ReadAllText(Path.Combine(SharedData.ProjectRoot, "docs", "results.schema.json")));

    private static readonly JsonSchema s_sarifSchema = JsonSchema.FromText(
        File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "sarif-2.1.0.json")));

    [Fact]
    public void ResultsFollowThePublishedSchema()
    {
        review.ExitCode.ShouldBe(1);
        using JsonDocument results = JsonDocument.Parse(review.Text("results.json"));

        ShouldFollowTheSchema(results.RootElement);
    }

    [Fact]
    public void TheSchemaRefusesResultsItDoesNotDescribe()
    {
        string text = review.Text("results.json");
        using JsonDocument wrongLevel = JsonDocument.Parse(text.Replace("\"level\": \"beyond limit\"", "\"level\": \"dire\"", StringComparison.Ordinal));
        using JsonDocument noLoss = JsonDocument.Parse(text.Replace("\"xM\"", "\"x\"", StringComparison.Ordinal));

        s_schema.Evaluate(wrongLevel.RootElement).IsValid.ShouldBeFalse();
        s_schema.Evaluate(noLoss.RootElement).IsValid.ShouldBeFalse();
    }

    [Theory]
    [InlineData("nets.csv")]
    [InlineData("terminals.csv")]
    [InlineData("plated-holes.csv")]
    [InlineData("sections.csv")]
    [InlineData("findings.csv")]
    public void TablesHaveTheSameNumberOfCellsInEveryLine(string file)
    {
        List<string[]> rows = Rows(review.Text(file));

        rows.Count.ShouldBeGreaterThan(1);
        rows.ShouldAllBe(row => row.Length == rows[0].Length);
    }

    [Fact]
    public void TablesSayWhatTheJsonSays()
    {
        List<string[]> rows = Rows(review.Text("nets.csv"));
        using JsonDocument results = JsonDocument.Parse(review.Text("results.json"));
        JsonElement net = results.RootElement.GetProperty("nets")[0];

        rows[1][0].ShouldBe("Feed, \"raw\"");
        double.Parse(rows[1][Array.IndexOf(rows[0], "drop_V")], CultureInfo.InvariantCulture)
            .ShouldBe(net.GetProperty("dropV").GetDouble());
        double.Parse(rows[1][Array.IndexOf(rows[0], "loss_greatest_W")], CultureInfo.InvariantCulture)
            .ShouldBe(net.GetProperty("lossBoundsW")[1].GetDouble());
    }

    /// <summary>
    /// Members that SARIF 2.1.0 requires (OASIS, sections 3.13, 3.14, 3.18, 3.19, 3.27; from memory): version and runs;
    /// tool.driver.name; a message for every result; rule identifiers that the driver lists; levels from its list; lines
    /// and columns from 1.
    /// </summary>
    [Fact]
    public void SarifHoldsWhatItsStandardRequires()
    {
        using JsonDocument sarif = JsonDocument.Parse(review.Text("findings.sarif"));
        sarif.RootElement.GetProperty("version").GetString().ShouldBe("2.1.0");
        JsonElement run = sarif.RootElement.GetProperty("runs")[0];
        JsonElement driver = run.GetProperty("tool").GetProperty("driver");
        driver.GetProperty("name").GetString().ShouldNotBeNullOrEmpty();
        string[] rules = [.. driver.GetProperty("rules").EnumerateArray().Select(rule => rule.GetProperty("id").GetString()!)];
        rules.ShouldBeUnique();

        JsonElement[] results = [.. run.GetProperty("results").EnumerateArray()];
        results.ShouldContain(result => result.GetProperty("ruleId").GetString() == RuleCatalogue.Heat.Id);
        foreach (JsonElement result in results)
        {
            rules.ShouldContain(result.GetProperty("ruleId").GetString());
            result.GetProperty("level").GetString().ShouldBeOneOf("none", "note", "warning", "error");
            result.GetProperty("message").GetProperty("text").GetString().ShouldNotBeNullOrEmpty();
            JsonElement place = result.GetProperty("locations")[0].GetProperty("physicalLocation");
            Uri.IsWellFormedUriString(place.GetProperty("artifactLocation").GetProperty("uri").GetString(), UriKind.RelativeOrAbsolute).ShouldBeTrue();
            if (place.TryGetProperty("region", out JsonElement region))
            {
                region.GetProperty("startLine").GetInt32().ShouldBeGreaterThan(0);
                region.GetProperty("startColumn").GetInt32().ShouldBeGreaterThan(0);
            }
        }
    }

    /// <summary>Oracle: the standard's published schema, as the MIT-licensed package Sarif.Sdk 5.8.0 ships it.</summary>
    [Fact]
    public void SarifFollowsItsPublishedSchema()
    {
        string text = review.Text("findings.sarif");
        using JsonDocument sarif = JsonDocument.Parse(text);
        using JsonDocument wrongLevel = JsonDocument.Parse(text.Replace("\"level\": \"", "\"level\": \"dire-", StringComparison.Ordinal));
        using JsonDocument noDriver = JsonDocument.Parse(text.Replace("\"driver\"", "\"engine\"", StringComparison.Ordinal));

        ShouldFollowTheSarifSchema(sarif.RootElement);
        s_sarifSchema.Evaluate(wrongLevel.RootElement).IsValid.ShouldBeFalse();
        s_sarifSchema.Evaluate(noDriver.RootElement).IsValid.ShouldBeFalse();
    }

    internal static void ShouldFollowTheSchema(JsonElement results) => ShouldFollow(s_schema, results);

    internal static void ShouldFollowTheSarifSchema(JsonElement findings) => ShouldFollow(s_sarifSchema, findings);

    private static void ShouldFollow(JsonSchema schema, JsonElement document)
    {
        EvaluationResults outcome = schema.Evaluate(document, new EvaluationOptions { OutputFormat = OutputFormat.List });

        outcome.IsValid.ShouldBeTrue(Complaints(outcome));
    }

    /// <summary>Splits by RFC 4180: a quoted cell may hold commas and doubled quotes.</summary>
    private static List<string[]> Rows(string text) => [.. text.TrimEnd().Split("\r\n").Select(line =>
    {
        List<string> cells = [];
        for (int i = 0; i <= line.Length; i++)
        {
            int start = i;
            if (i < line.Length && line[i] == '"')
            {
                for (i++; line[i] != '"' || (i + 1 < line.Length && line[i + 1] == '"'); i++)
                {
                    i += line[i] == '"' ? 1 : 0;
                }

                cells.Add(line[(start + 1)..i].Replace("\"\"", "\"", StringComparison.Ordinal));
                i++;
            }
            else
            {
                i = line.IndexOf(',', start) is var comma and >= 0 ? comma : line.Length;
                cells.Add(line[start..i]);
            }
        }

        return cells.ToArray();
    })];

    private static string Complaints(EvaluationResults outcome) => string.Join('\n', outcome.Details!
        .Where(detail => detail.Errors is not null)
        .Select(detail => $"{detail.InstanceLocation}: {string.Join("; ", detail.Errors!.Values)}"));
}
