using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Quantities;

namespace CopperPath.Reading.Drill;

/// <summary>
/// Tools of a size that nobody drills: the sign of a wrong unit or a damaged digit, which leaves every hole in its place.
/// The limits are common practice, no source.
/// </summary>
internal static class ToolSizes
{
    /// <summary>Drills through a board start at 0.1 mm.</summary>
    private const long LeastDrillNm = Units.NmPerMm / 10;

    /// <summary>Lasers, which reach from a layer to the next, go down to 0.04 mm.</summary>
    private const long LeastLaserNm = 4 * Units.NmPerMm / 100;

    /// <summary>Plated holes for the largest bolts of terminals stay below.</summary>
    private const long LargestPlatedNm = 15 * Units.NmPerMm;

    /// <summary>A via read in millimetres as if they were inches is wider than this.</summary>
    private const long LargeViaNm = 5 * Units.NmPerMm;

    /// <summary>Plated holes from which on their usual size tells something.</summary>
    private const int EnoughHoles = 10;

    /// <param name="drill">The holes of one file, plating and layers filled in.</param>
    /// <param name="layerCount">Copper layers of the board.</param>
    public static IReadOnlyList<Diagnostic> Check(DrillArtwork drill, int layerCount)
    {
        bool mayBeLaser = drill.FirstLayer > 0 && drill.LastLayer == drill.FirstLayer + 1 && layerCount > 2;
        long leastNm = mayBeLaser ? LeastLaserNm : LeastDrillNm;
        List<Diagnostic> remarks = [.. drill.Features
            .Where(hole => hole.ToolDiameterNm < leastNm || (hole.ToolDiameterNm > LargestPlatedNm && hole.Plating != Plating.NonPlated))
            .GroupBy(hole => hole.ToolDiameterNm)
            .Select(sameTool => new Diagnostic(DrillCode.OddToolSize, Severity.Warning, sameTool.First().Position,
                Text($"{Counted.Of(sameTool.Count(), "hole")} made with a tool of {Mm(sameTool.Key)} mm"),
                Text($"{Mm(leastNm)} mm or more, and plated holes up to {Mm(LargestPlatedNm)} mm; the unit or a digit may be wrong"),
                AffectsCopper: true))];
        long[] plated = [.. drill.Features.Where(hole => hole.Plating != Plating.NonPlated).Select(hole => hole.ToolDiameterNm)];
        if (plated.Length >= EnoughHoles && plated.Count(nm => nm > LargeViaNm) > plated.Length / 2)
        {
            remarks.Add(new Diagnostic(DrillCode.OddToolSize, Severity.Warning, SourcePosition.WholeFile(drill.File),
                Text($"{plated.Count(nm => nm > LargeViaNm)} of {plated.Length} holes wider than {Mm(LargeViaNm)} mm"),
                "vias and pins of components; the unit of the tools may be wrong", AffectsCopper: true));
        }

        return remarks;
    }

    private static double Mm(long nm) => (double)nm / Units.NmPerMm;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
