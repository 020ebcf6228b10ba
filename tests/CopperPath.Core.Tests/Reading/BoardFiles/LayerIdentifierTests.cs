using System.Text;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Reading.BoardFiles;

namespace CopperPath.Core.Tests.Reading.BoardFiles;

/// <summary>Rules of identification on boards made of a few bytes. Habits of naming are common practice, no source.</summary>
public class LayerIdentifierTests
{
    private const string Gerber = "%FSLAX46Y46*%\n%MOMM*%\nM02*\n";
    private const string Drill = "M48\nMETRIC\nT1C1.0\n%\nT1\nX1.0Y1.0\nM30\n";

    [Theory]
    [InlineData("g1 g2 g3 g4", "2 3 4 5")]
    [InlineData("g2 g3 g4 g5", "2 3 4 5")]
    [InlineData("in1 in2", "2 3")]
    [InlineData("l2 l3", "2 3")]
    [InlineData("gl2 gl3", "2 3")]
    [InlineData("g2l g3l", "2 3")]
    public void InnerNumbersAreReadByTheLowestOfTheFolder(string extensions, string expected)
    {
        string[] inner = extensions.Split(' ');
        (string, string)[] files = [("b.gtl", Gerber), .. inner.Select((e, i) => ($"b.{e}", Gerber + i)), ("b.gbl", Gerber + "b")];

        BoardIdentification board = Identify(files);

        string.Join(' ', inner.Select(e => board.Files.Single(f => f.File.Name == $"b.{e}").CopperLayer)).ShouldBe(expected);
        board.CopperLayerCount.ShouldBe(inner.Length + 2);
        board.Files.Single(f => f.File.Name == "b.gbl").CopperLayer.ShouldBe(inner.Length + 2);
        Diagnostic order = board.Diagnostics.Single(d => d.Code == BoardSourceCode.InnerOrderFromNames);
        order.AffectsCopper.ShouldBeFalse();
        board.Diagnostics.ShouldNotContain(d => d.Severity == Severity.Error);
    }

    [Fact]
    public void MissingInnerLayerIsAnError()
    {
        BoardIdentification board = Identify(("b.gtl", Gerber), ("b.g1", Gerber + "1"), ("b.g3", Gerber + "3"), ("b.gbl", Gerber + "b"));

        board.Diagnostics.ShouldContain(d => d.Code == BoardSourceCode.LayerNumbers && d.Severity == Severity.Error && d.AffectsCopper);
    }

    [Fact]
    public void TwoFilesForOneLayerAreAnError()
    {
        BoardIdentification board = Identify(("b.gtl", Gerber), ("b.top", Gerber + "2"), ("b.gbl", Gerber + "b"));

        board.Diagnostics.ShouldContain(d => d.Found == "copper layer 1 in b.gtl and b.top");
    }

    [Fact]
    public void DeclarationBeatsTheNameAndTheConflictIsSaid()
    {
        BoardIdentification board = Identify(
            ("b.gtl", "%TF.FileFunction,Copper,L2,Bot*%\n" + Gerber), ("b.gbl", "G04 #@! TF.FileFunction,Copper,L1,Top*\n" + Gerber));

        board.Files.Select(f => (f.File.Name, f.CopperLayer, f.Evidence)).ShouldBe(
        [
            ("b.gbl", 1, Evidence.Declared), ("b.gtl", 2, Evidence.Declared),
        ]);
        board.Diagnostics.Count(d => d.Code == BoardSourceCode.RoleConflict).ShouldBe(2);
    }

    [Fact]
    public void JobFileSpeaksForSilentFiles()
    {
        const string job = """
            {"Header":{},"GeneralSpecs":{"LayerNumber":2},"FilesAttributes":[
            {"Path":"one.gbr","FileFunction":"Copper,L1,Top"},{"Path":"two.gbr","FileFunction":"Copper,L2,Bot"},
            {"Path":"three.gbr","FileFunction":"SolderMask,Top"},{"Path":"gone.gbr","FileFunction":"Profile"}]}
            """;

        BoardIdentification board = Identify(("b.gbrjob", job), ("one.gbr", Gerber), ("two.gbr", Gerber + "2"), ("three.gbr", Gerber));

        board.Files.Select(f => (f.File.Name, f.Role, f.CopperLayer, f.Evidence)).ShouldBe(
        [
            ("b.gbrjob", FileRole.JobFile, 0, Evidence.Content),
            ("one.gbr", FileRole.Copper, 1, Evidence.JobFile),
            ("three.gbr", FileRole.SolderMaskTop, 0, Evidence.JobFile),
            ("two.gbr", FileRole.Copper, 2, Evidence.JobFile),
        ]);
        board.Job.ShouldNotBeNull().CopperLayerCount.ShouldBe(2);
        board.Diagnostics.ShouldHaveSingleItem().Found.ShouldBe("the file 'gone.gbr', which is not there");
    }

    [Fact]
    public void OverridesStandAboveAllAndUnknownOnesAreErrors()
    {
        BoardIdentification board = LayerIdentifier.Identify(
            Source(("a.gtl", Gerber), ("b.xyz", Gerber + "b"), ("holes.drl", Drill)),
            [
                new RoleOverride("b.xyz", FileRole.Copper, 2),
                new RoleOverride("holes.drl", FileRole.Drill, Plating: Plating.Plated),
                new RoleOverride("nothing.gbr", FileRole.Copper, 3),
            ]);

        IdentifiedFile second = board.Files.Single(f => f.File.Name == "b.xyz");
        (second.Role, second.CopperLayer, second.Evidence).ShouldBe((FileRole.Copper, 2, Evidence.Override));
        board.Files.Single(f => f.File.Name == "holes.drl").Plating.ShouldBe(Plating.Plated);
        board.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(BoardSourceCode.UnknownOverride);
    }

    [Fact]
    public void UnknownGerberFileIsLeftOutWithAWarning()
    {
        BoardIdentification board = Identify(("a.gtl", Gerber), ("a.gbl", Gerber + "b"), ("a.xyz", Gerber));

        board.Files.Single(f => f.File.Name == "a.xyz").Role.ShouldBe(FileRole.Other);
        board.Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(BoardSourceCode.UnknownRole);
    }

    [Fact]
    public void BoardWithoutCopperIsAnError() =>
        Identify(("a.gto", Gerber)).Diagnostics.ShouldHaveSingleItem().Code.ShouldBe(BoardSourceCode.NoCopper);

    [Fact]
    public void SilentDrillFileBesideAnUnplatedOneIsTakenAsPlatedAndSaidSo()
    {
        BoardIdentification board = Identify(("b.gtl", Gerber), ("b.gbl", Gerber + "b"), ("b.drl", Drill), ("b-NPTH.drl", Drill));

        board.Files.Single(f => f.File.Name == "b.drl").Plating.ShouldBe(Plating.Plated);
        board.Diagnostics.Count(d => d.Code == BoardSourceCode.PlatingInferred).ShouldBe(2);
    }

    [Fact]
    public void SpanInTheNameIsTakenOnlyWithinTheBoard()
    {
        BoardIdentification board = Identify(("b.gtl", Gerber), ("b.gbl", Gerber + "b"), ("b-L1-L2.drl", Drill), ("b 11-12.drl", Drill));

        board.Files.Single(f => f.File.Name == "b-L1-L2.drl").Span.ShouldBe(new DrillSpan(1, 2));
        board.Files.Single(f => f.File.Name == "b 11-12.drl").Span.ShouldBeNull();
    }

    [Fact]
    public void DrillDataInGerberFormIsADrillFile()
    {
        BoardIdentification board = Identify(
            ("b.gtl", Gerber), ("b.gbl", Gerber + "b"), ("b-pth.gbr", "%TF.FileFunction,Plated,1,2,PTH*%\n" + Gerber));

        IdentifiedFile drill = board.Files.Single(f => f.Role == FileRole.Drill);
        (drill.Content, drill.Plating, drill.Span).ShouldBe((FileContent.Gerber, Plating.Plated, new DrillSpan(1, 2)));
        board.Diagnostics.ShouldBeEmpty();
    }

    [Fact]
    public void NotesThatQuoteCommandsAreNoArtwork()
    {
        BoardIdentification board = Identify(("b.gtl", Gerber), ("b.gbl", Gerber + "b"),
            ("notes.md", "# Notes\n\nStarts with \"G75*\" before %MOIN%; %OFA0B0*% and %ADD10C,1*% follow.\n"));

        board.Files.Single(f => f.File.Name == "notes.md").Content.ShouldBe(FileContent.Text);
        board.Diagnostics.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("board_copper_top.ger", FileRole.Copper, 1)]
    [InlineData("board_top.art", FileRole.Copper, 1)]
    [InlineData("board_soldermask_top.ger", FileRole.SolderMaskTop, 0)]
    [InlineData("board_SolderMask_Bottom.ger", FileRole.SolderMaskBottom, 0)]
    [InlineData("board-paste-bot.gbr", FileRole.PasteBottom, 0)]
    [InlineData("board silkscreen top.pho", FileRole.LegendTop, 0)]
    [InlineData("board-outline.gbr", FileRole.Profile, 0)]
    [InlineData("board-drill-drawing.gbr", FileRole.Drawing, 0)]
    [InlineData("board.gm13", FileRole.Drawing, 0)]
    public void WordsOfANameGiveTheRole(string name, FileRole role, int layer)
    {
        BoardIdentification board = Identify((name, Gerber), ("board_copper_bottom.ger", Gerber + "b"));

        IdentifiedFile file = board.Files.Single(f => f.File.Name == name);
        (file.Role, file.CopperLayer, file.Evidence).ShouldBe((role, layer, Evidence.Name));
    }

    private static BoardIdentification Identify(params (string Name, string Text)[] files) => LayerIdentifier.Identify(Source(files));

    private static BoardSource Source(params (string Name, string Text)[] files) => new(
        "board",
        [.. files.OrderBy(f => f.Name, StringComparer.Ordinal).Select(f => new BoardFile(f.Name, Encoding.UTF8.GetBytes(f.Text)))],
        []);
}
