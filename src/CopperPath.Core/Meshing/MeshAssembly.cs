namespace CopperPath.Meshing;

/// <summary>
/// Copies a finished triangulation into the record the field solvers read: vertices in Hilbert order, and one vertex
/// for each piece of copper where pieces touch at a single point.
/// </summary>
internal static class MeshAssembly
{
    public static SheetMesh Of(Triangulation mesh, OutlineGraph graph, bool[] isHeldMarker, out int pinches)
    {
        (int[] vertexOfHalfEdge, int[] source) = SeparateFans(mesh, out pinches);
        double[] x = new double[source.Length], y = new double[source.Length];
        for (int v = 0; v < source.Length; v++)
        {
            x[v] = mesh.X[source[v]];
            y[v] = mesh.Y[source[v]];
        }

        int[] order = HilbertOrder.Of(x, y);
        int[] place = new int[order.Length];
        double[] xM = new double[order.Length], yM = new double[order.Length];
        for (int i = 0; i < order.Length; i++)
        {
            place[order[i]] = i;
            xM[i] = graph.OriginXM + (x[order[i]] * graph.UnitM);
            yM[i] = graph.OriginYM + (y[order[i]] * graph.UnitM);
        }

        List<int> triangles = [], markers = [];
        bool[] isBoundary = new bool[order.Length];
        double smallestAngle = double.PositiveInfinity;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            if (mesh.Region[t] == Triangulation.None)
            {
                continue;
            }

            markers.Add(mesh.Region[t]);
            if (!isHeldMarker[mesh.Region[t]])
            {
                smallestAngle = Math.Min(smallestAngle, SmallestAngleOf(mesh, t));
            }

            for (int h = 3 * t; h < (3 * t) + 3; h++)
            {
                triangles.Add(place[vertexOfHalfEdge[h]]);
                if (mesh.Twin[h] == Triangulation.None)
                {
                    isBoundary[place[vertexOfHalfEdge[h]]] = true;
                    isBoundary[place[vertexOfHalfEdge[Triangulation.Next(h)]]] = true;
                }
            }
        }

        return new SheetMesh(xM, yM, [.. triangles], [.. markers], isBoundary, smallestAngle * 180 / Math.PI);
    }

    /// <summary>Gives every fan of triangles around a vertex a number of its own.</summary>
    private static (int[] VertexOfHalfEdge, int[] Source) SeparateFans(Triangulation mesh, out int pinches)
    {
        int[] vertexOfHalfEdge = new int[3 * mesh.TriangleCount];
        Array.Fill(vertexOfHalfEdge, Triangulation.None);
        bool[] isSeen = new bool[mesh.VertexCount];
        List<int> source = [];
        pinches = 0;
        for (int start = 0; start < vertexOfHalfEdge.Length; start++)
        {
            if (mesh.Region[start / 3] == Triangulation.None || vertexOfHalfEdge[start] != Triangulation.None)
            {
                continue;
            }

            int vertex = mesh.Origin[start];
            pinches += isSeen[vertex] ? 1 : 0;
            isSeen[vertex] = true;
            NumberFan(mesh, start, source.Count, vertexOfHalfEdge);
            source.Add(vertex);
        }

        return (vertexOfHalfEdge, [.. source]);
    }

    private static void NumberFan(Triangulation mesh, int start, int number, int[] vertexOfHalfEdge)
    {
        int h = start;
        do
        {
            vertexOfHalfEdge[h] = number;
            h = mesh.Twin[Triangulation.Previous(h)];
        }
        while (h != Triangulation.None && h != start);

        for (h = start; mesh.Twin[h] != Triangulation.None;)
        {
            h = Triangulation.Next(mesh.Twin[h]);
            if (h == start)
            {
                return;
            }

            vertexOfHalfEdge[h] = number;
        }
    }

    private static double SmallestAngleOf(Triangulation mesh, int triangle)
    {
        int h = 3 * triangle;
        double l0 = mesh.SquaredLength(h), l1 = mesh.SquaredLength(h + 1), l2 = mesh.SquaredLength(h + 2);
        int a = mesh.Origin[h], b = mesh.Origin[h + 1], c = mesh.Origin[h + 2];
        double cross = ((mesh.X[b] - mesh.X[a]) * (mesh.Y[c] - mesh.Y[a]))
            - ((mesh.Y[b] - mesh.Y[a]) * (mesh.X[c] - mesh.X[a]));

        // The smallest angle is opposite the shortest edge: tan = cross / dot of the two other edges.
        double dot = 0.5 * (l0 + l1 + l2 - (2 * Math.Min(l0, Math.Min(l1, l2))));
        return Math.Atan2(cross, dot);
    }
}
