namespace CopperPath.LinearAlgebra;

/// <summary>
/// The undirected graph of a symmetric matrix: one vertex per unknown, one edge (held at both ends) per off-diagonal
/// entry.
/// </summary>
/// <param name="VertexCount">Number of vertices.</param>
/// <param name="Starts">Start of each vertex's neighbours; length VertexCount + 1.</param>
/// <param name="Neighbours">The neighbours of all vertices, one after the other; may be longer than used.</param>
internal sealed record AdjacencyGraph(int VertexCount, int[] Starts, int[] Neighbours)
{
    public ReadOnlySpan<int> NeighboursOf(int vertex) =>
        Neighbours.AsSpan(Starts[vertex], Starts[vertex + 1] - Starts[vertex]);

    public int Degree(int vertex) => Starts[vertex + 1] - Starts[vertex];

    public static AdjacencyGraph Of(SymmetricSparseMatrix matrix)
    {
        int size = matrix.Size;
        int[] starts = new int[size + 1];
        int[] pointers = matrix.ColumnPointers;
        int[] rows = matrix.RowIndices;
        for (int j = 0; j < size; j++)
        {
            for (int k = pointers[j]; k < pointers[j + 1]; k++)
            {
                int i = rows[k];
                if (i != j)
                {
                    starts[i + 1]++;
                    starts[j + 1]++;
                }
            }
        }

        for (int i = 0; i < size; i++)
        {
            starts[i + 1] += starts[i];
        }

        int[] neighbours = new int[starts[size]];
        int[] next = starts.AsSpan(0, size).ToArray();
        for (int j = 0; j < size; j++)
        {
            for (int k = pointers[j]; k < pointers[j + 1]; k++)
            {
                int i = rows[k];
                if (i != j)
                {
                    neighbours[next[i]++] = j;
                    neighbours[next[j]++] = i;
                }
            }
        }

        return new AdjacencyGraph(size, starts, neighbours);
    }

    /// <summary>The graph of the first <paramref name="count"/> vertices of a list, numbered by their place in it.</summary>
    /// <param name="list">Every vertex once.</param>
    /// <param name="count">Vertices to keep.</param>
    public AdjacencyGraph Renumbered(int[] list, int count)
    {
        int[] number = new int[VertexCount];
        for (int k = 0; k < list.Length; k++)
        {
            number[list[k]] = k;
        }

        int[] starts = new int[count + 1];
        int[] neighbours = new int[Neighbours.Length];
        int written = 0;
        for (int k = 0; k < count; k++)
        {
            foreach (int neighbour in NeighboursOf(list[k]))
            {
                if (number[neighbour] < count)
                {
                    neighbours[written++] = number[neighbour];
                }
            }

            starts[k + 1] = written;
        }

        return new AdjacencyGraph(count, starts, neighbours);
    }
}
