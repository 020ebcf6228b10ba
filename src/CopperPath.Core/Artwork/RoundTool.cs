using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>What a round tool did: stood at a point or moved along a line.</summary>
/// <param name="Path">One point, or the two ends of a line.</param>
/// <param name="DiameterNm">Its diameter, nanometres, positive.</param>
public sealed record RoundTool(PointNm[] Path, long DiameterNm)
{
    /// <summary>
    /// How far corners of a flattened circle may stand out, as a share of its radius: 1.5 % for the coarsest, while those
    /// of a regular polygon of twelve corners stand out by 2.3 %.
    /// </summary>
    private const double ChordShare = 0.02;

    /// <summary>Slack for corners rounded to the grid, nanometres.</summary>
    private const double RoundingNm = 3;

    /// <summary>
    /// The tool that made a painted object, seen from its shape: a disc about its anchor, or a stadium with one end
    /// there. Null for anything else: rings, arcs, rectangles, regions.
    /// </summary>
    public static RoundTool? Of(PaintedObject painted)
    {
        if (painted.Kind == PaintKind.Region || painted.Rings is not [{ Length: > 3 } ring])
        {
            return null;
        }

        PointNm from = painted.Anchor - painted.Offset;
        if (OtherEnd(ring, from) is not { } to)
        {
            return null;
        }

        // A flattened circle keeps its area, so the area gives the radius: A = pi r^2 + 2 r L.
        double lengthNm = from.DistanceNmTo(to);
        double areaNm2 = Ring.SignedAreaNm2(ring);
        double radiusNm = (Math.Sqrt((lengthNm * lengthNm) + (Math.PI * areaNm2)) - lengthNm) / Math.PI;
        double slackNm = (ChordShare * radiusNm) + RoundingNm;
        if (radiusNm < 1 || Array.Exists(ring, p => Math.Abs(DistanceNm(p, from, to) - radiusNm) > slackNm))
        {
            return null;
        }

        PointNm[] path = from == to ? [painted.Anchor] : [painted.Anchor, to + painted.Offset];
        return new RoundTool(path, (long)Math.Round(2 * radiusNm));
    }

    /// <summary>
    /// Discs and stadiums are symmetric about their middle: opposite corners add up to the sum of the two ends. Null
    /// when they do not.
    /// </summary>
    private static PointNm? OtherEnd(PointNm[] ring, PointNm from)
    {
        int half = ring.Length / 2;
        PointNm sum = ring[0] + ring[half];
        for (int i = 0; i < half; i++)
        {
            PointNm stray = ring[i] + ring[i + half] - sum;
            if (ring.Length % 2 != 0 || Math.Abs(stray.X) > RoundingNm || Math.Abs(stray.Y) > RoundingNm)
            {
                return null;
            }
        }

        PointNm to = sum - from;
        return from.DistanceNmTo(to) <= RoundingNm ? from : to;
    }

    private static double DistanceNm(PointNm p, PointNm from, PointNm to)
    {
        double dx = to.X - from.X;
        double dy = to.Y - from.Y;
        double square = (dx * dx) + (dy * dy);
        double along = square == 0 ? 0 : Math.Clamp((((p.X - from.X) * dx) + ((p.Y - from.Y) * dy)) / square, 0, 1);
        return Math.Sqrt(Math.Pow(p.X - from.X - (along * dx), 2) + Math.Pow(p.Y - from.Y - (along * dy), 2));
    }
}
