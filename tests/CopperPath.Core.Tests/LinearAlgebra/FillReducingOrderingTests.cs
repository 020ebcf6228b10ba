using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

public sealed class FillReducingOrderingTests
{
    [Theory]
    [MemberData(nameof(MatrixGallery.Names), MemberType = typeof(MatrixGallery))]
    public void EveryUnknownIsEliminatedOnce(string name)
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named(name);

        int[] order = FillReducingOrdering.Compute(matrix);

        order.Order().ShouldBe(Enumerable.Range(0, matrix.Size));
    }

    [Theory]
    [MemberData(nameof(MatrixGallery.Names), MemberType = typeof(MatrixGallery))]
    public void TheOrderIsTheSameForAnyNumberOfThreads(string name)
    {
        AdjacencyGraph graph = AdjacencyGraph.Of(MatrixGallery.Named(name));

        FillReducingOrdering.Compute(graph, 4).ShouldBe(FillReducingOrdering.Compute(graph, 1));
    }

    [Theory]
    [MemberData(nameof(MatrixGallery.Names), MemberType = typeof(MatrixGallery))]
    public void DissectionDownToSmallPiecesIsAPermutationAndTheSameForAnyNumberOfThreads(string name)
    {
        AdjacencyGraph graph = AdjacencyGraph.Of(MatrixGallery.Named(name));

        int[] order = NestedDissection.Order(graph, isParallel: false, leafSize: 20);

        order.Order().ShouldBe(Enumerable.Range(0, graph.VertexCount));
        NestedDissection.Order(graph, isParallel: true, leafSize: 20).ShouldBe(order);
    }

    [Fact]
    public void ASmallTreeIsOrderedWithoutAnyFill()
    {
        // A matrix whose graph is a tree has a perfect elimination order, which minimum degree finds (George and Liu
        // 1981, chapter 5). Trees too large for one leaf of the dissection may fill a little.
        Random random = new(18);
        SparseMatrixBuilder builder = new(900);
        builder.Add(0, 0, 1);
        for (int i = 1; i < 900; i++)
        {
            builder.AddBranch(i, random.Next(i), 1);
        }

        SymmetricSparseMatrix matrix = builder.Build();

        EntriesOfFactor(matrix).ShouldBe(matrix.NonZeroCount);
    }

    [Fact]
    public void ADenselyTiedUnknownIsEliminatedLast()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Star(5000);

        EntriesOfFactor(matrix).ShouldBe(matrix.NonZeroCount);
    }

    [Fact]
    public void TheFillOfASquareGridIsThatOfNestedDissection()
    {
        // George, "Nested dissection of a regular finite element mesh" (1973): for an n × n grid the factor holds
        // 31/4 n² log2 n entries to leading order (nine-point grid; the lower-order terms are negative, so a good
        // order of the five-point grid stays below half of that). The band order holds n³.
        const int n = 200;

        long entries = EntriesOfFactor(MatrixGallery.Poisson2D(n, n));

        ((double)entries).ShouldBeLessThan(31.0 / 8 * n * n * Math.Log2(n));
    }

    /// <summary>Entries of the factor, counted column by column without any merging of supernodes.</summary>
    private static long EntriesOfFactor(SymmetricSparseMatrix matrix)
    {
        AdjacencyGraph graph = AdjacencyGraph.Of(matrix);
        int[] order = FillReducingOrdering.Compute(graph, 2);
        return ReferenceElimination.EntriesOfFactor(graph, order);
    }
}
