using System.Net;
using CopperPath.Cli.Tests.Commands;

namespace CopperPath.Cli.Tests.Report;

/// <summary>The page and the terminal say the same about the same review. Limits are those of the board's brief.</summary>
public sealed class ReportWordsTests(ReviewedNeck review) : IClassFixture<ReviewedNeck>
{
    [Fact]
    public void TheHeatBalanceOfTheTerminalStandsInThePage()
    {
        string[] lines = CommandRun.Of("check", review.Brief, "--output", review.Folder, "--tables").Output.Split('\n', StringSplitOptions.TrimEntries);
        string page = WebUtility.HtmlDecode(review.Text("report.html"));
        int first = Array.FindIndex(lines, line => line.StartsWith("Own mean and peak: ", StringComparison.Ordinal));

        first.ShouldBeGreaterThanOrEqualTo(0);
        page.ShouldContain($"{lines[first]["Own mean and peak: ".Length..]} {lines[first + 1]}");
    }

    [Fact]
    public void MarginsNameTheLimitApartFromTheValue()
    {
        string page = review.Text("report.html");

        page.ShouldContain(" K; 20.0 K allowed");
        page.ShouldNotContain(" K of 20.0 K allowed");
    }
}
