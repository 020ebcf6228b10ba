namespace CopperPath.Geometry;

/// <summary>Measures of a closed ring of points (first point not repeated).</summary>
public static class Ring
{
    /// <summary>Shoelace area in square nanometres, positive when counter-clockwise; exact until the final rounding.</summary>
    public static double SignedAreaNm2(PointNm[] ring)
    {
        Int128 twice = 0;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            twice += ((Int128)ring[j].X * ring[i].Y) - ((Int128)ring[i].X * ring[j].Y);
        }

        return (double)twice / 2;
    }

    /// <summary>Sum of its sides, nanometres.</summary>
    public static double PerimeterNm(PointNm[] ring)
    {
        double perimeterNm = 0;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            perimeterNm += ring[j].DistanceNmTo(ring[i]);
        }

        return perimeterNm;
    }
}
