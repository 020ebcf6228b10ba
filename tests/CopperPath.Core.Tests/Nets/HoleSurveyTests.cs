using CopperPath.Artwork;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Diagnostics;
using CopperPath.Nets;

namespace CopperPath.Core.Tests.Nets;

/// <summary>Holes with and without a statement of plating, on boards of two layers.</summary>
public sealed class HoleSurveyTests
{
    private const string LandOfEqualSize = "%ADD10C,1*%D10*X5000000Y5000000D03*";

    [Fact]
    public void UnstatedHoleInCopperOnBothFacesIsTakenAsPlatedAndSaidSo()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(2, 0, 0, 10, 10).PlatedSlot(5, 5, 5, 5, 1);
        Board rebuilt = Rebuilt(board);

        HoleLanding hole = rebuilt.Nets!.Holes.ShouldHaveSingleItem();
        (hole.IsPlated, hole.IsInferred, hole.IsSound, hole.OnlyCuts).ShouldBe((true, true, true, false));
        rebuilt.Assumptions.ShouldBe(["holes.drl: plating is not stated; 1 holes taken as plated, 0 as unplated and cut from the copper"]);
        BoardRebuilder.UnplatedCuts(rebuilt).ShouldBeEmpty();
    }

    [Fact]
    public void UnstatedHoleAsLargeAsItsLandIsCutFromTheCopper()
    {
        using SyntheticBoard board = new(2);
        board.Draw(1, LandOfEqualSize).Draw(2, LandOfEqualSize).Rectangle(1, 20, 0, 30, 10).PlatedSlot(5, 5, 5, 5, 1);
        Board rebuilt = Rebuilt(board);

        HoleLanding hole = rebuilt.Nets!.Holes.ShouldHaveSingleItem();
        (hole.IsPlated, hole.IsInferred, hole.OnlyCuts).ShouldBe((false, true, true));
        BoardRebuilder.UnplatedCuts(rebuilt).ShouldHaveSingleItem().Path[0].X.ShouldBe(5_000_000);
        rebuilt.Assumptions.ShouldHaveSingleItem().ShouldContain("0 holes taken as plated, 1 as unplated and cut from the copper");
        rebuilt.CopperIsUncertain.ShouldBeFalse();
    }

    [Fact]
    public void UnstatedHoleInABareBoardIsUnplated()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 20, 0, 30, 10).Rectangle(2, 20, 0, 30, 10).PlatedSlot(5, 5, 5, 5, 3);

        Rebuilt(board).Nets!.Holes.ShouldHaveSingleItem().IsPlated.ShouldBeFalse();
    }

    [Fact]
    public void UnstatedHoleThatIsNeitherIsReportedAndSuchABoardNeverPasses()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(2, 5.1, 0, 10, 10).PlatedSlot(5, 5, 5, 5, 1);
        Board rebuilt = Rebuilt(board);

        Diagnostic doubt = rebuilt.Diagnostics.Single(d => d.Code == "NET004");
        doubt.Found.ShouldStartWith("a hole with no statement of plating that meets copper on layers 1 (100 % of its wall), 2 (");
        doubt.Position.ToString().ShouldBe("holes.drl:5:1");
        rebuilt.CopperIsUncertain.ShouldBeTrue();
        rebuilt.Nets!.Nets.Count.ShouldBe(2);
    }

    [Fact]
    public void PlatedHoleWhosePadIsNoLargerOnlyCuts()
    {
        using SyntheticBoard board = new(2);
        board.Draw(1, LandOfEqualSize).Draw(2, LandOfEqualSize).PlatedSlot(5, 5, 5, 5, 1);
        board.WriteBrief("  - {}");

        Board rebuilt = Analysis.Survey(board.Folder).Board;

        rebuilt.Nets!.Holes.ShouldHaveSingleItem().OnlyCuts.ShouldBeTrue();
        BoardRebuilder.UnplatedCuts(rebuilt).ShouldHaveSingleItem().Plating.ShouldBe(Plating.Plated);
    }

    [Fact]
    public void HoleOnTheEdgeOfCopperHasABrokenRing()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 5, 10).Rectangle(2, 0, 0, 10, 10).PlatedSlot(5, 5, 5, 5, 1);
        board.WriteBrief("  - {}");

        HoleLanding hole = Analysis.Survey(board.Folder).Board.Nets!.Holes.ShouldHaveSingleItem();

        hole.Layers[0].Share.ShouldBe(0.5, tolerance: 0.1); // the edge runs through the centre of the hole
        hole.Layers[1].IsWhole.ShouldBeTrue();
        (hole.MeetsBothFaces, hole.IsSound).ShouldBe((true, false));
    }

    [Fact]
    public void PlaneThatKeepsClearOfAHoleDoesNotBreakItsRing()
    {
        using SyntheticBoard board = new(3);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(3, 0, 0, 10, 10).PlatedSlot(5, 5, 5, 5, 1)
            .Rectangle(2, 0, 0, 10, 10).Draw(2, "%LPC*%%ADD10C,2*%D10*X5000000Y5000000D03*%LPD*%");
        board.WriteBrief("  - {}");

        HoleLanding hole = Analysis.Survey(board.Folder).Board.Nets!.Holes.ShouldHaveSingleItem();

        hole.Layers.Select(layer => layer.Share).ShouldBe([1, 0, 1]);
        hole.IsSound.ShouldBeTrue();
    }

    /// <summary>The board with a drill file that says nothing of plating, in name or content.</summary>
    private static Board Rebuilt(SyntheticBoard board)
    {
        board.WriteBrief("  - {}");
        string drill = Path.Combine(board.Folder, "plated.drl");
        string text = File.ReadAllText(drill);
        File.Delete(drill);
        File.WriteAllText(Path.Combine(board.Folder, "holes.drl"), text.Replace("; #@! TF.FileFunction,Plated,1,2,PTH\n", "", StringComparison.Ordinal));
        return Analysis.Survey(board.Folder).Board;
    }
}
