namespace CopperPath.LinearAlgebra;

/// <summary>
/// Chooses the order in which the unknowns of a symmetric matrix are eliminated so that the Cholesky factor stays
/// sparse.
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

    internal static int[] Compute(AdjacencyGraph graph, int threadCount)
    {
        int[] order = new int[graph.VertexCount];
        MinimumDegree.Order(graph.Starts, graph.Neighbours, graph.VertexCount, graph.VertexCount, order);
        return order;
    }
}
