using CopperPath.Core.Tests.Gallery;
using CopperPath.Diagnostics;
using CopperPath.Reading.Drill;

namespace CopperPath.Core.Tests.Reading.Drill;

/// <summary>Drill files on their way into a board: formats inferred or refused, both forms of drill data together.</summary>
public sealed class BoardDrillsTests
{
    private const string Undeclared = "M48\nM72\nT1C0.04\n%\nT1\nX10000Y10000\nM30\n";
    private const string GerberDrill = "%TF.FileFunction,Plated,1,2,PTH*%%FSLAX46Y46*%%MOMM*%%ADD10C,0.6*%D10*X5000000Y5000000D03*X7000000Y5000000D03*M02*\n";

    [Fact]
    public void FormatInferredFromTheCopperIsSaidWithItsEvidence()
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, "%ADD10C,2*%D10*X25400000Y25400000D03*X2000000Y9000000D03*");
        Board rebuilt = Rebuilt(board, "holes.txt", Undeclared);

        rebuilt.HoleCount.ShouldBe(1);
        rebuilt.DrillFormats.ShouldBe(["holes.txt: inch, 2.4, leading zeros omitted (inferred from the copper)"]);
        Diagnostic taken = rebuilt.Diagnostics.Single(d => d.Code == DrillCode.FormatInferred);
        taken.ToString().ShouldBe(
            "holes.txt: warning DRL900: found no declared number format; taken as inch, 2.4, leading zeros omitted because it fits the copper best "
            + "(inch, 2.4, leading zeros omitted: 100.0 % on pads, 100.0 % inside the board, 100.0 % of usual size); "
            + "expected a declared one; a 'drill format' in the brief settles it");
        rebuilt.Diagnostics.Count(d => d.Code == DrillCode.FormatEvidence && d.Severity == Severity.Note).ShouldBe(4);
    }

    [Fact]
    public void FormatIsRefusedWhenTwoReadingsFitAlike()
    {
        // A pad ten times as far out: 2.4 and 2.5 both put the hole on a pad.
        using SyntheticBoard board = new(1);
        board.Draw(1, "%ADD10C,2*%D10*X25400000Y25400000D03*X2540000Y2540000D03*");
        Board rebuilt = Rebuilt(board, "holes.txt", Undeclared);

        rebuilt.HoleCount.ShouldBe(0);
        rebuilt.CopperIsUncertain.ShouldBeTrue();
        Diagnostic refused = rebuilt.Diagnostics.Single(d => d.Code == DrillCode.FormatNotInferred);
        refused.Severity.ShouldBe(Severity.Error);
        refused.Found.ShouldContain("inch, 2.4, leading zeros omitted: 100.0 % on pads");
        refused.Found.ShouldContain("inch, 2.5, leading zeros omitted: 100.0 % on pads");
        rebuilt.Diagnostics.First(d => d.Code == DrillCode.FormatEvidence).Expected.ShouldBe("one that reaches 95 % in every share and leads the next by 25 %");
    }

    [Fact]
    public void DrillDataInGerberFormJoinsLayers()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(2, 0, 0, 10, 10);
        Board rebuilt = Rebuilt(board, "pth-drill.gbr", GerberDrill);

        rebuilt.Nets!.Nets.ShouldHaveSingleItem().Barrels.Count.ShouldBe(2);
        rebuilt.Diagnostics.ShouldBeEmpty();
    }

    [Fact]
    public void HolesInBothFormsAreOneBarrelEach()
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 10, 10).Rectangle(2, 0, 0, 10, 10).PlatedSlot(5, 5, 5, 5, 0.6);
        Board rebuilt = Rebuilt(board, "pth-drill.gbr", GerberDrill);

        rebuilt.Nets!.Nets.ShouldHaveSingleItem().Barrels.Count.ShouldBe(2);
        rebuilt.Diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "pth-drill.gbr: note DRL040: found 1 holes that plated.drl holds too; expected each hole once; they were taken once");
    }

    private static Board Rebuilt(SyntheticBoard board, string file, string text)
    {
        board.WriteBrief("  - {}");
        File.WriteAllText(Path.Combine(board.Folder, file), text);
        return Analysis.Survey(board.Folder).Board;
    }
}
