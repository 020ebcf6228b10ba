using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Benchmarks;

/// <summary>Copies of a layer side by side, a millimetre apart, in a field as square as can be.</summary>
internal static class TiledBoard
{
    private const long GapNm = 1_000_000;

    /// <param name="layer">The layer.</param>
    /// <param name="copies">A power of two.</param>
    public static IReadOnlyList<PaintStep> StepsOf(CopperLayer layer, int copies)
    {
        int columns = 1 << ((int.Log2(copies) + 1) / 2);
        BoxNm bounds = layer.Bounds;
        List<PaintStep> steps = [];
        for (int copy = 0; copy < copies; copy++)
        {
            PointNm shift = new((bounds.WidthNm + GapNm) * (copy % columns), (bounds.HeightNm + GapNm) * (copy / columns));
            steps.AddRange(layer.Artwork.Objects.Select(painted =>
                new PaintStep(painted.Polarity == Polarity.Dark, painted.Rings, painted.Offset + shift)));
        }

        return steps;
    }

    /// <summary>Corners of all outlines.</summary>
    public static long VerticesOf(IEnumerable<PaintStep> steps) => steps.Sum(step => step.Rings.Sum(ring => (long)ring.Length));
}
