using CopperPath.Core.Tests.Gallery;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Reading.Placement;

namespace CopperPath.Core.Tests.Nets;

/// <summary>Pads guessed to belong to parts, and terminals that rest on the guess.</summary>
public sealed class PartGuessTests
{
    private const string Pads = "%ADD10R,1X1*%D10*";

    [Fact]
    public void PadsGoToThePartTheyAreSymmetricAbout()
    {
        using SyntheticBoard board = TwoParts();
        NetList nets = NetsOf(board, "Designator,X (mm),Y (mm),Side\nL1,5,5,top\nC1,12,5,top\n", out IReadOnlyList<Diagnostic> diagnostics);

        Parts(nets).ShouldBe(["3 L1", "7 L1", "11 C1", "13 C1"], ignoreOrder: true);
        diagnostics.ShouldHaveSingleItem().ToString().ShouldBe(
            "parts.csv: warning PRT003: found pads without pins; 4 of 4 were guessed to belong to 2 of 2 parts, read in its unit from the origin of the artwork, "
            + "100 % of parts with pads symmetric about them; expected pins in the artwork or a netlist");
    }

    [Theory]
    [InlineData("Designator,X,Y,Rot\nL1,5,5,0\nC1,12,5,90\n", "millimetres")]
    [InlineData("Designator,X,Y,Rot\nL1,196.8504,196.8504,0\nC1,472.4409,196.8504,90\n", "mils")]
    [InlineData("Designator,X,Y,Rot\nL1,0.19685,0.19685,0\nC1,0.47244,0.19685,90\n", "inches")]
    public void UndeclaredUnitIsFoundFromThePads(string table, string unit)
    {
        using SyntheticBoard board = TwoParts();
        NetList nets = NetsOf(board, table, out IReadOnlyList<Diagnostic> diagnostics);

        Parts(nets).Count.ShouldBe(4);
        diagnostics.Single(d => d.Code == "PRT003").Found.ShouldContain($"read in {unit} from");
    }

    [Fact]
    public void TableThatFitsNowhereIsNotUsed()
    {
        using SyntheticBoard board = TwoParts();
        NetList nets = NetsOf(board, "Designator,X (mm),Y (mm),Side\nL1,5,55,top\nC1,12,70,top\nR1,44,30,top\nR2,20,81,top\n", out IReadOnlyList<Diagnostic> diagnostics);

        Parts(nets).ShouldBeEmpty();
        diagnostics.ShouldHaveSingleItem().Code.ShouldBe("PRT002");
    }

    [Fact]
    public void OtherOriginIsFoundFromThePads()
    {
        using SyntheticBoard board = TwoParts();
        NetList nets = NetsOf(board, "Designator,X (mm),Y (mm),Side\nL1,-20,105,top\nC1,-13,105,top\n", out IReadOnlyList<Diagnostic> diagnostics);

        Parts(nets).ShouldBe(["3 L1", "7 L1", "11 C1", "13 C1"], ignoreOrder: true);
        diagnostics.ShouldHaveSingleItem().Found.ShouldContain("from an origin at 25, -100 mm found from the pads, 100 % of parts");
    }

    [Fact]
    public void PadsOfTheOtherSideAreLeftAlone()
    {
        using SyntheticBoard board = TwoParts();
        board.Draw(2, $"{Pads}X3000000Y5000000D03*X7000000Y5000000D03*");
        NetList nets = NetsOf(board, "Designator,X (mm),Y (mm),Side\nL1,5,5,top\nC1,12,5,top\n", out _);

        nets.Nets.SelectMany(net => net.Pads).Where(pad => pad.Layer == 2).ShouldAllBe(pad => pad.GuessedPart == null);
    }

    [Fact]
    public void ArtworkThatNamesItsPinsNeedsNoGuess()
    {
        using SyntheticBoard board = new(1);
        board.Draw(1, $"{Pads}%TO.P,L9,1*%X3000000Y5000000D03*%TO.P,L9,2*%X7000000Y5000000D03*%TD*%");
        NetList nets = NetsOf(board, "Designator,X (mm),Y (mm),Side\nL1,5,5,top\n", out IReadOnlyList<Diagnostic> diagnostics);

        Parts(nets).ShouldBeEmpty();
        diagnostics.ShouldHaveSingleItem().Code.ShouldBe("PRT001");
    }

    [Fact]
    public void TerminalMayNameAPartAndIsWarnedThatThisIsAGuess()
    {
        using SyntheticBoard board = Track();
        Review review = Check(board, "parts.csv", "component: L1", "pins: [C1.2]");

        review.Nets.ShouldHaveSingleItem();
        review.Diagnostics.Where(d => d.Code == "CIR016").Select(d => d.Found).ShouldBe(
        [
            "L1 at 3, 5 mm, which no file names; guessed from the placements to be the pad at 3, 5 mm",
            "C1.2, which no file names; guessed from the placements to be the pad at 11, 5 mm",
        ]);
    }

    [Fact]
    public void PinOfAPartWithSeveralPadsOnTheNetIsRefused()
    {
        using SyntheticBoard board = Track();
        board.Rectangle(1, 0, 4.5, 8, 5.5);
        Review review = Check(board, "parts.csv", "pins: [L1.2]", "component: C1");

        review.Diagnostics.Single(d => d.Code == "CIR010").Expected.ShouldContain("a part with one pad on net");
    }

    [Fact]
    public void PlacementFileThatIsNotThereIsAnErrorOfTheBrief()
    {
        using SyntheticBoard board = Track();

        Check(board, "nowhere.csv", "component: L1", "component: C1").Diagnostics.Single(d => d.Code == PlacementCode.Missing).ToString()
            .ShouldContain("brief.yaml:5:14: error PLC011: found the placement file 'nowhere.csv'");
    }

    /// <summary>
    /// On boards whose artwork names its pins the guess can be held against the truth. The shares are what this method
    /// reaches there; they bound what it is worth elsewhere.
    /// </summary>
    [Theory]
    [InlineData("picopd-v12", "positions.csv", 0.9, 0.9)]
    public void GuessIsMostlyRightWhereThePinsAreKnown(string name, string file, double leastRight, double leastFound)
    {
        string folder = SharedData.Require("boards-open", name);
        Board board = Analysis.Survey(folder).Board;
        Dictionary<(int Layer, PointNm At), string> truth = [];
        foreach (Pad pad in board.Nets!.Nets.SelectMany(net => net.Pads).Where(pad => pad.Pin is not null))
        {
            truth[(pad.Layer, pad.At)] = pad.Pin!.Component;
        }

        NetList bare = board.Nets with { Nets = [.. board.Nets.Nets.Select(net => net with { Pads = [.. net.Pads.Select(pad => pad with { Pin = null })] })] };
        PlacementTable table = PlacementReader.Read(file, File.ReadAllBytes(Path.Combine(folder, file))).Table!;
        HashSet<string> placed = [.. table.Parts.Select(part => part.Designator)];
        Pad[] guessed = [.. PartGuess.Apply(bare, table, []).Nets.SelectMany(net => net.Pads).Where(pad => truth.ContainsKey((pad.Layer, pad.At)))];

        Pad[] ofPlaced = [.. guessed.Where(pad => placed.Contains(truth[(pad.Layer, pad.At)]))];
        int found = ofPlaced.Count(pad => pad.GuessedPart is not null);
        int right = ofPlaced.Count(pad => pad.GuessedPart == truth[(pad.Layer, pad.At)]);
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(
            $"{name}: {ofPlaced.Length} pads of placed parts, {found} guessed, {right} rightly; {guessed.Count(pad => pad.GuessedPart is not null) - found} pads of other parts guessed"));
        ((double)found / ofPlaced.Length).ShouldBeGreaterThan(leastFound);
        ((double)right / found).ShouldBeGreaterThan(leastRight);
    }

    private static SyntheticBoard TwoParts() =>
        new SyntheticBoard(2).Draw(1, $"{Pads}X3000000Y5000000D03*X7000000Y5000000D03*X11000000Y5000000D03*X13000000Y5000000D03*");

    /// <summary>A track that joins the left pads of both parts.</summary>
    private static SyntheticBoard Track() => TwoParts().Rectangle(1, 2.5, 3.5, 3.5, 5).Rectangle(1, 2.5, 3.5, 11.5, 4).Rectangle(1, 10.5, 3.5, 11.5, 5);

    private static List<string> Parts(NetList nets) =>
        [.. nets.Nets.SelectMany(net => net.Pads).Where(pad => pad.GuessedPart is not null).Select(pad => $"{pad.At.X / 1_000_000} {pad.GuessedPart}")];

    private static NetList NetsOf(SyntheticBoard board, string table, out IReadOnlyList<Diagnostic> diagnostics)
    {
        board.WriteBrief("  - {}");
        File.WriteAllText(Path.Combine(board.Folder, "parts.csv"), table);
        Board rebuilt = Analysis.Survey(board.Folder).Board;
        diagnostics = [.. rebuilt.Diagnostics.Where(d => d.Position.File == "parts.csv" && d.Code != PlacementCode.NoUnit)];
        return rebuilt.Nets.ShouldNotBeNull();
    }

    private static Review Check(SyntheticBoard board, string placement, string source, string sink)
    {
        string brief = board.WriteBrief($"""
              - name: Track
                at: [layer: 1, x: 5 mm, y: 3.75 mm]
                role: other
                terminals:
                  - [name: source, {source}, enters: 1 A]
                  - [name: sink, {sink}, takes: rest]
            """.Replace("at: [", "at: {", StringComparison.Ordinal).Replace("mm]", "mm}", StringComparison.Ordinal)
               .Replace("- [", "- {", StringComparison.Ordinal).Replace(" A]", " A}", StringComparison.Ordinal).Replace("rest]", "rest}", StringComparison.Ordinal));
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("files: .\n", $"files: .\n  placement: {placement}\n", StringComparison.Ordinal));
        File.WriteAllText(Path.Combine(board.Folder, "parts.csv"), "Designator,X (mm),Y (mm),Side\nL1,5,5,top\nC1,12,5,top\n");
        return Analysis.Check(brief);
    }
}
