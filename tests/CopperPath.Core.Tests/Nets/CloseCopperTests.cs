using CopperPath.Core.Tests.Gallery;
using CopperPath.Diagnostics;
using CopperPath.Nets;

namespace CopperPath.Core.Tests.Nets;

/// <summary>
/// Copper that touches at a point, or nearly meets, is told of and never joined. The limit of 0.05 mm is common practice,
/// no source.
/// </summary>
public sealed class CloseCopperTests
{
    [Fact]
    public void CornersThatTouchLeaveTheCopperInDoubt()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(1, 10, 10, 20, 20);
        NetList nets = NetsOf(board);

        nets.Nets.Count.ShouldBe(2);
        Diagnostic told = nets.Diagnostics.ShouldHaveSingleItem();
        told.Code.ShouldBe("NET007");
        told.Severity.ShouldBe(Severity.Warning);
        told.AffectsCopper.ShouldBeTrue();
        told.Found.ShouldBe("the nets L1@0.00,0.00 and L1@10.00,10.00 touch at a point only, at 10, 10 mm");
    }

    [Fact]
    public void GapThatEtchingMayCloseIsTold()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(1, 10.03, 0, 20, 10);
        NetList nets = NetsOf(board);

        nets.Nets.Count.ShouldBe(2);
        Diagnostic told = nets.Diagnostics.ShouldHaveSingleItem();
        told.AffectsCopper.ShouldBeFalse();
        told.Found.ShouldEndWith("are 0.0300 mm apart, at 10, 0 mm");
    }

    [Fact]
    public void GapThatFabricationKeepsIsNotTold()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(1, 10.05, 0, 20, 10);

        NetsOf(board).Diagnostics.ShouldBeEmpty();
    }

    [Fact]
    public void PiecesOfOneNetAreTakenTogetherInOneNote()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(1, 10, 10, 20, 20).Rectangle(2, 0, 0, 20, 20)
            .PlatedSlot(5, 5, 5, 5, 0.6).PlatedSlot(15, 15, 15, 15, 0.6);
        NetList nets = NetsOf(board);

        nets.Nets.ShouldHaveSingleItem();
        Diagnostic told = nets.Diagnostics.ShouldHaveSingleItem();
        told.Code.ShouldBe("NET008");
        told.Severity.ShouldBe(Severity.Note);
        told.Found.ShouldBe("1 pair of pieces of one net so near that they may join here too; "
            + "nearest are two of L1@0.00,0.00, which touch at a point only, at 10, 10 mm");
    }

    private static NetList NetsOf(SyntheticBoard board)
    {
        board.WriteBrief("  - {}");
        return Analysis.Survey(board.Folder).Board.Nets.ShouldNotBeNull();
    }
}
