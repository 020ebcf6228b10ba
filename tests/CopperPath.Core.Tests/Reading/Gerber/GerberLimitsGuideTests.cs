using System.Globalization;
using System.Reflection;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>docs/readers-limits.md names the bounds of the Gerber reader and of a run with the values the code has.</summary>
public sealed class GerberLimitsGuideTests
{
    public static TheoryData<string, long> Bounds()
    {
        TheoryData<string, long> bounds = new()
        {
            { "GerberReadOptions.MaximumObjects", GerberReadOptions.Default.MaximumObjects },
            { "GerberReadOptions.MaximumVertices", GerberReadOptions.Default.MaximumVertices },
            { "ImageBudget.MaximumObjects", new ImageBudget().MaximumObjects },
            { "ImageBudget.MaximumVertices", new ImageBudget().MaximumVertices },
            { "RemarkBudget.ListedPerKind", RemarkBudget.ListedPerKind },
            { "RemarkBudget.ListedInAll", RemarkBudget.ListedInAll },
            { "RemarkBudget.LongestWords", RemarkBudget.LongestWords },
            { "BoardSourceLimits.MaxUnpackRatio", BoardSourceLimits.Usual.MaxUnpackRatio },
            { "MacroExposure.MostEdges", MacroExposure.MostEdges },
            { "MacroExposure.MostNearEdges", MacroExposure.MostNearEdges },
        };
        foreach (FieldInfo bound in typeof(GerberLimits).GetFields(BindingFlags.Public | BindingFlags.Static))
        {
            bounds.Add($"GerberLimits.{bound.Name}", Convert.ToInt64(bound.GetRawConstantValue(), CultureInfo.InvariantCulture));
        }

        return bounds;
    }

    [Theory]
    [MemberData(nameof(Bounds))]
    public void EveryBoundIsListedWithItsValue(string name, long value)
    {
        string row = File.ReadLines(Path.Combine(SharedData.ProjectRoot, "docs", "readers-limits.md"))
            .Single(line => line.Contains($"`{name}`", StringComparison.Ordinal));
        row.ShouldContain($"| {value.ToString("N0", CultureInfo.InvariantCulture).Replace(',', ' ')} |");
    }
}
