using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>The connected components of noded edges, each known by its lexicographically smallest vertex.</summary>
internal sealed class Components
{
    public Components(NodedEdges edges)
    {
        Corners = SmallestVertices(edges);
        if (Corners.Length > 1)
        {
            Segment[] segments = new Segment[edges.Count];
            for (int e = 0; e < segments.Length; e++)
            {
                segments[e] = Segment.Between(edges.Vertices[edges.From[e]], edges.Vertices[edges.To[e]], e);
            }

            Edges = new EdgeGrid(segments);
        }
    }

    /// <summary>Smallest vertex of each component: nothing of the component lies left of it.</summary>
    public int[] Corners { get; }

    /// <summary>All edges, ready to be looked at from the corners; null when there is but one component.</summary>
    public EdgeGrid? Edges { get; }

    private static int[] SmallestVertices(NodedEdges edges)
    {
        PointNm[] vertices = edges.Vertices;
        var sets = new DisjointSets(vertices.Length);
        bool[] isUsed = new bool[vertices.Length];
        for (int e = 0; e < edges.Count; e++)
        {
            sets.Join(edges.From[e], edges.To[e]);
            isUsed[edges.From[e]] = isUsed[edges.To[e]] = true;
        }

        int[] smallest = new int[vertices.Length];
        List<int> components = [];
        for (int v = 0; v < vertices.Length; v++)
        {
            // The representative of a set is its first member, so it comes here before the others.
            int component = sets.Find(v);
            if (component == v)
            {
                smallest[v] = v;
                if (isUsed[v])
                {
                    components.Add(v);
                }
            }
            else
            {
                PointNm best = vertices[smallest[component]], candidate = vertices[v];
                if (candidate.X < best.X || (candidate.X == best.X && candidate.Y < best.Y))
                {
                    smallest[component] = v;
                }
            }
        }

        return [.. components.Select(component => smallest[component])];
    }
}
