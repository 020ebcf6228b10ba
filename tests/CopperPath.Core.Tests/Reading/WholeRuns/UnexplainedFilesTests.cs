using System.Text.RegularExpressions;
using CopperPath.Judging;

namespace CopperPath.Core.Tests.Reading.WholeRuns;

/// <summary>
/// Files of a sound board damaged one way each, through the whole program: what may have lost copper or holes keeps the
/// review from passing and is said; the untouched board passes.
/// </summary>
public sealed class UnexplainedFilesTests
{
    [Theory]
    [InlineData(2, true)]
    [InlineData(2, false)]
    [InlineData(4, true)]
    [InlineData(4, false)]
    public void TheSoundBoardPasses(int layers, bool withAttributes)
    {
        using MendedFolder folder = new(layers, withAttributes);
        Review review = folder.Check();
        review.Verdict.ShouldBe(Verdict.WithinLimits, string.Join('\n', [.. review.Diagnostics, .. review.Findings.Select(finding => finding.Sentence)]));
    }

    /// <summary>Every published form of the layer format ends with M02; the older M00 is taken for it.</summary>
    [Theory]
    [InlineData("board.gtl", "board.gtl: warning GBR003: found no M02; expected M02 at the end; the file may be cut off")]
    [InlineData("board.gko", "board.gko: warning GBR003: found no M02; expected M02 at the end; the file may be cut off")]
    public void AFileCutOffBetweenCommandsIsNotJudged(string file, string expected)
    {
        using MendedFolder folder = new();
        folder.Change(file, "M02*\n", "").WhyNotJudged().ShouldContain(expected);
    }

    [Fact]
    public void ADrillFileCutOffBetweenCommandsIsNotJudged()
    {
        using MendedFolder folder = new();
        string text = folder["board-pth.drl"];
        folder.Write("board-pth.drl", text[..text.IndexOf("X20.000", StringComparison.Ordinal)]);
        folder.WhyNotJudged().ShouldContain(remark => remark.Contains("DRL016", StringComparison.Ordinal));
    }

    [Fact]
    public void AMaskCutOffChangesNoCopper()
    {
        using MendedFolder folder = new();
        folder.Change("board.gts", "M02*\n", "").Check().Verdict.ShouldBe(Verdict.WithinLimits);
    }

    [Fact]
    public void WhatStandsBehindTheEndIsNotJudged()
    {
        using MendedFolder folder = new();
        folder.Change("board.gtl", "%TO.N,GND*%\nG36*", "M02*\n%TO.N,GND*%\nG36*").WhyNotJudged().ShouldContain(
            remark => Regex.IsMatch(remark, @"^board\.gtl:\d+:2: warning GBR017: found 'TO\.N,GND' after the end of the file; expected nothing after M02; the rest is not read$"));
    }

    [Fact]
    public void HolesBehindTheEndOfADrillFileAreNotJudged()
    {
        using MendedFolder folder = new();
        folder.Change("board-pth.drl", "T2\nX3.000", "M30\nT2\nX3.000").WhyNotJudged().ShouldContain(
            remark => remark.Contains("warning DRL029: found a line after the end of the program", StringComparison.Ordinal));
    }

    /// <summary>Both lobes are filled, whichever way the contour runs round them: areas of plane geometry.</summary>
    [Fact]
    public void ABowTieOfNoNetAreaIsCopper()
    {
        using MendedFolder folder = new();
        string bowTie = string.Concat(new[] { (4, 1), (8, 5), (8, 1), (4, 5), (4, 1) }
            .Select((point, i) => $"{Gallery.SyntheticBoard.At(point.Item1, point.Item2)}D0{(i == 0 ? 2 : 1)}*\n"));
        Review before = folder.Check();
        Review after = folder.Change("board.gtl", "M02*\n", $"G36*\n{bowTie}G37*\nM02*\n").Check();
        double addedM2 = after.Board!.Nets!.Layers[0].AreaM2 - before.Board!.Nets!.Layers[0].AreaM2;
        (addedM2 * 1e6).ShouldBe(8, 1e-6, "two triangles of 4 mm2");
    }

    /// <summary>Canned text of the drill format (M97 along x, M98 along y): the next coordinates are its place.</summary>
    [Theory]
    [InlineData("M97")]
    [InlineData("M98")]
    public void TextForTheDrillMakesNoHoleOfItsOwnAndIsNotJudged(string code)
    {
        using MendedFolder folder = new();
        int before = folder.Check().Board!.HoleCount;
        folder.Change("board-pth.drl", "T0\n", $"{code},REV B\nX12.000Y14.000\nT0\n");
        folder.Check().Board!.HoleCount.ShouldBe(before);
        folder.WhyNotJudged().ShouldContain(remark => remark.Contains(
            $"warning DRL037: found '{code},REV B', text that the machine drills into the board", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("board-pth.drl", "drill")]
    [InlineData("board.gtl", "copper")]
    [InlineData("board.gko", "profile")]
    public void AFileThatItsNameMakesCopperAndItsContentDoesNotIsNotJudged(string file, string role)
    {
        using MendedFolder folder = new(withAttributes: false);
        folder.Write(file, "The quick brown fox.\n").WhyNotJudged().ShouldContain(remark => remark.Contains(
            $"{file}: warning BRD029: found text in a file named as {role}", StringComparison.Ordinal));
    }

    /// <summary>Without head and under another name what is left are lines of coordinates.</summary>
    [Fact]
    public void CoordinatesInAFileOfNoKnownFormAreNotJudged()
    {
        using MendedFolder folder = new(withAttributes: false);
        folder.Write("board-npth.drl", "X1.500Y18.200\nX28.400Y1.600\nX1.0Y9.0\n").Rename("board-npth.drl", "holes.dat");
        folder.WhyNotJudged().ShouldContain("holes.dat: warning BRD029: found 3 lines of coordinates in a file of no known form; "
            + "expected fabrication data in a form that is read, or an override with its role; it is left out");
    }

    [Fact]
    public void TheBriefSettlesWhatAFileIs()
    {
        using MendedFolder folder = new() { Answer = "  layers: { file: plot.gbr, role: ignore }\n" };
        folder.Write("plot.gbr", "The quick brown fox.\n").Check().Verdict.ShouldBe(Verdict.WithinLimits);
        folder.Answer = "";
        folder.WhyNotJudged().ShouldHaveSingleItem().ShouldStartWith("plot.gbr: warning BRD029");
    }

    [Fact]
    public void AGerberFileThatNothingNamesIsNotJudged()
    {
        using MendedFolder folder = new(withAttributes: false);
        folder.Write("x7.dat", folder["board.gtl"]).WhyNotJudged().ShouldHaveSingleItem().ShouldStartWith("x7.dat: warning BRD028");
    }

    [Fact]
    public void AFunctionThatTheFormatDoesNotHaveIsNotJudged()
    {
        using MendedFolder folder = new();
        folder.Change("board-pth.drl", "TF.FileFunction,Plated", "TF.FileFunction,Pl4ted").WhyNotJudged().ShouldContain(
            remark => remark.Contains("warning BRD030: found the file function 'Pl4ted,1,2,PTH', which is not known", StringComparison.Ordinal));
    }

    [Fact]
    public void AFileThatTheJobFileNamesAndNobodyHasIsNotJudged()
    {
        using MendedFolder folder = new();
        folder.Change("board.gbrjob", "{\"Path\":\"board.gko\"", "{\"Path\":\"slots.drl\",\"FileFunction\":\"Plated,1,2,PTH\"},\n{\"Path\":\"board.gko\"")
            .WhyNotJudged().ShouldContain(remark => remark.Contains("'slots.drl', which is not there", StringComparison.Ordinal));
    }

    /// <summary>Common practice, no source: drills start at 0.1 mm, lasers at 0.04 mm, plated holes end at 15 mm.</summary>
    [Theory]
    [InlineData("T1C0.300", "T1C0.030", "14 holes made with a tool of 0.03 mm")]
    [InlineData("T2C1.000", "T2C25.400", "6 holes made with a tool of 25.4 mm")]
    [InlineData("T1C0.300", "T1C7.620", "14 of 20 holes wider than 5 mm")]
    public void AToolThatNobodyHasIsNotJudged(string from, string to, string expected)
    {
        using MendedFolder folder = new();
        folder.Change("board-pth.drl", from, to).WhyNotJudged()
            .ShouldContain(remark => remark.Contains("warning DRL038", StringComparison.Ordinal) && remark.Contains(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void AToolWhoseSelectionIsLostIsNotJudged()
    {
        using MendedFolder folder = new();
        folder.Change("board-pth.drl", "T2\nX3.000", "X3.000").WhyNotJudged().ShouldContain(remark => remark.Contains(
            "warning DRL039: found tool 2, which makes no hole", StringComparison.Ordinal));
    }

    /// <summary>A macro whose outline crosses itself and lies over a disc: the lobe that winds backwards takes nothing away.</summary>
    [Fact]
    public void ACrossingOutlineOfAMacroTakesNothingFromWhatItLiesOver()
    {
        using MendedFolder folder = new();
        Review before = folder.Check();
        Review after = folder.Change("board.gtl", "M02*\n", "%AMTIE*1,1,2,0,0*4,1,4,-0.5,-0.5,0.5,0.5,0.5,-0.5,-0.5,0.5,-0.5,-0.5,0*%\n%ADD99TIE*%\nD99*\nX6000000Y3000000D03*\nM02*\n").Check();
        double addedM2 = after.Board!.Nets!.Layers[0].AreaM2 - before.Board!.Nets!.Layers[0].AreaM2;
        (addedM2 * 1e6).ShouldBe(Math.PI, 1e-3, "the disc");
    }
}
