using CopperPath.Geometry;

namespace CopperPath.Core.Tests.Polygons;

/// <summary>
/// Random scenes in which shapes lie on each other, or a nanometre beside, touch, are thinner than they can be drawn, or
/// cross themselves; fixed seeds.
/// </summary>
internal sealed class HardScene(int seed)
{
    public const int Kinds = 7;

    private readonly Scene _scene = new(seed);
    private readonly Random _random = new(~seed);

    /// <summary>Rings of a scene, each drawn for itself.</summary>
    /// <param name="kind">Which kind of trouble, below <see cref="Kinds"/>.</param>
    public List<PointNm[]> Rings(int kind)
    {
        // Most scenes are small; some are as crowded as boxes of the engine that are treated as crowds.
        int count = _random.Next(100) switch { 0 => 160, < 6 => 45, _ => 3 + _random.Next(22) };
        return kind switch
        {
            0 => Copies(count, 0, 0),
            1 => Copies(count, 1, 1),
            2 => Copies(count, 3, 300),
            3 => Nested(count),
            4 => Tangent(count),
            5 => Slivers(count),
            _ => [.. Enumerable.Range(0, Math.Min(count, 20)).Select(_ => _scene.Scribble(3 + _random.Next(9), 40 + _random.Next(5_000_000)))],
        };
    }

    /// <summary>True three times in four: a dark step.</summary>
    public bool IsDark() => _random.Next(4) > 0;

    /// <summary>One or two shapes again and again, moved by up to so many nanometres, turned by starting elsewhere.</summary>
    private List<PointNm[]> Copies(int count, int stepNm, int mostNm)
    {
        List<PointNm[]> originals = _scene.Copper(1 + _random.Next(2), 2_000_000, 200 + _random.Next(500_000));
        List<PointNm[]> rings = [];
        for (int i = 0; i < count; i++)
        {
            PointNm[] ring = originals[i % originals.Count];
            PointNm shift = new(stepNm * (i % (mostNm + 1)), _random.Next(3) == 0 ? _random.Next(mostNm + 1) : 0);
            int start = _random.Next(2) * _random.Next(ring.Length);
            rings.Add([.. ring[start..].Concat(ring[..start]).Select(p => p + shift)]);
        }

        return rings;
    }

    /// <summary>Boxes, wedges and discs that share sides or a corner and are of all sizes; oblique by a shear.</summary>
    private List<PointNm[]> Nested(int count)
    {
        long unit = 1 + _random.Next(20_000), shear = _random.Next(5);
        int shape = _random.Next(3);
        List<PointNm[]> rings = [];
        for (int i = 1; i <= count; i++)
        {
            long size = unit * (1 + _random.Next(count));
            PointNm[] ring = shape switch
            {
                0 => Scene.Box(0, 0, size, size),
                1 => Scene.Box(0, 0, size, unit * count),
                _ => [new(0, 0), new(size, unit), new(size + unit, size + (2 * unit))],
            };
            rings.Add(Array.ConvertAll(ring, p => new PointNm(p.X + (shear * p.Y), p.Y)));
        }

        return rings;
    }

    /// <summary>Discs and boxes in a row or a grid, each touching its neighbours, give or take a nanometre.</summary>
    private List<PointNm[]> Tangent(int count)
    {
        long radius = 20 + _random.Next(400_000);
        int columns = 1 + _random.Next(8), corners = 4 * (2 + _random.Next(12));
        return [.. Enumerable.Range(0, count).Select(i =>
        {
            PointNm centre = new((i % columns * 2 * radius) + _random.Next(3) - 1, (i / columns % 6 * 2 * radius) + _random.Next(3) - 1);
            return _random.Next(3) == 0
                ? Scene.Box(centre.X - radius, centre.Y - radius, centre.X + radius, centre.Y + radius)
                : Scene.Disc(centre, radius, corners);
        })];
    }

    /// <summary>Parallelograms a few nanometres wide and millimetres long, nearly parallel, and one shape over them.</summary>
    private List<PointNm[]> Slivers(int count)
    {
        PointNm along = new(1_000_000 + _random.Next(3_000_000), _random.Next(3_000_000));
        int step = _random.Next(5);
        List<PointNm[]> rings = [Scene.Disc(new(along.X / 2, along.Y / 2), 1_000 + _random.Next(400_000))];
        for (int i = 0; i < count; i++)
        {
            PointNm from = new(i * step, _random.Next(2)), to = from + along + new PointNm(_random.Next(3), _random.Next(2));
            int width = 1 + _random.Next(4);
            rings.Add([from, from + new PointNm(width, 0), to + new PointNm(width, 0), to]);
        }

        return rings;
    }
}
