using CopperPath.Geometry;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>Random shapes with fixed seeds: the raw material of the differential tests.</summary>
internal sealed class Scene(int seed)
{
    private readonly Random _random = new(seed);

    public int Below(int limit) => _random.Next(limit);

    public PointNm Point(long extentNm) => new(_random.NextInt64(extentNm), _random.NextInt64(extentNm));

    public static PointNm[] Box(long x0, long y0, long x1, long y1) =>
        [new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1)];

    public PointNm[] Box(long extentNm)
    {
        PointNm a = Point(extentNm), b = Point(extentNm);
        return Box(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X) + 1, Math.Max(a.Y, b.Y) + 1);
    }

    /// <summary>A regular polygon standing for a round pad.</summary>
    public static PointNm[] Disc(PointNm centre, double radiusNm, int corners = 24) =>
        [.. Enumerable.Range(0, corners).Select(i => new PointNm(
            centre.X + (long)Math.Round(radiusNm * Math.Cos(2 * Math.PI * i / corners)),
            centre.Y + (long)Math.Round(radiusNm * Math.Sin(2 * Math.PI * i / corners))))];

    /// <summary>A stroke with round ends between two points.</summary>
    public static PointNm[] Stroke(PointNm from, PointNm to, double widthNm, int cornersPerEnd = 12)
    {
        double direction = Math.Atan2(to.Y - from.Y, to.X - from.X);
        PointNm[] ring = new PointNm[2 * (cornersPerEnd + 1)];
        for (int i = 0; i <= cornersPerEnd; i++)
        {
            double angle = direction - (Math.PI / 2) + (Math.PI * i / cornersPerEnd);
            PointNm out1 = new((long)Math.Round(widthNm / 2 * Math.Cos(angle)), (long)Math.Round(widthNm / 2 * Math.Sin(angle)));
            ring[i] = to + out1;
            ring[cornersPerEnd + 1 + i] = from - out1;
        }

        return ring;
    }

    /// <summary>A ring whose corners are anywhere: crosses itself freely.</summary>
    public PointNm[] Scribble(int corners, long extentNm) =>
        [.. Enumerable.Range(0, corners).Select(_ => Point(extentNm))];

    /// <summary>A counter-clockwise ring that sees its centre from everywhere: never crosses itself.</summary>
    public PointNm[] Star(PointNm centre, double radiusNm, int corners) =>
        [.. Enumerable.Range(0, corners).Select(i =>
        {
            double r = radiusNm * (0.2 + (0.8 * _random.NextDouble()));
            double angle = 2 * Math.PI * i / corners;
            return new PointNm(centre.X + (long)(r * Math.Cos(angle)), centre.Y + (long)(r * Math.Sin(angle)));
        })];

    /// <summary>A copper-like medley of strokes, discs, boxes and stars; all counter-clockwise and simple.</summary>
    public List<PointNm[]> Copper(int count, long extentNm, long featureNm)
    {
        List<PointNm[]> rings = [];
        for (int i = 0; i < count; i++)
        {
            PointNm p = Point(extentNm);
            double size = featureNm * (0.2 + _random.NextDouble());
            rings.Add(Below(4) switch
            {
                0 => Stroke(p, p + Point(4 * featureNm) - new PointNm(2 * featureNm, 2 * featureNm), size / 3),
                1 => Disc(p, size),
                2 => Box(p.X, p.Y, p.X + (long)size + 2, p.Y + featureNm),
                _ => Star(p, size + 3, 9),
            });
        }

        return rings;
    }

    /// <summary>Boxes and triangles on a coarse lattice: shared edges, coincident corners and touching are the rule.</summary>
    public List<PointNm[]> Lattice(int count, int cells, long pitchNm)
    {
        List<PointNm[]> rings = [];
        while (rings.Count < count)
        {
            PointNm a = Corner(), b = Corner(), c = Corner();
            if (Below(2) == 0)
            {
                if (a.X != b.X && a.Y != b.Y)
                {
                    rings.Add(Box(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y)));
                }
            }
            else if (Ring.SignedAreaNm2([a, b, c]) is var area && area != 0)
            {
                rings.Add(area > 0 ? [a, b, c] : [a, c, b]);
            }
        }

        return rings;

        PointNm Corner() => new(Below(cells) * pitchNm, Below(cells) * pitchNm);
    }

    /// <summary>Triangles hundreds of thousands of times longer than wide, from and to nearly the same places.</summary>
    public List<PointNm[]> Needles(int count, long lengthNm)
    {
        List<PointNm[]> rings = [];
        while (rings.Count < count)
        {
            PointNm a = new(Below(12), Below(12)), b = new(lengthNm + Below(12), Below(12));
            PointNm c = b + new PointNm(Below(3), 1 + Below(3));
            rings.Add([a, b, c]);
        }

        return rings;
    }

    /// <summary>Square frames drawn as one contour with a cut-in, concentric or a little apart, and boxes among them.</summary>
    public List<PointNm[]> Frames(int count, long sizeNm)
    {
        List<PointNm[]> rings = [];
        while (rings.Count < count)
        {
            PointNm at = new(Below(3) * sizeNm / 4, Below(3) * sizeNm / 4);
            long outer = sizeNm * (2 + Below(3)) / 4, inner = outer * (1 + Below(2)) / 3;
            long x0 = at.X - outer, x1 = at.X + outer, y0 = at.Y - outer, y1 = at.Y + outer;
            long u0 = at.X - inner, u1 = at.X + inner, v0 = at.Y - inner, v1 = at.Y + inner;
            rings.Add(Below(3) == 0 ? Box(u0, v0, u1, v1) :
            [
                new(x0, y0), new(x1, y0), new(x1, y1), new(x0, y1), new(x0, v0),
                new(u0, v0), new(u0, v1), new(u1, v1), new(u1, v0), new(u0, v0), new(x0, v0),
            ]);
        }

        return rings;
    }
}
