namespace CopperPath.Cli.Overlays;

/// <summary>Values of a field with the area each stands for: how much of the copper lies above a level.</summary>
internal sealed class AreaRanking
{
    private readonly IReadOnlyList<(double[] Values, double[] AreasM2)> _parts;

    private AreaRanking(IReadOnlyList<(double[] Values, double[] AreasM2)> parts) => _parts = parts;

    /// <summary>Least mean of a triangle; 0 without any.</summary>
    public double Least { get; private init; }

    /// <summary>Largest mean of a triangle; 0 without any.</summary>
    public double Most { get; private init; }

    /// <summary>Area of all triangles with a value, square metres.</summary>
    public double AreaM2 { get; private init; }

    /// <summary>Area of all triangles without a value, square metres.</summary>
    public double HollowM2 { get; private init; }

    private bool IsEmpty => _parts.All(part => part.Values.Length == 0);

    public static AreaRanking Of(ShadedSheet sheet)
    {
        double[] values = new double[sheet.Mesh.TriangleCount];
        double[] areasM2 = new double[values.Length];
        int count = 0;
        double sumM2 = 0;
        double hollowM2 = 0;
        double least = double.PositiveInfinity;
        double most = double.NegativeInfinity;
        for (int t = 0; t < sheet.Mesh.TriangleCount; t++)
        {
            double value = sheet.MeanOf(t);
            double areaM2 = TriangleAreas.AreaM2(sheet.Mesh, t);
            if (double.IsFinite(value))
            {
                (values[count], areasM2[count]) = (value, areaM2);
                count++;
                sumM2 += areaM2;
                least = Math.Min(least, value);
                most = Math.Max(most, value);
            }
            else
            {
                hollowM2 += areaM2;
            }
        }

        return new AreaRanking([(values[..count], areasM2[..count])])
        {
            Least = count > 0 ? least : 0,
            Most = count > 0 ? most : 0,
            AreaM2 = sumM2,
            HollowM2 = hollowM2,
        };
    }

    /// <summary>Several fields as one; none has no area.</summary>
    public static AreaRanking Together(IEnumerable<AreaRanking> rankings)
    {
        AreaRanking[] all = [.. rankings];
        AreaRanking[] filled = [.. all.Where(ranking => !ranking.IsEmpty)];
        return new AreaRanking([.. filled.SelectMany(ranking => ranking._parts)])
        {
            Least = filled.Select(ranking => ranking.Least).DefaultIfEmpty(0).Min(),
            Most = filled.Select(ranking => ranking.Most).DefaultIfEmpty(0).Max(),
            AreaM2 = all.Sum(ranking => ranking.AreaM2),
            HollowM2 = all.Sum(ranking => ranking.HollowM2),
        };
    }

    /// <summary>Share of the area whose value is above a level, 0..1.</summary>
    public double ShareAbove(double level) => ShareWhere(value => value > level);

    /// <summary>Share of the area whose value is below a level, 0..1.</summary>
    public double ShareBelow(double level) => ShareWhere(value => value < level);

    private double ShareWhere(Func<double, bool> counts)
    {
        double countedM2 = 0;
        foreach ((double[] values, double[] areasM2) in _parts)
        {
            for (int i = 0; i < values.Length; i++)
            {
                countedM2 += counts(values[i]) ? areasM2[i] : 0;
            }
        }

        return AreaM2 > 0 ? countedM2 / AreaM2 : 0;
    }
}
