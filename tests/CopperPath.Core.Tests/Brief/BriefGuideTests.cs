using System.Reflection;
using System.Text.RegularExpressions;
using CopperPath.Brief;

namespace CopperPath.Core.Tests.Brief;

/// <summary>The guide says what the reader does.</summary>
public class BriefGuideTests
{
    private static readonly string s_guide =
        File.ReadAllText(Path.Combine(SharedData.ProjectRoot, "docs", "brief.md")).ReplaceLineEndings("\n");

    [Fact]
    public void ItsShortestBriefIsAccepted()
    {
        string example = Regex.Match(s_guide, "```yaml\n(copperpath: 1.*?)```", RegexOptions.Singleline).Groups[1].Value;

        BriefReading reading = BriefReader.Read("lamp.yaml", example);

        reading.Diagnostics.ShouldBeEmpty();
        reading.Brief.ShouldNotBeNull().Nets[0].Terminals[1].CurrentA.ShouldBe(-8);
    }

    [Fact]
    public void ItExplainsEveryCodeAndNoOther()
    {
        IEnumerable<string> codes = typeof(BriefCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(field => (string)field.GetValue(null)!);

        Regex.Matches(s_guide, @"^\| (BRF\d{3}) \|", RegexOptions.Multiline).Select(match => match.Groups[1].Value)
            .ShouldBe(codes.Order());
    }
}
