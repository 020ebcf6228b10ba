using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

public sealed class EliminationTreeTests
{
    [Theory]
    [MemberData(nameof(MatrixGallery.Names), MemberType = typeof(MatrixGallery))]
    public void ParentsAndCountsAgreeWithEliminationPlayedOut(string name)
    {
        AdjacencyGraph graph = AdjacencyGraph.Of(MatrixGallery.Named(name));
        SupernodalStructure structure = SupernodalStructure.Analyze(graph, FillReducingOrdering.Compute(graph, 1));

        SortedSet<int>[] patterns = ReferenceElimination.ColumnPatterns(graph, structure.Order);
        AdjacencyGraph eliminated = graph.Renumbered(structure.Order, graph.VertexCount);
        int[] parents = EliminationTree.Parents(eliminated);
        int[] counts = EliminationTree.ColumnCounts(eliminated, parents);

        parents.ShouldBe(patterns.Select(pattern => pattern.Count == 0 ? -1 : pattern.Min));
        counts.ShouldBe(patterns.Select(pattern => pattern.Count + 1));
    }

    [Theory]
    [MemberData(nameof(MatrixGallery.Names), MemberType = typeof(MatrixGallery))]
    public void EverySupernodeCoversThePatternOfItsColumns(string name)
    {
        AdjacencyGraph graph = AdjacencyGraph.Of(MatrixGallery.Named(name));
        SupernodalStructure structure = SupernodalStructure.Analyze(graph, FillReducingOrdering.Compute(graph, 1));
        SortedSet<int>[] patterns = ReferenceElimination.ColumnPatterns(graph, structure.Order);

        for (int s = 0; s < structure.Count; s++)
        {
            int[] rows = structure.RowsOf(s).ToArray();
            rows.ShouldBe(rows.Distinct().Order());
            rows[..structure.ColumnCount(s)].ShouldBe(
                Enumerable.Range(structure.ColumnStarts[s], structure.ColumnCount(s)));
            for (int j = structure.ColumnStarts[s]; j < structure.ColumnStarts[s + 1]; j++)
            {
                patterns[j].IsSubsetOf(rows).ShouldBeTrue();
            }

            int last = structure.ColumnStarts[s + 1] - 1;
            rows[structure.ColumnCount(s)..].ShouldBe(patterns[last]);
        }
    }
}
