namespace CopperPath.Core.Tests.BoardsOpen;

/// <summary>Every real board beside the project is surveyed without an unhandled error, and its copper is found.</summary>
public sealed class SurveyTests
{
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
    public void BoardIsRebuilt(string name, int layers)
    {
        Board board = Analysis.Survey(SharedData.Require("boards-open", name)).Board;

        board.Nets.ShouldNotBeNull().Layers.Count.ShouldBe(layers);
        // Nothing in the data of this board says in which order its inner layers lie.
        board.CopperIsUncertain.ShouldBe(name == "opsis", string.Join("\n", board.Diagnostics.Where(d => d.AffectsCopper)));
        board.Nets.PlatedHoleCount.ShouldBeGreaterThan(0);
        ((double)board.Nets.PlatedHolesOnAllLayers / board.Nets.PlatedHoleCount).ShouldBeGreaterThan(0.95);
    }
}
