using CopperPath.Cli.Report;

namespace CopperPath.Cli.Tests.Report;

public sealed class TextTableTests
{
    private static readonly TextTable s_table = Filled();

    [Fact]
    public void LinesFitTheWindowAndNumbersStayWhole()
    {
        string[] lines = Written(width: 40);

        lines.ShouldAllBe(line => line.Length <= 40);
        lines.ShouldContain(line => line.Contains("...", StringComparison.Ordinal) && line.EndsWith("24.9 A", StringComparison.Ordinal));
    }

    [Fact]
    public void NothingIsCutWhereNobodyWatches() =>
        Written(width: null).ShouldContain(line => line.Contains("switched current of the phases (RMS)", StringComparison.Ordinal));

    [Fact]
    public void AVeryNarrowWindowStillShowsSomeOfTheText() =>
        Written(width: 5)[2].ShouldStartWith("12 V, swi...");

    private static string[] Written(int? width)
    {
        using StringWriter writer = new();
        s_table.Write(writer, width);
        return writer.ToString().TrimEnd().Split(writer.NewLine);
    }

    private static TextTable Filled()
    {
        TextTable table = new(["Stretch of copper", "Current"], [false, true]);
        table.Add(["12 V, switched current of the phases (RMS)", "24.9 A"]);
        return table;
    }
}
