using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

public sealed class SparseMatrixBuilderTests
{
    [Fact]
    public void ContributionsOfBothTrianglesAreSummedIntoTheLowerOne()
    {
        SparseMatrixBuilder builder = new(3);
        builder.Add(2, 0, 1.5);
        builder.Add(0, 2, 2);
        builder.Add(1, 1, 4);
        builder.Add(0, 0, 3);

        SymmetricSparseMatrix matrix = builder.Build();

        matrix.ColumnPointers.ShouldBe([0, 2, 3, 3]);
        matrix.RowIndices.ShouldBe([0, 2, 1]);
        matrix.Values.ShouldBe([3, 3.5, 4]);
    }

    [Fact]
    public void ContributionsAreSummedInTheOrderOfArrival()
    {
        // 1 + 1e16 − 1e16 is 0 from left to right but 1e16 − 1e16 + 1 is 1 (IEEE 754 double precision).
        SparseMatrixBuilder smallFirst = new(1);
        smallFirst.Add(0, 0, 1);
        smallFirst.Add(0, 0, 1e16);
        smallFirst.Add(0, 0, -1e16);
        SparseMatrixBuilder smallLast = new(1);
        smallLast.Add(0, 0, 1e16);
        smallLast.Add(0, 0, -1e16);
        smallLast.Add(0, 0, 1);

        smallFirst.Build().Values.ShouldBe([0]);
        smallLast.Build().Values.ShouldBe([1]);
    }

    [Fact]
    public void RowsAscendWithinEveryColumn()
    {
        SymmetricSparseMatrix matrix = MatrixGallery.RandomDominant(200, 8, 21);

        for (int j = 0; j < matrix.Size; j++)
        {
            int[] rows = matrix.RowIndices[matrix.ColumnPointers[j]..matrix.ColumnPointers[j + 1]];
            rows[0].ShouldBe(j);
            rows.ShouldBe(rows.Distinct().Order());
        }
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, 3)]
    public void AnIndexOutsideTheMatrixIsRefused(int row, int column)
    {
        SparseMatrixBuilder builder = new(3);

        Should.Throw<ArgumentOutOfRangeException>(() => builder.Add(row, column, 1));
    }
}
