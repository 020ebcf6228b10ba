using System.Runtime.InteropServices;
using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>The hot pixels of a cell, each once.</summary>
internal sealed class HotPixels
{
    /// <summary>So many are compared one by one; more are sorted in the end.</summary>
    private const int ManyPixels = 48;

    private readonly List<PointNm> _pixels = [];

    public void Clear() => _pixels.Clear();

    public void Add(long x, long y)
    {
        var pixel = new PointNm(x, y);
        if (_pixels.Count > ManyPixels || !_pixels.Contains(pixel))
        {
            _pixels.Add(pixel);
        }
    }

    /// <summary>The pixels in an order that depends on what was added only.</summary>
    public ReadOnlySpan<PointNm> Sorted()
    {
        Span<PointNm> pixels = CollectionsMarshal.AsSpan(_pixels);
        if (pixels.Length <= ManyPixels)
        {
            return pixels;
        }

        pixels.Sort(static (p, q) => p.X != q.X ? p.X.CompareTo(q.X) : p.Y.CompareTo(q.Y));
        int kept = 1;
        for (int i = 1; i < pixels.Length; i++)
        {
            if (pixels[i] != pixels[kept - 1])
            {
                pixels[kept++] = pixels[i];
            }
        }

        return pixels[..kept];
    }
}
