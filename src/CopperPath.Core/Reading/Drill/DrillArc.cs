using CopperPath.Geometry;

namespace CopperPath.Reading.Drill;

/// <summary>Routed arcs, flattened to chords.</summary>
internal static class DrillArc
{
    /// <summary>Largest distance between arc and chord, in nanometres: 1 um, far below the width of any tool.</summary>
    private const double ChordErrorNm = 1_000;

    /// <summary>Slack for a radius given in the last digits of the file, in nanometres.</summary>
    public const double RadiusSlackNm = 5_000;

    /// <summary>
    /// Centre of the arc of at most 180 degrees with the given radius; null when start and end are equal or the
    /// radius can not span them.
    /// </summary>
    public static (double X, double Y)? CentreOfMinorArc(
        PointNm start, PointNm end, double radiusNm, bool counterClockwise)
    {
        double dx = end.X - start.X;
        double dy = end.Y - start.Y;
        double chordNm = Math.Sqrt((dx * dx) + (dy * dy));
        if (chordNm == 0 || radiusNm <= 0 || radiusNm + RadiusSlackNm < chordNm / 2)
        {
            return null;
        }

        double heightNm = Math.Sqrt(Math.Max(0, (radiusNm * radiusNm) - (chordNm * chordNm / 4)));

        // Turning counter-clockwise through less than half a turn, the centre lies left of the chord.
        double side = counterClockwise ? heightNm / chordNm : -heightNm / chordNm;
        return (start.X + (dx / 2) - (dy * side), start.Y + (dy / 2) + (dx * side));
    }

    /// <summary>
    /// Points of the arc after its start, the end included. Equal start and end mean a full circle. The radius runs
    /// linearly from start to end, so that both ends stay exact.
    /// </summary>
    public static List<PointNm> Flatten(
        PointNm start, PointNm end, (double X, double Y) centre, bool counterClockwise)
    {
        double startRadiusNm = Distance(start, centre);
        double endRadiusNm = Distance(end, centre);
        double startAngle = Math.Atan2(start.Y - centre.Y, start.X - centre.X);
        double sweep = Math.Atan2(end.Y - centre.Y, end.X - centre.X) - startAngle;
        if (start == end)
        {
            sweep = counterClockwise ? Math.Tau : -Math.Tau;
        }
        else if (counterClockwise && sweep <= 0)
        {
            sweep += Math.Tau;
        }
        else if (!counterClockwise && sweep >= 0)
        {
            sweep -= Math.Tau;
        }

        double largestNm = Math.Max(Math.Max(startRadiusNm, endRadiusNm), 2 * ChordErrorNm);
        double stepAngle = 2 * Math.Acos(1 - (ChordErrorNm / largestNm));
        int steps = Math.Max(1, (int)Math.Ceiling(Math.Abs(sweep) / stepAngle));
        List<PointNm> points = [];
        for (int i = 1; i < steps; i++)
        {
            double t = (double)i / steps;
            double radiusNm = startRadiusNm + ((endRadiusNm - startRadiusNm) * t);
            (double sin, double cos) = Math.SinCos(startAngle + (sweep * t));
            points.Add(new PointNm(
                (long)Math.Round(centre.X + (radiusNm * cos)),
                (long)Math.Round(centre.Y + (radiusNm * sin))));
        }

        points.Add(end);
        return points;
    }

    public static double Distance(PointNm point, (double X, double Y) centre)
    {
        double dx = point.X - centre.X;
        double dy = point.Y - centre.Y;
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}
