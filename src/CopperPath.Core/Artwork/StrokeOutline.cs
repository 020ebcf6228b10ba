using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>The area a moving pen covers.</summary>
internal static class StrokeOutline
{
    private static readonly PointNm[][] Nothing = [];

    /// <summary>
    /// A round pen along a line: straight sides at exactly the pen radius and two half-circle caps.
    /// A line of no length gives the disc.
    /// </summary>
    public static PointNm[][] RoundPenLine(PointNm from, PointNm to, RoundCap cap)
    {
        if (cap.RadiusNm == 0)
        {
            return Nothing;
        }

        if (from == to)
        {
            return [CircleOutline.Ring(Vector.Of(from), cap.RadiusNm, cap.ToleranceNm)];
        }

        Vector along = Vector.Of(to - from);
        along = (1 / along.Length) * along;
        ReadOnlySpan<Vector> cornersOfCap = cap.Corners;
        int half = cornersOfCap.Length;
        var ring = new PointNm[2 * half];
        for (int i = 0; i < half; i++)
        {
            // The same rounded offset on both ends keeps the sides parallel.
            PointNm offset = RoundCap.Turned(cornersOfCap[i], along).Rounded();
            ring[i] = to + offset;
            ring[half + i] = from - offset;
        }

        return [ring];
    }

    /// <summary>
    /// A round pen along an arc: outer arc, cap, inner arc, cap; or two circles when the arc is a full turn.
    /// Where the pen is wider than the arc's radius the inner arc passes beyond the centre and winds round places
    /// already covered, which the non-zero winding rule allows.
    /// </summary>
    public static PointNm[][] RoundPenArc(PointNm from, PointNm to, in Arc arc, RoundCap cap)
    {
        double penNm = cap.RadiusNm;
        if (penNm == 0)
        {
            return Nothing;
        }

        if (arc.IsFullCircle)
        {
            PointNm[] outside = CircleOutline.Ring(arc.Centre, arc.StartRadiusNm + penNm, cap.ToleranceNm);
            double insideNm = arc.StartRadiusNm - penNm;
            return insideNm <= 0
                ? [outside]
                : [outside, RingOrder.Clockwise(CircleOutline.Ring(arc.Centre, insideNm, cap.ToleranceNm))];
        }

        Vector start = Vector.Of(arc.Reversed ? to : from);
        Vector end = Vector.Of(arc.Reversed ? from : to);
        var ring = new List<PointNm>();
        AppendCap(ring, end, Tangent(arc.EndAngleRad), cap);
        arc.AppendInner(ring, cap.ToleranceNm, -penNm, backwards: true);
        AppendCap(ring, start, -1 * Tangent(arc.StartAngleRad), cap);
        arc.AppendInner(ring, cap.ToleranceNm, penNm, backwards: false);
        return [RingOrder.WithoutRepeats(ring)];
    }

    /// <summary>
    /// A convex stamp along a line: the convex hull of the stamp at both ends. Edges that face along the path are
    /// taken at its end, the others at its start; between them lie the two sides of the stroke.
    /// </summary>
    public static PointNm[][] ConvexPenLine(PointNm from, PointNm to, PointNm[] stamp)
    {
        PointNm along = to - from;
        var ring = new List<PointNm>(stamp.Length + 2);
        bool arrivesFacing = Faces(stamp[^1], stamp[0], along);
        for (int i = 0; i < stamp.Length; i++)
        {
            bool leavesFacing = Faces(stamp[i], stamp[(i + 1) % stamp.Length], along);
            ring.Add((arrivesFacing ? to : from) + stamp[i]);
            if (leavesFacing != arrivesFacing)
            {
                ring.Add((leavesFacing ? to : from) + stamp[i]);
            }

            arrivesFacing = leavesFacing;
        }

        return [RingOrder.WithoutRepeats(ring)];
    }

    /// <summary>True when the outward normal of a counter-clockwise ring's edge has a part along the path.</summary>
    private static bool Faces(PointNm a, PointNm b, PointNm along) =>
        ((Int128)(b.Y - a.Y) * along.X) - ((Int128)(b.X - a.X) * along.Y) > 0;

    private static void AppendCap(List<PointNm> ring, Vector at, Vector along, RoundCap cap)
    {
        foreach (Vector corner in cap.Corners)
        {
            ring.Add((at + RoundCap.Turned(corner, along)).Rounded());
        }
    }

    private static Vector Tangent(double angleRad)
    {
        (double sine, double cosine) = Math.SinCos(angleRad);
        return new Vector(-sine, cosine);
    }
}

/// <summary>Half a pen, flattened once: from the right side of its path round the front to the left side.</summary>
internal sealed class RoundCap
{
    private readonly Vector[] _corners;

    public RoundCap(double radiusNm, double toleranceNm)
    {
        RadiusNm = radiusNm;
        ToleranceNm = toleranceNm;
        int count = radiusNm == 0 ? 2 : Chords.OfArc(radiusNm, Math.PI, toleranceNm);
        double inner = radiusNm * Chords.ArcFactor(count, Math.PI);
        _corners = new Vector[count + 1];
        for (int i = 1; i < count; i++)
        {
            (double sine, double cosine) = Math.SinCos(Math.PI * i / count);
            _corners[i] = inner * new Vector(sine, -cosine);
        }

        _corners[0] = new Vector(0, -radiusNm);
        _corners[count] = new Vector(0, radiusNm);
    }

    public double RadiusNm { get; }

    public double ToleranceNm { get; }

    /// <summary>Corners for a path along +x; the first and last lie on the pen's true edge.</summary>
    public ReadOnlySpan<Vector> Corners => _corners;

    /// <summary>A corner for a path along a unit vector.</summary>
    public static Vector Turned(Vector corner, Vector along) =>
        new((along.X * corner.X) - (along.Y * corner.Y), (along.Y * corner.X) + (along.X * corner.Y));
}
