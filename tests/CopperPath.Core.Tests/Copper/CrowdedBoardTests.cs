using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Core.Tests.Copper;

/// <summary>
/// Boards whose top layer holds shapes on each other or nearly, through the whole path from folder to nets and proposals.
/// None may take more than a few seconds, and none may pass in silence where it was given up.
/// </summary>
[Collection(nameof(Alone))]
public sealed class CrowdedBoardTests
{
    /// <summary>Processor seconds of all threads: several times what the longest takes, far below what any of them took.</summary>
    private const double MostCpuS = 30;

    public static TheoryData<string, bool> Layers => new()
    {
        { "15 flashes", true },
        { "20 strokes", true },
        { "25 arcs", true },
        { "18 flashes 1 nm apart", true },
        { "1 500 arcs of 0.9 m", true },
        { "1 500 arcs of 0.9 m 1 nm apart", false },
        { "random contour", false },
        { "3 000 slivers 1 nm apart", true },
        { "3 000 slivers 2 nm apart", false },
    };

    [Theory]
    [MemberData(nameof(Layers))]
    public void SurveyOfACrowdedBoardEnds(string shapes, bool isCertain)
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, -20, -20, -10, -10).Rectangle(2, -20, -20, 0, 0).PlatedSlot(-15, -15, -15, -15, 1);
        board.WriteBrief("  - {}");
        string top = Directory.GetFiles(board.Folder).First(file => File.ReadAllText(file).Contains("Copper,L1", StringComparison.Ordinal));
        File.WriteAllText(top, "G04 top*\n%TF.FileFunction,Copper,L1,Top*%\n" + TextOf(shapes));
        TimeSpan before = Environment.CpuUsage.TotalTime;

        Board surveyed = Analysis.Survey(board.Folder).Board;

        double cpuS = (Environment.CpuUsage.TotalTime - before).TotalSeconds;
        cpuS.ShouldBeLessThan(MostCpuS);
        bool isKnown = !surveyed.Diagnostics.Any(diagnostic => diagnostic.Code is "CUP004" || (diagnostic.Code is "NET007" && diagnostic.AffectsCopper));
        isKnown.ShouldBe(isCertain, string.Join("\n", surveyed.Diagnostics));
    }

    private static string TextOf(string shapes) => shapes switch
    {
        "15 flashes" => StackedGerber.Flashes(15, 10, 0),
        "20 strokes" => StackedGerber.Strokes(20, 0.5, 0),
        "25 arcs" => StackedGerber.Arcs(25, 0.5, 5_000_000, 0),
        "18 flashes 1 nm apart" => StackedGerber.Flashes(18, 10, 1),
        "1 500 arcs of 0.9 m" => StackedGerber.Arcs(1_500, 0.5, 900_000_000, 0),
        "1 500 arcs of 0.9 m 1 nm apart" => StackedGerber.Arcs(1_500, 0.5, 900_000_000, 1),
        "random contour" => StackedGerber.RandomContour(20_000, 1),
        "3 000 slivers 1 nm apart" => StackedGerber.Slivers(3_000, 1, 1),
        "3 000 slivers 2 nm apart" => StackedGerber.Slivers(3_000, 1, 2),
        _ => throw new ArgumentOutOfRangeException(nameof(shapes)),
    };
}

/// <summary>Tests that measure processor time, while no others run.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;
