using System.Globalization;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Polygons;
using CopperPath.Quantities;

namespace CopperPath.Nets;

/// <summary>
/// Pieces of copper that touch at a point only, or stand nearer to each other than fabrication keeps apart. The drawing
/// does not say whether the board will have them joined: they are taken as separate, and reported.
/// </summary>
internal static class CloseCopper
{
    /// <summary>
    /// Narrower gaps than this may close, or a point contact open, when the copper is etched: half of the 0.1 mm that
    /// fabricators ask for between conductors. Common practice, no source.
    /// </summary>
    public const long FabricationToleranceNm = 50_000;

    /// <summary>What rounds to one place of the grid is said to touch.</summary>
    private const double TouchNm = 1;

    /// <summary>Most pairs of nets listed for each layer.</summary>
    private const int MaxListed = 10;

    /// <param name="nets">Finished nets.</param>
    /// <param name="layers">The layers, top to bottom.</param>
    public static IReadOnlyList<Diagnostic> Report(IReadOnlyList<Net> nets, IReadOnlyList<CopperLayer> layers)
    {
        List<Diagnostic>[] ofLayer = new List<Diagnostic>[layers.Count];
        Parallel.For(0, layers.Count, l => ofLayer[l] = Report(nets, layers[l]));
        return [.. ofLayer.SelectMany(found => found)];
    }

    private static List<Diagnostic> Report(IReadOnlyList<Net> nets, CopperLayer layer)
    {
        (Net Net, PolygonNm Island)[] islands = [.. nets.SelectMany(net =>
            (net.SheetOn(layer.Number)?.Islands ?? []).Select(island => (net, island)))];
        PolygonGapsFound search = PolygonGaps.Below([.. islands.Select(entry => entry.Island)], FabricationToleranceNm);
        PolygonGap[] gaps = [.. search.Gaps
            .OrderBy(gap => gap.WidthNm).ThenBy(gap => gap.At.X).ThenBy(gap => gap.At.Y)];
        PolygonGap[] betweenNets = [.. gaps.Where(gap => islands[gap.A].Net != islands[gap.B].Net)];
        PolygonGap[] withinNets = [.. gaps.Where(gap => islands[gap.A].Net == islands[gap.B].Net)];
        List<Diagnostic> found = [.. betweenNets.Take(MaxListed).Select(gap => new Diagnostic(
            "NET007", Severity.Warning, SourcePosition.WholeFile(layer.File),
            $"the nets {islands[gap.A].Net.Name} and {islands[gap.B].Net.Name} {Nearness(gap)}",
            Expected, AffectsCopper: gap.WidthNm < TouchNm))];
        if (betweenNets.Length > MaxListed)
        {
            found.Add(new Diagnostic("NET007", Severity.Warning, SourcePosition.WholeFile(layer.File),
                string.Create(CultureInfo.InvariantCulture, $"{betweenNets.Length - MaxListed} more pairs of nets so near each other"), Expected));
        }

        if (!search.IsComplete)
        {
            found.Add(new Diagnostic("NET007", Severity.Warning, SourcePosition.WholeFile(layer.File),
                string.Create(CultureInfo.InvariantCulture,
                    $"so many pieces of copper near each other that the search for narrow gaps was given up, {Counted.Of(gaps.Length, "pair")} found"),
                "copper as a board has it; what else touches here, or may be joined, is not known", AffectsCopper: true));
        }

        if (withinNets is [var nearest, ..])
        {
            found.Add(new Diagnostic("NET008", Severity.Note, SourcePosition.WholeFile(layer.File),
                string.Create(CultureInfo.InvariantCulture,
                    $"{Counted.Of(withinNets.Length, "pair")} of pieces of one net so near that they may join here too; nearest are two of {islands[nearest.A].Net.Name}, which {Nearness(nearest)}"),
                Expected));
        }

        return found;
    }

    private static string Nearness(PolygonGap gap) => gap.WidthNm < TouchNm
        ? $"touch at a point only, {Place(gap)}"
        : string.Create(CultureInfo.InvariantCulture, $"are {gap.WidthNm / 1e6:0.0000} mm apart, {Place(gap)}");

    private static string Place(PolygonGap gap) =>
        string.Create(CultureInfo.InvariantCulture, $"at {gap.At.X / 1e6:0.###}, {gap.At.Y / 1e6:0.###} mm");

    private static string Expected { get; } = string.Create(CultureInfo.InvariantCulture,
        $"a gap of {FabricationToleranceNm / 1e6} mm or more, or copper that overlaps; taken as not joined here");
}
