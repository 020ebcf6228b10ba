using CopperPath.Core.Tests.LinearAlgebra.Gallery;
using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra;

public sealed class MatrixMarketTests
{
    private const string Header = "%%MatrixMarket matrix coordinate real symmetric\n";

    [Theory]
    [MemberData(nameof(MatrixGallery.Names), MemberType = typeof(MatrixGallery))]
    public void EveryMatrixComesBackBitByBit(string name)
    {
        SymmetricSparseMatrix matrix = MatrixGallery.Named(name);
        StringWriter writer = new();

        MatrixMarket.Write(writer, matrix);
        MatrixMarketResult result = MatrixMarket.Read(new StringReader(writer.ToString()), "m.mtx");

        result.Diagnostics.ShouldBeEmpty();
        result.Matrix.ShouldNotBeNull().Size.ShouldBe(matrix.Size);
        result.Matrix.ColumnPointers.ShouldBe(matrix.ColumnPointers);
        result.Matrix.RowIndices.ShouldBe(matrix.RowIndices);
        result.Matrix.Values.ShouldBe(matrix.Values);
    }

    [Fact]
    public void AFileInTheFormOfTheSpecificationIsRead()
    {
        // Layout after NISTIR 5935: comments follow the header, indices count from 1, the lower triangle is stated.
        const string text = """
            %%MatrixMarket matrix coordinate real symmetric
            % a comment

            3 3 4
            1 1  2.0
            2 1 -1.5e0
            2 2  4
            3 3  1E-3
            """;

        SymmetricSparseMatrix matrix = MatrixMarket.Read(new StringReader(text), "m.mtx").Matrix.ShouldNotBeNull();

        matrix.ColumnPointers.ShouldBe([0, 2, 3, 4]);
        matrix.RowIndices.ShouldBe([0, 1, 1, 2]);
        matrix.Values.ShouldBe([2, -1.5, 4, 0.001]);
    }

    [Theory]
    [InlineData("", "MTX001", 1)]
    [InlineData("%%MatrixMarket matrix coordinate real general\n1 1 1\n1 1 1\n", "MTX001", 1)]
    [InlineData(Header + "3 3\n", "MTX002", 2)]
    [InlineData(Header, "MTX002", 2)]
    [InlineData(Header + "3 4 1\n1 1 1\n", "MTX003", 2)]
    [InlineData(Header + "2 2 2\n1 1 1\n2 2 1,5\n", "MTX004", 4)]
    [InlineData(Header + "2 2 2\n1 1 1\n", "MTX004", 4)]
    [InlineData(Header + "2 2 1\n1 2 1\n", "MTX005", 3)]
    [InlineData(Header + "2 2 1\n3 1 1\n", "MTX005", 3)]
    [InlineData(Header + "2 2 1\n0 0 1\n", "MTX005", 3)]
    [InlineData(Header + "2 2 1\n1 1 1\n2 2 1\n", "MTX006", 4)]
    [InlineData(Header + "2 2 2\n1 1 1\n1 1 1\n", "MTX007", 0)]
    public void AFaultIsReportedWithItsLine(string text, string code, int line)
    {
        MatrixMarketResult result = MatrixMarket.Read(new StringReader(text), "m.mtx");

        result.Matrix.ShouldBeNull();
        result.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(code);
        result.Diagnostics[0].Position.Line.ShouldBe(line);
    }
}
