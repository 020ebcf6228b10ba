using CopperPath.Core.Tests.Gallery;
using CopperPath.Diagnostics;
using CopperPath.Nets;

namespace CopperPath.Core.Tests.Nets;

/// <summary>Boards drawn by hand with a netlist beside them: what it names, and what it finds wrong.</summary>
public sealed class NetlistCheckTests
{
    [Fact]
    public void NetlistNamesNetsThatTheArtworkLeavesWithout()
    {
        using SyntheticBoard board = TwoPieces();
        NetList nets = NetsOf(board, new NetlistText().Pad("SUPPLY", 1, 5, 5).Pad("SUPPLY", 1, 6, 5).Pad("GND", 1, 25, 5));

        nets.Nets.Select(net => (net.Name, net.NameIsGenerated)).ShouldBe([("SUPPLY", false), ("GND", false)], ignoreOrder: true);
        nets.Diagnostics.ShouldBeEmpty();
        nets.Netlist.ShouldNotBeNull().ToString().ShouldBe(
            "board.ipc: 3 of 3 points on copper; 2 of 2 names agree with the copper (0 nets bear several names, 0 names are on several nets); "
            + "2 nets and 0 pads named by it; 0 nets named otherwise in the artwork");
    }

    [Fact]
    public void NamesOfTheArtworkStandAndDifferencesAreSaid()
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, "%TO.N,ONE*%").Rectangle(1, 0, 0, 10, 10).Draw(1, "%TO.N,A_NAME_OF_MANY_LETTERS*%").Rectangle(1, 20, 0, 30, 10).Draw(1, "%TD*%");
        NetList nets = NetsOf(board, new NetlistText().Pad("UNO", 1, 5, 5).Pad("A_NAME_OF_MANY", 1, 25, 5));

        nets.Named("ONE").ShouldNotBeNull();
        nets.Named("A_NAME_OF_MANY_LETTERS").ShouldNotBeNull();
        nets.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "board.ipc:2:1: warning NET014: found the net name UNO at 5, 5 mm on layer 1, where the artwork says ONE; expected one name in both; the artwork's stands");
        nets.Netlist.ShouldNotBeNull().NamesUnlikeArtwork.ShouldBe(1);
    }

    [Fact]
    public void TwoNamesOnOneConductorAreReportedWithTheirPlaces()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(2, 0, 0, 30, 10).PlatedSlot(5, 5, 5, 5, 0.6);
        NetList nets = NetsOf(board, new NetlistText().Pad("A", 1, 1, 1).Pad("A", 1, 2, 1).Pad("B", 2, 25, 5));

        nets.Diagnostics[0].ToString().ShouldBe(
            "board.ipc:4:1: warning NET010: found one piece of rebuilt copper for 2 nets of the netlist: A (2 points, the first at 1, 1 mm on layer 1), "
            + "B (1 points, the first at 25, 5 mm on layer 2); expected one conductor per name: a short in the artwork, nets tied on purpose, or copper misread");
        nets.Nets.ShouldHaveSingleItem().Name.ShouldBe("A");
        nets.Netlist.ShouldNotBeNull().MergedNets.ShouldBe(1);
    }

    [Fact]
    public void OneNameOnTwoConductorsIsReportedWithItsPlaces()
    {
        using SyntheticBoard board = TwoPieces();
        NetList nets = NetsOf(board, new NetlistText().Pad("A", 1, 5, 5).Pad("A", 1, 25, 5));

        nets.Diagnostics[0].ToString().ShouldBe(
            "board.ipc:3:1: warning NET011: found 2 pieces of rebuilt copper for the net A of the netlist: at 5, 5 mm on layer 1, at 25, 5 mm on layer 1; "
            + "expected one conductor per name: an open in the artwork, parts joined by a component, or a hole misread");
        nets.Nets.Select(net => net.Name).ShouldBe(["A", "A (piece 2)"]);
        nets.Netlist.ShouldNotBeNull().SplitNames.ShouldBe(1);
    }

    [Fact]
    public void PointsOffTheCopperAreCounted()
    {
        using SyntheticBoard board = TwoPieces();
        NetList nets = NetsOf(board, new NetlistText().Pad("A", 1, 5, 5).Pad("B", 1, 25, 5).Pad("A", 1, 15, 5).Pad("A", 2, 5, 5));

        nets.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "board.ipc:4:1: warning NET012: found 2 of 4 points on no copper, the first at 15, 5 mm on layer 1; expected every point on copper");
    }

    [Fact]
    public void UnconnectedPointOnANetIsReported()
    {
        using SyntheticBoard board = TwoPieces();
        NetList nets = NetsOf(board, new NetlistText().Pad("A", 1, 5, 5).Pad("N/C", 1, 6, 6).Pad("N/C", 1, 25, 5));

        nets.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "board.ipc:3:1: warning NET013: found a point at 6, 6 mm on layer 1 that the netlist calls unconnected, on the copper of net A; expected copper of its own at an unconnected pin");
    }

    [Fact]
    public void CopperThatMostNamesContradictNeverPasses()
    {
        using SyntheticBoard board = TwoPieces();
        NetList nets = NetsOf(board, new NetlistText().Pad("A", 1, 5, 5).Pad("B", 1, 6, 6).Pad("C", 1, 25, 5));

        Diagnostic verdict = nets.Diagnostics.Single(d => d.Code == "NET015");
        verdict.Found.ShouldBe("only 1 of 3 net names in agreement with the rebuilt copper");
        verdict.AffectsCopper.ShouldBeTrue();
    }

    [Fact]
    public void NetlistOfAnotherBoardNamesNothing()
    {
        using SyntheticBoard board = TwoPieces();
        NetList nets = NetsOf(board, new NetlistText().Pad("A", 1, 5, 5).Pad("B", 1, 105, 5).Pad("C", 1, 125, 5));

        nets.Nets.ShouldAllBe(net => net.NameIsGenerated);
        nets.Diagnostics.Select(d => d.Code).ShouldBe(["NET012", "NET015"]);
    }

    [Fact]
    public void FindingsOfAKindAreListedUpToALimitAndCounted()
    {
        using SyntheticBoard board = new(1);
        NetlistText netlist = new();
        for (int i = 0; i < 14; i++)
        {
            board.Rectangle(1, 3 * i, 0, (3 * i) + 1, 1).Rectangle(1, 3 * i, 2, (3 * i) + 1, 3);
            netlist.Pad($"N{i}", 1, (3 * i) + 0.5, 0.5).Pad($"N{i}", 1, (3 * i) + 0.5, 2.5);
        }

        Diagnostic[] split = [.. NetsOf(board, netlist).Diagnostics.Where(d => d.Code == "NET011")];

        split.Length.ShouldBe(11);
        split[^1].Found.ShouldBe("14 nets of the netlist on several pieces of rebuilt copper, of which 10 are listed");
    }

    [Fact]
    public void OtherOriginIsFoundFromTheHoles()
    {
        using SyntheticBoard board = new(2);
        NetlistText netlist = new();
        (double X, double Y)[] places = [(1, 1), (4, 2), (9, 3.5), (2, 7), (6.3, 8.1)];
        foreach ((double x, double y) in places)
        {
            board.Rectangle(1, x - 0.5, y - 0.5, x + 0.5, y + 0.5).Rectangle(2, x - 0.5, y - 0.5, x + 0.5, y + 0.5).PlatedSlot(x, y, x, y, 0.3);
            netlist.Hole($"N{x:0}", x - 25.4, y + 101.6, 300);
        }

        NetList nets = NetsOf(board, netlist);

        nets.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "board.ipc: warning NET016: found coordinates from another origin; moved by 25.4, -101.6 mm, which brings its holes onto the drilled ones; expected the origin of the artwork");
        nets.Nets.Select(net => net.Name).Order(StringComparer.Ordinal).ShouldBe(["N1", "N2", "N4", "N6", "N9"]);
    }

    [Fact]
    public void HoleWithoutWallIsNamedByTheCopperAtItsEdge()
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, "%ADD10C,4X2*%D10*X5000000Y5000000D03*");
        NetList nets = NetsOf(board, new NetlistText().Hole("RING", 5, 5, 2000));

        nets.Nets.ShouldHaveSingleItem().Name.ShouldBe("RING");
    }

    [Theory]
    [InlineData('P', 1)]
    [InlineData('U', 2)]
    public void PlatingOfTheNetlistServesFilesThatDoNotStateIt(char flag, int conductors)
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(2, 0, 0, 10, 10).PlatedSlot(5, 5, 5, 5, 0.6);
        NetList nets = NetsOf(board, new NetlistText().Hole("A", 5, 5, 600, flag), MakeUnstated);

        nets.Nets.Count.ShouldBe(conductors);
        nets.Holes.ShouldHaveSingleItem().IsInferred.ShouldBeFalse();
        nets.Diagnostics.Single(d => d.Code == "NET005").Found.ShouldBe("the plating of 1 holes that their drill file does not state");
    }

    [Fact]
    public void PlatingThatContradictsTheDrillFileIsReported()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(2, 0, 0, 10, 10).PlatedSlot(5, 5, 5, 5, 0.6);
        NetList nets = NetsOf(board, new NetlistText().Hole("A", 5, 5, 600, 'U'));

        Diagnostic contradiction = nets.Diagnostics.Single(d => d.Code == "NET006");
        contradiction.Found.ShouldBe("1 holes whose plating the drill file states otherwise, the first at plated.drl:6:1");
        contradiction.AffectsCopper.ShouldBeTrue();
        nets.Nets.ShouldHaveSingleItem();
    }

    [Fact]
    public void PadsTakeTheirPinsFromTheNetlist()
    {
        using SyntheticBoard board = new(2);
        board.Draw(1, "%ADD10R,1X1*%D10*X5000000Y5000000D03*").Draw(2, "%ADD10R,1X1*%D10*X5000000Y5000000D03*");
        NetList nets = NetsOf(board, new NetlistText().Pad("A", 1, 5, 5, "U12.A4").Pad("B", 2, 5, 5, "VIA.1"));

        nets.Named("A")!.Pads.ShouldHaveSingleItem().Pin!.Text.ShouldBe("U12.A4");
        nets.Named("B")!.Pads.ShouldHaveSingleItem().Pin.ShouldBeNull();
        nets.Netlist!.PinsNamed.ShouldBe(1);
    }

    [Fact]
    public void SecondNetlistIsSetAsideAndSaidSo()
    {
        using SyntheticBoard board = TwoPieces();
        board.WriteBrief("  - {}");
        new NetlistText().Pad("A", 1, 5, 5).WriteTo(board.Folder);
        new NetlistText().Pad("Z", 1, 5, 5).WriteTo(board.Folder, "second.ipc");

        Board rebuilt = Analysis.Survey(board.Folder).Board;

        rebuilt.Nets!.Named("A").ShouldNotBeNull();
        rebuilt.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "second.ipc: warning NTL010: found a second netlist; expected one netlist for a board; board.ipc is used");
    }

    private static SyntheticBoard TwoPieces() => new SyntheticBoard(1).Rectangle(1, 0, 0, 10, 10).Rectangle(1, 20, 0, 30, 10);

    private static void MakeUnstated(string folder)
    {
        string drill = Path.Combine(folder, "plated.drl");
        File.WriteAllText(drill, File.ReadAllText(drill).Replace("; #@! TF.FileFunction,Plated,1,2,PTH\n", "", StringComparison.Ordinal));
        File.Move(drill, Path.Combine(folder, "holes.drl"));
    }

    private static NetList NetsOf(SyntheticBoard board, NetlistText netlist, Action<string>? change = null)
    {
        board.WriteBrief("  - {}");
        netlist.WriteTo(board.Folder);
        change?.Invoke(board.Folder);
        Board rebuilt = Analysis.Survey(board.Folder).Board;
        // That so small a board makes no sense as a whole is the cross-check's to say.
        rebuilt.Diagnostics.ShouldNotContain(d => d.Severity == Severity.Error && !d.Code.StartsWith("SET", StringComparison.Ordinal));
        return rebuilt.Nets.ShouldNotBeNull();
    }
}
