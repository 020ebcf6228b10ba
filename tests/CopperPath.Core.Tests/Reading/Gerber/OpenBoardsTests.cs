using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>Real boards must read without an error that touches copper.</summary>
public sealed class OpenBoardsTests
{
    private static readonly string[] NoGerberExtensions =
    [
        ".drl", ".txt", ".md", ".gbrjob", ".pos", ".csv", ".ncdrill", ".apr", ".drd",
    ];

    public static TheoryData<string> Boards =>
    [
        "bitaxe-ultra", "eez-aux-ps", "eez-dcp405-r4", "esp32-poe-b2", "micro-driver-v2", "opsis", "picopd-v12",
        "simplefoc-powershield", "sonata-one-r09", "thunderscope-r53", "vesc-4",
    ];

    [Theory]
    [MemberData(nameof(Boards))]
    public void ReadsEveryGerberFileOfTheBoard(string board)
    {
        string folder = SharedData.Require("boards-open", board);
        string[] files = [.. Directory.GetFiles(folder)
            .Where(f => !NoGerberExtensions.Contains(Path.GetExtension(f).ToLowerInvariant()))
            .Order(StringComparer.Ordinal)];
        files.ShouldNotBeEmpty();
        foreach (string file in files)
        {
            // A mask without .FileFunction may say that its polarity is negative: only its name tells it is no copper.
            bool isMask = Path.GetExtension(file).ToUpperInvariant() is ".GTS" or ".GBS";
            GerberReading reading = GerberReader.Read(
                Path.GetFileName(file),
                File.ReadAllBytes(file),
                new GerberReadOptions { PurposeIsCopper = !isMask });
            reading.Diagnostics.Where(d => d.Severity == Severity.Error || d.AffectsCopper).ShouldBeEmpty();
            LayerArtwork artwork = reading.Artwork.ShouldNotBeNull();
            TestContext.Current.TestOutputHelper?.WriteLine(
                $"{artwork.File}: {artwork.Objects.Count} objects, "
                + string.Join(", ", reading.Diagnostics.GroupBy(d => d.Code).Select(g => $"{g.Key} x{g.Count()}: {g.First()}")));
        }
    }
}
