using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

/// <summary>
/// Elimination played out on sets, straight from the definition: eliminating a vertex joins its remaining neighbours.
/// Each vertex hands its set to the lowest-ordered member, which is enough to know every column's pattern.
/// </summary>
internal static class ReferenceElimination
{
    public static SortedSet<int>[] ColumnPatterns(AdjacencyGraph graph, int[] order)
    {
        int size = graph.VertexCount;
        int[] position = new int[size];
        for (int k = 0; k < size; k++)
        {
            position[order[k]] = k;
        }

        SortedSet<int>[] patterns = new SortedSet<int>[size];
        for (int k = 0; k < size; k++)
        {
            patterns[k] = [];
            foreach (int neighbour in graph.NeighboursOf(order[k]))
            {
                if (position[neighbour] > k)
                {
                    patterns[k].Add(position[neighbour]);
                }
            }
        }

        for (int k = 0; k < size; k++)
        {
            if (patterns[k].Count > 0)
            {
                int heir = patterns[k].Min;
                patterns[heir].UnionWith(patterns[k]);
                patterns[heir].Remove(heir);
            }
        }

        return patterns;
    }

    public static long EntriesOfFactor(AdjacencyGraph graph, int[] order) =>
        ColumnPatterns(graph, order).Sum(pattern => 1L + pattern.Count);
}
