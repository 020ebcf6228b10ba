using System.Globalization;
using System.Xml.Linq;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Report;

/// <summary>A via of the same current has the same shade on every layer of one review.</summary>
public sealed class OneViaScaleTests : IDisposable
{
    private readonly SyntheticBoard _board = new(3);

    /// <summary>
    /// 12 A go down one hole between layers 1 and 2 and on through two alike, far from it, between layers 2 and 3. By
    /// Kirchhoff's current law each of those takes 6 A, so a scale of its own would end there on layer 3.
    /// </summary>
    [Fact]
    public void AllLayersEndTheirViaScaleAtTheLargestCurrentOfTheReview()
    {
        _board.Draw(1, "%TO.N,FEED*%").Rectangle(1, 0, 0, 20, 10);
        _board.Draw(2, "%TO.N,FEED*%").Rectangle(2, 10, 0, 40, 10).PlatedSlot(15, 5, 15, 5, 0.3);
        _board.Draw(3, "%TO.N,FEED*%").Rectangle(3, 30, 0, 60, 10).PlatedSlot(35, 3, 35, 3, 0.3).PlatedSlot(35, 7, 35, 7, 0.3);
        string brief = _board.WriteBrief("""
              - name: Feed
                net: FEED
                terminals:
                  - { name: connector, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 10 mm] }, enters: 12 A }
                  - { name: load, rectangle: { layer: bottom, from: [58 mm, 0 mm], to: [60 mm, 10 mm] }, leaves: 12 A }
            """);
        string folder = Path.Combine(_board.Folder, "out");

        CommandRun.Of("check", brief, "--output", folder, "--pictures", "svg");

        foreach (string name in new[] { "layer-1", "layer-2", "layer-3" })
        {
            string[] texts = [.. XDocument.Load(Path.Combine(folder, name + ".svg")).Descendants()
                .Where(element => element.Name.LocalName == "text").Select(element => element.Value.Trim())];
            int heading = Array.IndexOf(texts, "Current in each plated hole, A");
            heading.ShouldBeGreaterThanOrEqualTo(0, name);
            texts.Skip(heading + 1).TakeWhile(text => double.TryParse(text, CultureInfo.InvariantCulture, out _)).Last().ShouldBe("12", name);
        }
    }

    public void Dispose() => _board.Dispose();
}
