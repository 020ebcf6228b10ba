using System.Xml.Linq;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Report;

/// <summary>Pictures show the whole board, or the part the current keeps to where that is small.</summary>
public sealed class PicturedAreaTests : IDisposable
{
    private readonly SyntheticBoard _board = new(2);

    /// <summary>10 mm of copper with current at the end of a board of 100 mm: drawn as a whole, its length bar would stand for 10 or 20 mm.</summary>
    [Fact]
    public void ASmallPowerSectionIsShownLargeWithAMapOfTheBoard()
    {
        string[] texts = TextsOf(boardMm: 100);

        texts.ShouldContain("Part of the board shown");
        texts.ShouldContain("Length, 1 mm");
    }

    [Fact]
    public void APowerSectionThatFillsTheBoardIsShownWithAllOfIt()
    {
        string[] texts = TextsOf(boardMm: 12);

        texts.ShouldNotContain("Part of the board shown");
    }

    public void Dispose() => _board.Dispose();

    private string[] TextsOf(double boardMm)
    {
        _board.Draw(1, "%TO.N,FEED*%").Rectangle(1, 0, 0, 10, 6);
        _board.Draw(2, "%TO.N,OTHER*%").Rectangle(2, 0, 0, boardMm, boardMm / 2);
        string brief = _board.WriteBrief("""
              - name: Feed
                net: FEED
                terminals:
                  - { name: connector, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 6 mm] }, enters: 3 A }
                  - { name: load, rectangle: { layer: top, from: [9 mm, 0 mm], to: [10 mm, 6 mm] }, leaves: 3 A }
            """);
        string folder = Path.Combine(_board.Folder, "out");
        CommandRun.Of("check", brief, "--output", folder, "--pictures", "svg", "--picture-theme", "dark");
        return [.. XDocument.Load(Path.Combine(folder, "layer-1.svg")).Descendants()
            .Where(element => element.Name.LocalName == "text").Select(element => element.Value.Trim())];
    }
}
