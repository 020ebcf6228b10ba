using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>One closed curve of a stamp, in nanometres about the stamp's origin, not yet rounded.</summary>
internal abstract record Outline
{
    /// <summary>Largest distance from the origin, nanometres.</summary>
    public abstract double ReachNm { get; }

    /// <summary>The curve as a counter-clockwise ring on the grid; empty when nothing is left of it.</summary>
    public PointNm[] Flatten(in Similarity similarity, double toleranceNm)
    {
        PointNm[] ring = Trace(similarity, toleranceNm);
        return RingOrder.CounterClockwise(ring);
    }

    protected abstract PointNm[] Trace(in Similarity similarity, double toleranceNm);
}

/// <summary>A full circle.</summary>
internal sealed record CircleOutline(Vector Centre, double RadiusNm) : Outline
{
    public override double ReachNm => Centre.Length + RadiusNm;

    protected override PointNm[] Trace(in Similarity similarity, double toleranceNm) =>
        Ring(similarity.Apply(Centre), RadiusNm * similarity.Scale, toleranceNm);

    /// <summary>Counter-clockwise ring with vertices on the four axis directions and the area of the circle.</summary>
    public static PointNm[] Ring(Vector centre, double radiusNm, double toleranceNm)
    {
        int count = Chords.OfCircle(radiusNm, toleranceNm);
        double radius = radiusNm * Chords.CircleFactor(count);
        int quarter = count / 4;
        var ring = new PointNm[count];
        for (int i = 0; i < quarter; i++)
        {
            (double sine, double cosine) = i == 0 ? (0, 1) : Math.SinCos(2 * Math.PI * i / count);
            double x = radius * cosine;
            double y = radius * sine;
            ring[i] = (centre + new Vector(x, y)).Rounded();
            ring[i + quarter] = (centre + new Vector(-y, x)).Rounded();
            ring[i + (2 * quarter)] = (centre + new Vector(-x, -y)).Rounded();
            ring[i + (3 * quarter)] = (centre + new Vector(y, -x)).Rounded();
        }

        return ring;
    }
}

/// <summary>A corner of a <see cref="PathOutline"/> and how the path comes to it from the corner before.</summary>
internal readonly record struct Corner(Vector At, Turn Turn, Vector Centre)
{
    public static Corner Straight(double x, double y) => new(new Vector(x, y), Turn.Straight, default);
}

/// <summary>A closed path of straight lines and arcs; the last corner leads back to the first.</summary>
internal sealed record PathOutline(IReadOnlyList<Corner> Corners) : Outline
{
    public override double ReachNm => Corners.Max(c => c.Turn == Turn.Straight
        ? c.At.Length
        : c.Centre.Length + (c.At - c.Centre).Length);

    public static PathOutline Polygon(params IEnumerable<Vector> corners) =>
        new([.. corners.Select(c => new Corner(c, Turn.Straight, default))]);

    protected override PointNm[] Trace(in Similarity similarity, double toleranceNm)
    {
        var ring = new List<PointNm>(Corners.Count);
        Vector previous = similarity.Apply(Corners[^1].At);
        foreach (Corner corner in Corners)
        {
            Vector at = similarity.Apply(corner.At);
            if (corner.Turn != Turn.Straight)
            {
                bool clockwise = corner.Turn == Turn.Clockwise ^ similarity.Mirrors;
                Turn turn = clockwise ? Turn.Clockwise : Turn.CounterClockwise;
                Arc.Between(previous, at, similarity.Apply(corner.Centre), turn).AppendInner(ring, toleranceNm);
            }

            ring.Add(at.Rounded());
            previous = at;
        }

        return RingOrder.WithoutRepeats(ring);
    }
}
