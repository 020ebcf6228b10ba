namespace CopperPath.Core.Tests.BoardsOpen;

/// <summary>Every real board beside the project is read whole, and docs/boards-read.md says truly how.</summary>
public sealed class BoardsReadTests
{
    /// <summary>Set to 1, the tests write the document before they hold it to the boards.</summary>
    private const string WriteVariable = "COPPERPATH_WRITE_DOCS";

    private const string Hint = $"run this test with {WriteVariable}=1 to write the document anew";

    [Theory]
    [InlineData("bitaxe-ultra", 4)]
    [InlineData("eez-aux-ps", 2)]
    [InlineData("eez-dcp405-r4", 4)]
    [InlineData("esp32-poe-b2", 2)]
    [InlineData("micro-driver-v2", 6)]
    [InlineData("opsis", 10)]
    [InlineData("picopd-v12", 4)]
    [InlineData("simplefoc-powershield", 2)]
    [InlineData("sonata-one-r09", 8)]
    [InlineData("thunderscope-r53", 6)]
    [InlineData("vesc-4", 4)]
    public void BoardIsReadAsTheDocumentSays(string name, int layers)
    {
        Board board = Analysis.Survey(SharedData.Require("boards-open", name)).Board;

        board.Nets.ShouldNotBeNull().Layers.Count.ShouldBe(layers);

        // Nothing in the data of this board says in which order its inner layers lie.
        board.CopperIsUncertain.ShouldBe(name == "opsis", string.Join("\n", board.Diagnostics.Where(d => d.AffectsCopper)));
        board.Nets.PlatedHoleCount.ShouldBeGreaterThan(0);
        board.Nets.PlatedHolesOnAllLayers.ShouldBe(board.Nets.PlatedHoleCount);

        string row = BoardsReadDocument.HoleRow(name, board);
        string section = BoardsReadDocument.Section(name, board);
        if (Environment.GetEnvironmentVariable(WriteVariable) == "1")
        {
            BoardsReadDocument.Replace(name, row, section);
        }

        BoardsReadDocument.Text.ShouldContain(row + "\n", customMessage: Hint);
        BoardsReadDocument.Text.ShouldContain(section.TrimEnd('\n'), customMessage: Hint);
    }
}
