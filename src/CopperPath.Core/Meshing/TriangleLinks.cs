namespace CopperPath.Meshing;

/// <summary>
/// Which directed edges of a sheet's triangles lie back to back. Edge number 3 t + k runs from corner k of triangle t
/// to its next corner, with the triangle on its left.
/// </summary>
public sealed class TriangleLinks
{
    /// <summary>In place of a twin on the edge of the copper.</summary>
    public const int None = -1;

    private readonly int[] _twin;

    public TriangleLinks(SheetMesh mesh)
    {
        _twin = new int[mesh.Triangles.Length];
        Array.Fill(_twin, None);

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
            int to = mesh.Triangles[Next(edge)];
            for (int i = firstOut[to]; i < firstOut[to + 1]; i++)
            {
                if (mesh.Triangles[Next(edgesOut[i])] == from)
                {
                    _twin[edge] = edgesOut[i];
                }
            }
        }
    }

    /// <summary>The edge that runs back along this one in the neighbouring triangle, or <see cref="None"/>.</summary>
    public int Twin(int edge) => _twin[edge];

    /// <summary>The next edge counter-clockwise around the same triangle.</summary>
    public static int Next(int edge) => edge % 3 == 2 ? edge - 2 : edge + 1;

    /// <summary>The edge before, which ends where this one begins.</summary>
    public static int Previous(int edge) => edge % 3 == 0 ? edge + 2 : edge - 1;
}
