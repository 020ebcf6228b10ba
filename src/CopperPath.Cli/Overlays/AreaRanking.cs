namespace CopperPath.Cli.Overlays;

/// <summary>Values of a field with the area each stands for: how much of the copper lies above a level.</summary>
internal sealed class AreaRanking
{
    private readonly double[] _values;
    private readonly double[] _areasM2;

    /// <summary>Triangles whose value is not finite do not count.</summary>
    public AreaRanking(IReadOnlyCollection<ShadedSheet> sheets)
    {
        int triangles = sheets.Sum(sheet => sheet.Mesh.TriangleCount);
        double[] values = new double[triangles];
        double[] areasM2 = new double[triangles];
        int count = 0;
        double least = double.PositiveInfinity;
        double most = double.NegativeInfinity;
        foreach (ShadedSheet sheet in sheets)
        {
            for (int t = 0; t < sheet.Mesh.TriangleCount; t++)
            {
                double value = sheet.MeanOf(t);
                double areaM2 = TriangleAreas.AreaM2(sheet.Mesh, t);
                if (double.IsFinite(value))
                {
                    (values[count], areasM2[count]) = (value, areaM2);
                    count++;
                    AreaM2 += areaM2;
                    least = Math.Min(least, value);
                    most = Math.Max(most, value);
                }
                else
                {
                    HollowM2 += areaM2;
                }
            }
        }

        (_values, _areasM2) = (values[..count], areasM2[..count]);
        (Least, Most) = count > 0 ? (least, most) : (0, 0);
    }

    /// <summary>Least mean of a triangle; 0 without any.</summary>
    public double Least { get; }

    /// <summary>Largest mean of a triangle; 0 without any.</summary>
    public double Most { get; }

    /// <summary>Area of all triangles with a value, square metres.</summary>
    public double AreaM2 { get; }

    /// <summary>Area of all triangles without a value, square metres.</summary>
    public double HollowM2 { get; }

    /// <summary>Share of the area whose value is above a level, 0..1.</summary>
    public double ShareAbove(double level)
    {
        double aboveM2 = 0;
        for (int i = 0; i < _values.Length; i++)
        {
            aboveM2 += _values[i] > level ? _areasM2[i] : 0;
        }

        return AreaM2 > 0 ? aboveM2 / AreaM2 : 0;
    }

    /// <summary>Share of the area whose value is below a level, 0..1.</summary>
    public double ShareBelow(double level)
    {
        double belowM2 = 0;
        for (int i = 0; i < _values.Length; i++)
        {
            belowM2 += _values[i] < level ? _areasM2[i] : 0;
        }

        return AreaM2 > 0 ? belowM2 / AreaM2 : 0;
    }
}
