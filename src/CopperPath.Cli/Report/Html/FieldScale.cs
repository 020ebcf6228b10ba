using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Report.Html;

/// <summary>The scale of the potential drop, which only the page shows: from zero to a round number above all.</summary>
internal static class FieldScale
{
    private const double MillivoltsPerVolt = 1e3;

    /// <param name="grids">Sampled fields; may be empty.</param>
    public static ScaleSpec Drop(IEnumerable<FieldGrid> grids)
    {
        ValueScale scale = ValueScale.For(
            new ScaleSpec("", "", ScaleKind.Linear, null, 0), [0, MillivoltsPerVolt * grids.Select(grid => Most(grid.DropV)).DefaultIfEmpty(0).Max()]);
        return new ScaleSpec("Potential drop", "mV", ScaleKind.Linear, scale.Top, 0);
    }

    private static float Most(FieldRaster field)
    {
        float most = 0;
        foreach (float value in field.Values)
        {
            most = value > most && float.IsFinite(value) ? value : most;
        }

        return most;
    }
}
