using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Artwork;

/// <summary>
/// Takes exposure-off parts of a macro away from the parts before them, on the nanometre grid: painting in small.
/// </summary>
internal static class MacroExposure
{
    /// <summary>
    /// Pairs of edges that lie near each other, beyond which a shape is not composed: each pair may cross, and
    /// outlines written to cross everywhere make a few hundred characters into millions of vertices.
    /// </summary>
    public const int MostNearEdges = 200_000;

    /// <summary>Edges of all parts together: the search for near ones compares each with each.</summary>
    public const int MostEdges = 10_000;

    /// <summary>Rings of the composed shape, or null when the parts are too entangled to compose.</summary>
    public static PointNm[][]? Compose(IReadOnlyList<(bool Adds, PointNm[][] Rings)> parts)
    {
        if (!IsBounded(parts))
        {
            return null;
        }

        try
        {
            return [.. PolygonOperations.Paint([.. parts.Select(part => new PaintStep(part.Adds, part.Rings, default))])
                .SelectMany(polygon => polygon.Rings)];
        }
        catch (EntangledOutlinesException)
        {
            return null;
        }
    }

    private static bool IsBounded(IReadOnlyList<(bool Adds, PointNm[][] Rings)> parts)
    {
        int edges = parts.Sum(part => part.Rings.Sum(ring => ring.Length));
        if (edges > MostEdges)
        {
            return false;
        }

        BoxNm[] boxes = [.. parts.SelectMany(part => part.Rings).SelectMany(EdgeBoxes)];
        int near = 0;
        for (int i = 0; i < boxes.Length && near <= MostNearEdges; i++)
        {
            for (int j = 0; j < i; j++)
            {
                near += boxes[i].Touches(boxes[j]) ? 1 : 0;
            }
        }

        return near <= MostNearEdges;
    }

    private static IEnumerable<BoxNm> EdgeBoxes(PointNm[] ring)
    {
        PointNm from = ring[^1];
        foreach (PointNm to in ring)
        {
            yield return BoxNm.Empty.Including(from).Including(to);
            from = to;
        }
    }
}
