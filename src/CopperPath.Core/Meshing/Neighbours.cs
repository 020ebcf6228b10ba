namespace CopperPath.Meshing;

/// <summary>The vertices joined to each vertex of a triangulation, listed once for all.</summary>
internal sealed class Neighbours
{
    private readonly int[] _first;
    private readonly int[] _neighbours;

    public Neighbours(Triangulation mesh)
    {
        _first = new int[mesh.VertexCount + 1];
        for (int h = 0; h < 3 * mesh.TriangleCount; h++)
        {
            if (mesh.Region[h / 3] != Triangulation.None)
            {
                _first[mesh.Origin[h] + 1]++;
                _first[mesh.Destination(h) + 1] += mesh.Twin[h] == Triangulation.None ? 1 : 0;
            }
        }

        for (int v = 0; v < mesh.VertexCount; v++)
        {
            _first[v + 1] += _first[v];
        }

        int[] next = _first[..^1];
        _neighbours = new int[_first[^1]];
        for (int h = 0; h < 3 * mesh.TriangleCount; h++)
        {
            if (mesh.Region[h / 3] == Triangulation.None)
            {
                continue;
            }

            int a = mesh.Origin[h], b = mesh.Destination(h);
            _neighbours[next[a]++] = b;
            if (mesh.Twin[h] == Triangulation.None)
            {
                _neighbours[next[b]++] = a;
            }
        }
    }

    public ReadOnlySpan<int> Of(int vertex) =>
        _neighbours.AsSpan(_first[vertex], _first[vertex + 1] - _first[vertex]);
}
