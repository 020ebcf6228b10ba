namespace CopperPath.LinearAlgebra;

/// <summary>
/// Chooses the order in which the unknowns of a symmetric matrix are eliminated so that the Cholesky factor stays
/// sparse: nested dissection, with minimum degree for the small pieces.
/// </summary>
public static class FillReducingOrdering
{
    /// <summary>
    /// Returns a permutation: entry k is the unknown to be eliminated k-th. It depends on the pattern of the matrix
    /// alone and is the same on every run.
    /// </summary>
    public static int[] Compute(SymmetricSparseMatrix matrix)
    {
        ArgumentNullException.ThrowIfNull(matrix);
        return Compute(AdjacencyGraph.Of(matrix), Environment.ProcessorCount);
    }

    /// <summary>The same for any number of threads.</summary>
    internal static int[] Compute(AdjacencyGraph graph, int threadCount)
    {
        // Unknowns tied to a large part of all others would make every separator large and every degree wrong; they
        // are eliminated last.
        double largestDegree = Math.Max(16, 10 * Math.Sqrt(graph.VertexCount));
        int[] sweep = BreadthFirstSweep(graph, largestDegree, out int denseFrom);
        int[] order = NestedDissection.Order(graph.Renumbered(sweep, denseFrom), threadCount > 1);
        int[] result = new int[graph.VertexCount];
        for (int k = 0; k < order.Length; k++)
        {
            result[k] = sweep[order[k]];
        }

        sweep.AsSpan(denseFrom).CopyTo(result.AsSpan(denseFrom));
        return result;
    }

    /// <summary>
    /// Lists the vertices so that neighbours are near each other, which keeps all later work in the caches however the
    /// caller numbered the unknowns. Vertices of a larger degree than allowed come at the end.
    /// </summary>
    private static int[] BreadthFirstSweep(AdjacencyGraph graph, double largestDegree, out int denseFrom)
    {
        int count = graph.VertexCount;
        int[] sweep = new int[count];
        bool[] isListed = new bool[count];
        denseFrom = count;
        for (int v = count - 1; v >= 0; v--)
        {
            if (graph.Degree(v) > largestDegree)
            {
                isListed[v] = true;
                sweep[--denseFrom] = v;
            }
        }

        int written = 0;
        int read = 0;
        for (int seed = 0; seed < count; seed++)
        {
            if (isListed[seed])
            {
                continue;
            }

            isListed[seed] = true;
            sweep[written++] = seed;
            for (; read < written; read++)
            {
                foreach (int neighbour in graph.NeighboursOf(sweep[read]))
                {
                    if (!isListed[neighbour])
                    {
                        isListed[neighbour] = true;
                        sweep[written++] = neighbour;
                    }
                }
            }
        }

        return sweep;
    }
}
