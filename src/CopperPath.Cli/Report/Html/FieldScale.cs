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
    /// <param name="fields">Rasters in SI units, no value negative; may be empty.</param>
    /// <param name="perSi">Shown unit over SI unit.</param>
    public static ValueScale Of(ScaleKind kind, IReadOnlyCollection<FieldRaster> fields, double perSi)
    {
        double top = perSi * (kind == ScaleKind.Logarithmic ? HeldBelow(fields) : Most(fields));
        double round = RoundNumbers.AtLeast(Math.Max(top, LeastTop));
        return kind == ScaleKind.Logarithmic
            ? ValueScale.For(new ScaleSpec("", "", kind, round, round * BottomShare), [])
            : ValueScale.For(new ScaleSpec("", "", kind, null, 0), [0, top]);
    }

    private static float HeldBelow(IReadOnlyCollection<FieldRaster> fields)
    {
        float[] values = new float[fields.Sum(field => field.Values.Length)];
        int count = 0;
        foreach (FieldRaster field in fields)
        {
            foreach (float value in field.Values)
            {
                values[count] = value;
                count += float.IsFinite(value) ? 1 : 0;
            }
        }

        return count == 0 ? 0 : OrderStatistic.At(values.AsSpan(0, count), (int)(HeldShare * (count - 1)));
    }

    private static float Most(IReadOnlyCollection<FieldRaster> fields)
    {
        float most = 0;
        foreach (FieldRaster field in fields)
        {
            foreach (float value in field.Values)
            {
                most = value > most && float.IsFinite(value) ? value : most;
            }
        }

        return most;
    }
}
