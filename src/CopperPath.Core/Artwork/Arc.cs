using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>Which way a path goes to its next point.</summary>
internal enum Turn
{
    Straight,
    CounterClockwise,
    Clockwise,
}

/// <summary>
/// A circular arc between two points of a path. It is always held counter-clockwise, so that an arc and its way back
/// give the same vertices and coincide after rounding.
/// </summary>
/// <param name="Centre">Centre, nanometres.</param>
/// <param name="StartAngleRad">Direction from the centre to the counter-clockwise start.</param>
/// <param name="SweepRad">Angle swept counter-clockwise, above 0, at most 2 pi.</param>
/// <param name="StartRadiusNm">Radius at the counter-clockwise start.</param>
/// <param name="EndRadiusNm">Radius at the counter-clockwise end; between the ends it runs linearly with the angle.</param>
/// <param name="Reversed">True when the path runs against the held direction.</param>
internal readonly record struct Arc(
    Vector Centre,
    double StartAngleRad,
    double SweepRad,
    double StartRadiusNm,
    double EndRadiusNm,
    bool Reversed)
{
    public bool IsFullCircle => SweepRad >= 2 * Math.PI;

    public double EndAngleRad => StartAngleRad + SweepRad;

    /// <summary>The arc from one point to another; equal points make a full circle.</summary>
    public static Arc Between(Vector from, Vector to, Vector centre, Turn turn)
    {
        bool reversed = turn == Turn.Clockwise;
        Vector start = (reversed ? to : from) - centre;
        Vector end = (reversed ? from : to) - centre;
        double startAngle = start.AngleRad;
        double sweep = from == to ? 2 * Math.PI : end.AngleRad - startAngle;
        if (sweep <= 0)
        {
            sweep += 2 * Math.PI;
        }

        return new Arc(centre, startAngle, sweep, start.Length, end.Length, reversed);
    }

    /// <summary>
    /// Appends the vertices strictly between the ends, in path direction, for the curve that runs beside the arc
    /// at <paramref name="besideNm"/> further from the centre (negative: nearer, or beyond the centre).
    /// </summary>
    public void AppendInner(List<PointNm> ring, double toleranceNm, double besideNm, bool backwards)
    {
        double largestRadius = Math.Max(Math.Abs(StartRadiusNm + besideNm), Math.Abs(EndRadiusNm + besideNm));
        int count = Chords.OfArc(largestRadius, SweepRad, toleranceNm);
        double step = SweepRad / count;
        double factor = Chords.ArcFactor(count, SweepRad);
        for (int i = 1; i < count; i++)
        {
            int k = backwards ? count - i : i;
            double radius = StartRadiusNm + ((EndRadiusNm - StartRadiusNm) * k / count) + besideNm;
            (double sine, double cosine) = Math.SinCos(StartAngleRad + (k * step));
            ring.Add((Centre + ((factor * radius) * new Vector(cosine, sine))).Rounded());
        }
    }

    /// <summary>Appends the vertices strictly between the ends in path direction.</summary>
    public void AppendInner(List<PointNm> ring, double toleranceNm) => AppendInner(ring, toleranceNm, 0, Reversed);
}
