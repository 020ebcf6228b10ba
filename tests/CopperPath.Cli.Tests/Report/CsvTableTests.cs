using System.Text;
using CopperPath.Cli.Report.Tables;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Report;

/// <summary>A text in a table is text in any spreadsheet; a number stays a number. Common practice against formulas in tables, no source.</summary>
public sealed class CsvTableTests
{
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+12V", "'+12V")]
    [InlineData("-VIN", "'-VIN")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData(" =1", "' =1")]
    [InlineData("\uFF1D1", "'\uFF1D1")]
    [InlineData("=A,B", "\"'=A,B\"")]
    [InlineData("\t=1", "\\u{9}=1")]
    [InlineData("a\r\n=1", "a\\u{D}\\u{A}=1")]
    [InlineData("-12.5", "-12.5")]
    [InlineData("+3e-6", "+3e-6")]
    [InlineData("VOUT", "VOUT")]
    public void FormulasAreDefused(string text, string cell) => CellOf(text).ShouldBe(cell);

    [Fact]
    public void NumbersStayNumbersAndWhatIsNoneIsEmpty()
    {
        CellOf(-1.5).ShouldBe("-1.5");
        CellOf(-3).ShouldBe("-3");
        CellOf(double.NaN).ShouldBe("");
        CellOf(double.PositiveInfinity).ShouldBe("");
        CellOf(null).ShouldBe("");
    }

    [Fact]
    public void NoNameBeginsAFormulaOrALine()
    {
        foreach (string name in HostileText.Names(seed: 7, count: 1_000, withHalfPairs: true))
        {
            string cell = CellOf(name);
            HostileText.ActingIn(cell).ShouldBeEmpty();
            cell.TrimStart('"', ' ', '\u00a0').ShouldNotMatch("^[=@]|^[+-](?![0-9.]+$)");
        }
    }

    private static string CellOf(object? value)
    {
        CsvTable table = new("value");
        table.Add(value);
        return Encoding.UTF8.GetString(table.ToBytes())["value\r\n".Length..^2];
    }
}
