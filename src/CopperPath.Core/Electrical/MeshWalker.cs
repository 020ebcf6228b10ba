using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>Walks straight through a mesh from triangle to triangle.</summary>
internal sealed class MeshWalker
{
    private readonly SheetMesh _mesh;

    /// <summary>Triangle across edge k of each triangle (edge k runs from corner k to corner k + 1), or -1.</summary>
    private readonly int[] _across;

    public MeshWalker(SheetMesh mesh)
    {
        _mesh = mesh;
        _across = new int[mesh.Triangles.Length];
        Array.Fill(_across, -1);

        // Edges that leave each vertex, listed one vertex after the other: the edge back along another is found among few.
        int[] firstOut = new int[mesh.VertexCount + 1];
        foreach (int vertex in mesh.Triangles)
        {
            firstOut[vertex + 1]++;
        }

        for (int v = 0; v < mesh.VertexCount; v++)
        {
            firstOut[v + 1] += firstOut[v];
        }

        int[] next = firstOut[..^1];
        int[] edgesOut = new int[mesh.Triangles.Length];
        for (int edge = 0; edge < mesh.Triangles.Length; edge++)
        {
            edgesOut[next[mesh.Triangles[edge]]++] = edge;
        }

        for (int edge = 0; edge < mesh.Triangles.Length; edge++)
        {
            int from = mesh.Triangles[edge];
            int to = mesh.Triangles[Following(edge)];
            for (int i = firstOut[to]; i < firstOut[to + 1]; i++)
            {
                if (mesh.Triangles[Following(edgesOut[i])] == from)
                {
                    _across[edge] = edgesOut[i] / 3;
                }
            }
        }
    }

    public static (double X, double Y) Centroid(SheetMesh mesh, int triangle)
    {
        int a = mesh.Triangles[3 * triangle];
        int b = mesh.Triangles[(3 * triangle) + 1];
        int c = mesh.Triangles[(3 * triangle) + 2];
        return ((mesh.XM[a] + mesh.XM[b] + mesh.XM[c]) / 3, (mesh.YM[a] + mesh.YM[b] + mesh.YM[c]) / 3);
    }

    /// <summary>
    /// Goes from a point inside a triangle along a unit vector until the mesh ends, telling each triangle crossed
    /// and the length of path in it.
    /// </summary>
    /// <returns>The point where the path leaves the mesh.</returns>
    public (double X, double Y) Walk(int triangle, double x, double y, double dx, double dy, Action<int, double> crossed)
    {
        int cameFrom = -1;
        for (int steps = 0; steps <= _mesh.TriangleCount; steps++)
        {
            double exit = double.PositiveInfinity;
            int exitEdge = -1;
            for (int k = 0; k < 3; k++)
            {
                int edge = (3 * triangle) + k;
                if (cameFrom >= 0 && _across[edge] == cameFrom)
                {
                    continue;
                }

                double along = DistanceToEdge(triangle, k, x, y, dx, dy);
                if (along < exit)
                {
                    exit = along;
                    exitEdge = edge;
                }
            }

            if (exitEdge < 0)
            {
                return (x, y);
            }

            exit = Math.Max(0, exit);
            crossed(triangle, exit);
            x += exit * dx;
            y += exit * dy;
            if (_across[exitEdge] < 0)
            {
                return (x, y);
            }

            cameFrom = triangle;
            triangle = _across[exitEdge];
        }

        return (x, y);
    }

    /// <summary>The next edge around the same triangle.</summary>
    private static int Following(int edge) => edge % 3 == 2 ? edge - 2 : edge + 1;

    /// <summary>Distance to the line of an edge the path is running out through; infinite for the others.</summary>
    private double DistanceToEdge(int triangle, int k, double x, double y, double dx, double dy)
    {
        int a = _mesh.Triangles[(3 * triangle) + k];
        int b = _mesh.Triangles[(3 * triangle) + ((k + 1) % 3)];
        double normalX = _mesh.YM[b] - _mesh.YM[a];
        double normalY = _mesh.XM[a] - _mesh.XM[b];
        double approach = (dx * normalX) + (dy * normalY);
        return approach <= 0 ? double.PositiveInfinity
            : (((_mesh.XM[a] - x) * normalX) + ((_mesh.YM[a] - y) * normalY)) / approach;
    }
}
