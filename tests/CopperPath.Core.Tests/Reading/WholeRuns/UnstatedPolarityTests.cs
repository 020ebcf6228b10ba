using CopperPath.Judging;

namespace CopperPath.Core.Tests.Reading.WholeRuns;

/// <summary>
/// A plane drawn as absent copper by a file that does not say so: a disc wider than the land at each hole that it passes,
/// a thermal relief at pins that it meets, nothing at vias that it meets. Common practice, no source.
/// </summary>
public sealed class UnstatedPolarityTests
{
    private const string Plane = "board.g1";
    private const string Stated = "  layers: { file: board.g1, role: copper, number: 2, polarity: ";

    [Fact]
    public void ThePlaneIsTakenForWhatItsHolesTellAndTheGuessIsSaid()
    {
        using MendedFolder folder = Absent(new MendedFolder(4, withAttributes: false));
        Review review = folder.Check();

        review.Verdict.ShouldBe(Verdict.WithinLimits, string.Join('\n', review.Diagnostics));
        review.Diagnostics.ShouldContain(remark => remark.ToString().StartsWith(
            "board.g1: warning CUP006: found a layer taken as drawn as absent copper, which it does not say: "
            + "of 16 flashes at plated holes 16 are clearances or thermal reliefs, and as copper its lines and areas would join 0 holes", StringComparison.Ordinal));

        // 30 mm by 20 mm less ten clearances of 0.9 mm, four of 1.9 mm, two of 3.2 mm; two reliefs of four quarters of a
        // ring of 2.2 mm and 1.8 mm, with gaps of 0.3 mm: plane geometry, ring less four strips across it.
        double relief = (Math.PI / 4 * ((2.2 * 2.2) - (1.8 * 1.8))) - (4 * 0.3 * 0.2);
        // One clearance hangs over the edge of the board by 0.1 mm: a segment of its circle.
        double over = (1.6 * 1.6 * Math.Acos(1.5 / 1.6)) - (1.5 * Math.Sqrt((1.6 * 1.6) - (1.5 * 1.5)));
        double expectedMm2 = 600 + over - (Math.PI / 4 * ((10 * 0.9 * 0.9) + (4 * 1.9 * 1.9) + (2 * 3.2 * 3.2))) - (2 * relief);
        (review.Board!.Nets!.Layers[1].AreaM2 * 1e6).ShouldBe(expectedMm2, 0.02);
        review.Board.Nets.At(2, new Geometry.PointNm(7_000_000, 15_000_000)).ShouldNotBeNull().Barrels.Count.ShouldBe(6, "four vias and two pins");
    }

    [Fact]
    public void AFileThatSaysOtherwiseIsNotJudged()
    {
        using MendedFolder folder = Absent(new MendedFolder(4, withAttributes: true));
        folder.WhyNotJudged().ShouldContain(remark => remark.StartsWith(
            "board.g1: warning CUP005: found a layer that may be drawn as absent copper: of 16", StringComparison.Ordinal));
    }

    [Fact]
    public void TheFileTheJobFileAndTheBriefMayEachSayIt()
    {
        using MendedFolder folder = Absent(new MendedFolder(4, withAttributes: true));
        folder.Change(Plane, "%TF.FilePolarity,Positive*%", "%TF.FilePolarity,Negative*%").Check().Verdict.ShouldBe(Verdict.WithinLimits);

        folder.Change(Plane, "%TF.FilePolarity,Negative*%\n", "");
        Review guessed = folder.Check();
        guessed.Diagnostics.ShouldContain(remark => remark.Code == "CUP006");

        folder.Change("board.gbrjob", "\"FileFunction\":\"Copper,L2,Inr\"", "\"FileFunction\":\"Copper,L2,Inr\",\"FilePolarity\":\"Negative\"");
        Review byJob = folder.Check();
        byJob.Verdict.ShouldBe(Verdict.WithinLimits);
        byJob.Diagnostics.ShouldNotContain(remark => remark.Code == "CUP006");
        byJob.Board!.Nets!.Layers[1].AreaM2.ShouldBe(guessed.Board!.Nets!.Layers[1].AreaM2, 1e-12);

        folder.Change("board.gbrjob", "\"FilePolarity\":\"Negative\"", "\"FilePolarity\":\"Positive\"").WhyNotJudged().ShouldHaveSingleItem();
        folder.Answer = Stated + "negative }\n";
        folder.Check().Board!.Nets!.Layers[1].AreaM2.ShouldBe(guessed.Board!.Nets!.Layers[1].AreaM2, 1e-12);
    }

    /// <summary>Discs no wider than the lands outside may be lands that lost their lines, or clearances drawn too small.</summary>
    [Fact]
    public void DiscsThatMayBeEitherAreNotJudged()
    {
        using MendedFolder folder = new(4, withAttributes: false);
        folder.Write(Plane, folder[Plane][..folder[Plane].IndexOf("G36*", StringComparison.Ordinal)]
            + "D70*\nX9000000Y7500000D03*\nX9000000Y8500000D03*\nX20000000Y4000000D03*\nX7000000Y15000000D03*\nM02*\n");
        folder.WhyNotJudged().ShouldContain(remark => remark.StartsWith(
            "board.g1: warning CUP005: found a layer that may be drawn as absent copper: of 4 flashes at plated holes 0 are clearances", StringComparison.Ordinal));
    }

    [Fact]
    public void ALayerOfLandsDeclaredAbsentIsNotJudged()
    {
        using MendedFolder folder = new(4, withAttributes: true);
        folder.Change("board.g2", "%TF.FilePolarity,Positive*%", "%TF.FilePolarity,Negative*%").WhyNotJudged().ShouldContain(
            remark => remark.StartsWith("board.g2: warning CUP005: found a layer declared as absent copper that looks drawn as copper", StringComparison.Ordinal));
    }

    /// <summary>The two planes of a real board, first as they say themselves, then silent: the same copper.</summary>
    [Fact]
    public void ThePlanesOfARealBoardAreToldWithoutTheirWord()
    {
        string board = SharedData.Require("boards-open", "dopflow-control");
        string copy = Directory.CreateTempSubdirectory("copperpath-test-").FullName;
        try
        {
            foreach (string path in Directory.EnumerateFiles(board, "*", SearchOption.AllDirectories))
            {
                // The outline's extension alone says too little.
                string name = Path.GetFileName(path);
                File.WriteAllText(Path.Combine(copy, name == "PCB.GM" ? "PCB.GKO" : name), File.ReadAllText(path));
            }

            double[] stated = AreasM2(Analysis.Survey(copy).Board);
            foreach (string plane in Directory.EnumerateFiles(copy, "PCB.GP?"))
            {
                File.WriteAllText(plane, File.ReadAllText(plane).Replace("TF.FilePolarity,Negative", "", StringComparison.Ordinal));
            }

            Board silent = Analysis.Survey(copy).Board;
            silent.Diagnostics.Count(remark => remark.Code == "CUP006").ShouldBe(2);
            AreasM2(silent).ShouldBe(stated);
        }
        finally
        {
            Directory.Delete(copy, recursive: true);
        }
    }

    [Fact]
    public void APolarityOfWhatIsNoCopperIsRefused()
    {
        using MendedFolder folder = new() { Answer = "  layers: { file: board.gts, role: mask top, polarity: negative }\n" };
        folder.Check().Diagnostics.ShouldContain(remark => remark.Found == "a polarity for a file that is not copper");
    }

    private static double[] AreasM2(Board board) => [.. board.Nets!.Layers.Select(layer => layer.AreaM2)];

    /// <summary>The plane of the small board, its clearances dark instead of clear and nothing below them.</summary>
    private static MendedFolder Absent(MendedFolder folder)
    {
        string text = folder[Plane];
        int region = text.IndexOf("G36*", StringComparison.Ordinal);
        int clearances = text.IndexOf("%LPC*%\n", StringComparison.Ordinal) + "%LPC*%\n".Length;
        int end = text.IndexOf("%LPD*%\nM02*", StringComparison.Ordinal);
        return folder.Write(Plane, text[..region] + "%AMRELIEF*7,0,0,2.2,1.8,0.3,0*%\n%ADD90RELIEF*%\n"
            + text[clearances..end] + "D90*\nX3000000Y15000000D03*\nX26500000Y16000000D03*\nM02*\n");
    }
}
