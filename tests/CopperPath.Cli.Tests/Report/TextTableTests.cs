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

    [Fact]
    public void CellsAreMadeVisibleBeforeTheyAreMeasuredAndCut()
    {
        TextTable table = new(["Name", "Current"], [false, true]);
        table.Add(["a\u001b[2J\nb", "1 A"]);
        table.Add([new string('x', 100_000), "2 A"]);
        table.Add(["seven\U0001F600\U0001F600\U0001F600\U0001F600\U0001F600", "3 A"]);
        using StringWriter writer = new();
        table.Write(writer, 24);

        string[] lines = writer.ToString().TrimEnd().Split(writer.NewLine);
        lines.Length.ShouldBe(5);
        lines[2].ShouldStartWith("a\\u{1B}");
        lines.ShouldAllBe(line => line.Length <= 24);
        lines[4].ShouldNotContain(line => char.IsHighSurrogate(line) && !lines[4].Contains($"{line}\uDE00", StringComparison.Ordinal));
    }

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
