using CopperPath.Cli.Overlays;

namespace CopperPath.Cli.Report.Html;

/// <summary>The scale that shades a quantity.</summary>
internal static class FieldScale
{
    /// <summary>Share of the copper a logarithmic scale holds below its top: corners are singular and would take all of it.</summary>
    private const double HeldShare = 0.998;

    /// <summary>Values below this share of a logarithmic scale's top all take the first shade.</summary>
    private const double BottomShare = 0.01;

    /// <summary>A logarithm needs a top above zero, also where no current flows.</summary>
    private const double LeastTop = 1e-12;

    /// <param name="kind">Linear scales start at zero.</param>
    /// <param name="fields">Rasters in SI units; may be empty.</param>
    /// <param name="perSi">Shown unit over SI unit.</param>
    public static ValueScale Of(ScaleKind kind, IEnumerable<FieldRaster> fields, double perSi)
    {
        List<float> values = [.. fields.SelectMany(Values)];
        values.Sort();
        double top = values.Count == 0 ? 0
            : perSi * values[kind == ScaleKind.Logarithmic ? (int)(HeldShare * (values.Count - 1)) : values.Count - 1];
        double round = RoundNumbers.AtLeast(Math.Max(top, LeastTop));
        return kind == ScaleKind.Logarithmic
            ? ValueScale.For(new ScaleSpec("", "", kind, round, round * BottomShare), [])
            : ValueScale.For(new ScaleSpec("", "", kind, null, 0), [0, top]);
    }

    private static IEnumerable<float> Values(FieldRaster field)
    {
        for (int y = 0; y < field.Height; y++)
        {
            for (int x = 0; x < field.Width; x++)
            {
                if (float.IsFinite(field[x, y]))
                {
                    yield return field[x, y];
                }
            }
        }
    }
}
