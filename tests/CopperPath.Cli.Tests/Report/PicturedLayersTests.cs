using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CopperPath.Cli.Tests.Commands;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Cli.Tests.Report;

/// <summary>A board whose middle layer has nothing but copper of another net: pictures of the outer layers only, one scale with the page.</summary>
public sealed partial class PicturedLayersTests : IDisposable
{
    private readonly SyntheticBoard _board = new(3);
    private readonly CommandRun _run;
    private readonly string _folder;

    public PicturedLayersTests()
    {
        _board.Draw(1, "%TO.N,FEED*%").Rectangle(1, 0, 0, 20, 10).Rectangle(1, 20, 4.5, 25, 5.5).Rectangle(1, 25, 0, 40, 10);
        _board.Draw(2, "%TO.N,OTHER*%").Rectangle(2, 0, 0, 30, 10);
        _board.Draw(3, "%TO.N,FEED*%").Rectangle(3, 31, 0, 60, 10).PlatedSlot(35, 5, 35, 5, 1);
        string brief = _board.WriteBrief("""
              - name: Feed
                net: FEED
                terminals:
                  - { name: connector, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 10 mm] }, enters: 12 A }
                  - { name: load, rectangle: { layer: bottom, from: [58 mm, 0 mm], to: [60 mm, 10 mm] }, leaves: 12 A }
            """);
        _folder = Path.Combine(_board.Folder, "out");
        _run = CommandRun.Of("check", brief, "--output", _folder, "--pictures", "svg");
    }

    [Fact]
    public void ALayerWithoutReviewedCopperHasNoPictureAndTheOutputSaysSo()
    {
        Directory.EnumerateFiles(_folder, "*layer-*.svg").Select(Path.GetFileName).Order(StringComparer.Ordinal)
            .ShouldBe(["layer-1.svg", "layer-3.svg", "rise-layer-1.svg", "rise-layer-3.svg"]);
        _run.Output.ShouldContain("No picture of layer 2: no reviewed copper with current there.");
    }

    [Theory]
    [InlineData("layer-1", "density")]
    [InlineData("layer-3", "density")]
    [InlineData("rise-layer-1", "rise")]
    public void PageAndPicturesEndTheirScalesAtOneValue(string picture, string quantity)
    {
        string page = File.ReadAllText(Path.Combine(_folder, "report.html"));
        using JsonDocument data = JsonDocument.Parse(BoardData().Match(page).Groups[1].Value);
        JsonElement scale = data.RootElement.GetProperty("quantities").EnumerateArray()
            .Single(entry => entry.GetProperty("id").GetString() == quantity).GetProperty("scales")[0];
        string[] onPage = [.. scale.GetProperty("ticks").EnumerateArray().Select(tick => tick.GetProperty("label").GetString()!)];

        string[] texts = [.. XDocument.Load(Path.Combine(_folder, picture + ".svg")).Descendants()
            .Where(element => element.Name.LocalName == "text").Select(element => element.Value.Trim())];
        int heading = Array.FindIndex(texts, text => text is "Current density, A/mm²" or "Temperature rise, K");

        texts.Skip(heading + 1).Take(onPage.Length).ShouldBe(onPage);
    }

    [Fact]
    public void OnlyPicturesOfTheCurrentSayWhereTheResistivityIsTaken()
    {
        File.ReadAllText(Path.Combine(_folder, "layer-1.svg")).ShouldContain("resistivity of copper at");
        File.ReadAllText(Path.Combine(_folder, "rise-layer-1.svg")).ShouldNotContain("resistivity of copper at");
    }

    public void Dispose() => _board.Dispose();

    [GeneratedRegex("<script type=\"application/json\" id=\"board-data\">(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex BoardData();
}
