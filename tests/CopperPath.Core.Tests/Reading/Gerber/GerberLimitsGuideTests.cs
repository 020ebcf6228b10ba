using System.Globalization;
using System.Reflection;
using CopperPath.Artwork;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>docs/readers-limits.md names every bound of the Gerber reader with the value the code has.</summary>
public sealed class GerberLimitsGuideTests
{
    public static TheoryData<string, long> Bounds()
    {
        TheoryData<string, long> bounds = new()
        {
            { "GerberReadOptions.MaximumObjects", GerberReadOptions.Default.MaximumObjects },
            { "GerberReadOptions.MaximumVertices", GerberReadOptions.Default.MaximumVertices },
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
