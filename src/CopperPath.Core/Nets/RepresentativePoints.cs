using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.Nets;

/// <summary>Points that lie on the copper an object drew, best first.</summary>
internal static class RepresentativePoints
{
    /// <summary>Step from an edge into the object: well above rounding, well below any drawn width.</summary>
    private const double InwardNm = 2_000;

    /// <summary>The anchor, then points just inside up to a dozen edges spread over the first ring.</summary>
    public static IEnumerable<PointNm> Of(PaintedObject painted)
    {
        // A region's anchor is a corner, where rounding decides; a flash's may be its own hole.
        if (painted.Kind != PaintKind.Region)
        {
            yield return painted.Anchor;
        }

        if (painted.Rings.Count == 0)
        {
            yield break;
        }

        PointNm[] ring = painted.Rings[0];
        double turn = Ring.SignedAreaNm2(ring) >= 0 ? 1 : -1;
        int step = Math.Max(1, ring.Length / 12);
        for (int i = 0; i < ring.Length; i += step)
        {
            PointNm a = ring[i] + painted.Offset;
            PointNm b = ring[(i + 1) % ring.Length] + painted.Offset;
            double length = a.DistanceNmTo(b);
            if (length > InwardNm)
            {
                yield return new PointNm(
                    ((a.X + b.X) / 2) - (long)(turn * InwardNm * (b.Y - a.Y) / length),
                    ((a.Y + b.Y) / 2) + (long)(turn * InwardNm * (b.X - a.X) / length));
            }
        }
    }
}
