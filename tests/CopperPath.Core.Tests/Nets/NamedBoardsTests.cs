using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Core.Tests.Copper;
using CopperPath.Core.Tests.Polygons;
using CopperPath.Nets;
using NetTopologySuite.Operation.Distance;

namespace CopperPath.Core.Tests.Nets;

/// <summary>
/// The boards whose artwork names nets (X2 attribute .N): every name on one conductor and one name on each, but for what
/// the data itself explains.
/// </summary>
public sealed class NamedBoardsTests
{
    /// <summary>Objects that are themselves a component made of copper (Gerber layer format, aperture function EtchedComponent).</summary>
    private const string EtchedComponent = "EtchedComponent";

    [Theory]
    [InlineData("bitaxe-ultra", 93, 93, 0, 0)]
    [InlineData("eez-aux-ps", 56, 48, 4, 0)]
    [InlineData("esp32-poe-b2", 131, 128, 1, 1)]
    [InlineData("picopd-v12", 80, 78, 0, 2)]
    [InlineData("thunderscope-r53", 632, 631, 0, 1)]
    public void NamesAgreeWithTheCopperButForWhatTheDataExplains(string name, int names, int agreeing, int merged, int split)
    {
        Board board = Analysis.Survey(SharedData.Require("boards-open", name)).Board;
        NetList nets = board.Nets.ShouldNotBeNull();
        NameAgreement agreement = new(nets);

        agreement.OffCopper.ShouldBe(0);
        (agreement.Names, agreement.Agreeing, agreement.Merged.Count, agreement.Split.Count).ShouldBe((names, agreeing, merged, split));
        List<string> exceptions = [];
        if (merged > 0)
        {
            // Without the copper that the artwork calls a component, no two names meet: it alone joined them.
            NetList without = NetFinder.Find([.. nets.Layers.Select(WithoutEtchedComponents)], board.Drills);
            new NameAgreement(without).Merged.ShouldBeEmpty();
            exceptions.AddRange(agreement.Merged.Select(entry => $"| {name} | {string.Join(" and ", entry.Names.Select(Quoted))} | one conductor | {TiesOn(nets, entry.Net)} |"));
        }

        foreach ((string splitName, IReadOnlyList<(Net Net, PaintedObject[] Objects)> pieces) in agreement.Split)
        {
            foreach ((Net net, PaintedObject[] objects) in pieces.Skip(1))
            {
                // The only part on a piece apart is one whose other pads may be joined inside it, and nothing is drawn to the rest.
                PinName[] pins = [.. objects.Select(painted => painted.Labels.Pin).OfType<PinName>().Distinct()];
                pins.Select(pin => pin.Component).Distinct().ShouldHaveSingleItem();
                double gapMm = GapMm(net, [.. pieces.Select(piece => piece.Net).Where(other => other != net)]);
                gapMm.ShouldBeGreaterThan(0);
                exceptions.Add(string.Create(CultureInfo.InvariantCulture,
                    $"| {name} | {Quoted(splitName)} | a piece apart, {objects.Length} named objects | no pins on it but {string.Join(", ", pins.Select(pin => pin.Text))}; {gapMm:0.000} mm of bare board to the nearest other piece |"));
            }
        }

        CopperCheckedDocument.ShouldSay("Rebuilt nets against X2 net names", name, [string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {agreement.Named} | {agreement.Names} | {agreement.Agreeing} | {agreement.Merged.Count} | {agreement.Split.Count} |")]);
        CopperCheckedDocument.ShouldSay("Exceptions, each explained by the data", name, exceptions);
    }

    private static CopperLayer WithoutEtchedComponents(CopperLayer layer)
    {
        LayerArtwork artwork = layer.Artwork;
        return CopperBuilder.Build(layer.Number,
            artwork with { Objects = [.. artwork.Objects.Where(painted => !IsEtchedComponent(painted))] }, []).Layer.ShouldNotBeNull();
    }

    private static bool IsEtchedComponent(PaintedObject painted) => painted.Labels.ApertureFunction == EtchedComponent;

    /// <summary>The etched components whose copper lies on a net.</summary>
    private static string TiesOn(NetList nets, Net net) => string.Join(", ", nets.Layers.SelectMany(layer =>
        layer.Artwork.Objects.Where(painted => IsEtchedComponent(painted) && RepresentativePoints.Of(painted).Any(point => nets.At(layer.Number, point) == net)))
        .Select(painted => $"tied by the etched component {painted.Labels.Component} (`{painted.Position}`)"));

    /// <summary>Least distance on any layer, by NetTopologySuite.</summary>
    private static double GapMm(Net piece, IReadOnlyList<Net> others) => piece.Sheets.SelectMany(sheet => others
        .Select(other => other.SheetOn(sheet.Layer)).OfType<NetSheet>()
        .Select(other => IndexedFacetDistance.Distance(Oracle.ToNts(sheet.Islands), Oracle.ToNts(other.Islands)) / 1e6)).Min();

    private static string Quoted(string name) => $"`{name}`";
}
