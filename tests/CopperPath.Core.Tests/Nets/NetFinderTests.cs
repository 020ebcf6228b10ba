using CopperPath.Core.Tests.Gallery;
using CopperPath.Nets;

namespace CopperPath.Core.Tests.Nets;

/// <summary>Geometry joins copper, names only label it.</summary>
public sealed class NetFinderTests
{
    [Fact]
    public void PlatedHoleJoinsTheLayersItTouches()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(2, 0, 0, 10, 10).Rectangle(1, 20, 0, 30, 10).PlatedSlot(5, 5, 5, 5, 0.6);
        NetList nets = NetsOf(board);

        nets.Nets.Count.ShouldBe(2);
        nets.Nets[0].Sheets.Select(sheet => sheet.Layer).ShouldBe([1, 2]);
        nets.Nets[0].Barrels.ShouldHaveSingleItem().Layers.ShouldBe([1, 2]);
        nets.PlatedHolesOnAllLayers.ShouldBe(1);
    }

    [Fact]
    public void UnplatedHoleJoinsNothing()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(2, 0, 0, 10, 10).PlatedSlot(5, 5, 5, 5, 0.6);
        board.WriteBrief("  - {}");
        string drill = Path.Combine(board.Folder, "plated.drl");
        File.WriteAllText(drill, File.ReadAllText(drill).Replace("Plated,1,2,PTH", "NonPlated,1,2,NPTH", StringComparison.Ordinal));

        Analysis.Survey(board.Folder).Board.Nets!.Nets.Count.ShouldBe(2);
    }

    [Fact]
    public void HoleLargerThanItsPadTouchesNoCopper()
    {
        using SyntheticBoard board = new(2);
        board.Draw(1, "%ADD10C,0.5*%D10*X5000000Y5000000D03*").Rectangle(2, 0, 0, 10, 10).PlatedSlot(5, 5, 5, 5, 0.6);
        NetList nets = NetsOf(board);

        nets.Nets.Count.ShouldBe(2);
        nets.PlatedHolesOnAllLayers.ShouldBe(0);
    }

    [Fact]
    public void NameComesFromTheObjectsOnTheCopper()
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, "%TO.N,SUPPLY*%").Rectangle(1, 0, 0, 10, 10).Draw(1, "%TD*%").Rectangle(1, 20, 0, 30, 10);
        NetList nets = NetsOf(board);

        nets.Named("SUPPLY").ShouldNotBeNull().NameIsGenerated.ShouldBeFalse();
        nets.Nets.Single(net => net.NameIsGenerated).Name.ShouldBe("L1@20.00,0.00");
    }

    [Fact]
    public void TwoNamesOnOnePieceAreReportedNotSplit()
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, "%TO.N,ONE*%").Rectangle(1, 0, 0, 10, 10).Draw(1, "%TO.N,TWO*%").Rectangle(1, 9, 0, 20, 10).Draw(1, "%TD*%");
        NetList nets = NetsOf(board);

        nets.Nets.ShouldHaveSingleItem();
        nets.Diagnostics.ShouldHaveSingleItem().Found.ShouldBe("one piece of copper claimed by the nets ONE, TWO");
    }

    [Fact]
    public void OneNameOnTwoPiecesIsReportedNotMerged()
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, "%TO.N,ONE*%").Rectangle(1, 0, 0, 10, 10).Rectangle(1, 12, 0, 16, 10).Draw(1, "%TD*%");
        NetList nets = NetsOf(board);

        nets.Nets.Select(net => net.Name).ShouldBe(["ONE", "ONE (piece 2)"]);
        nets.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe("NET003");
    }

    [Fact]
    public void ObjectWithSeveralNamesTiesNetsOnPurpose()
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, "%TO.N,ONE*%").Rectangle(1, 0, 0, 10, 10).Draw(1, "%TO.N,ONE,TWO*%").Rectangle(1, 9, 0, 20, 10).Draw(1, "%TD*%");

        NetsOf(board).Diagnostics.ShouldBeEmpty();
    }

    private static NetList NetsOf(SyntheticBoard board)
    {
        board.WriteBrief("  - {}");
        Board rebuilt = Analysis.Survey(board.Folder).Board;
        // That the board makes no sense as a whole is the cross-check's to say.
        rebuilt.Diagnostics.ShouldNotContain(d => d.Severity == CopperPath.Diagnostics.Severity.Error && !d.Code.StartsWith("SET", StringComparison.Ordinal));
        return rebuilt.Nets.ShouldNotBeNull();
    }
}
