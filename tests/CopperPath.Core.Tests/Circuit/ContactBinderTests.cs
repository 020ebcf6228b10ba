using CopperPath.Artwork;
using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;

namespace CopperPath.Core.Tests.Circuit;

/// <summary>Pins of the brief as areas of contact.</summary>
public sealed class ContactBinderTests
{
    private static readonly SourcePosition Here = SourcePosition.WholeFile("brief.yaml");

    [Fact]
    public void PadsOfAPinThatTouchAreOneArea()
    {
        // Two squares that share an edge, drawn one micrometre apart in height.
        ContactArea[] areas = AreasOf((0, 0, 1000, 1000), (1000, 1, 2000, 1001));

        areas.ShouldHaveSingleItem();
        Ring.SignedAreaNm2(areas[0].Outline).ShouldBe(2e12);
    }

    [Fact]
    public void PadsOfAPinThatLieApartStayApart() =>
        AreasOf((0, 0, 1000, 1000), (1500, 0, 2500, 1000)).Length.ShouldBe(2);

    [Fact]
    public void CopperInsideAFrameOfPadsIsNoContact()
    {
        ContactArea[] areas = AreasOf((0, 0, 3000, 1000), (0, 2000, 3000, 3000), (0, 1000, 1000, 2000), (2000, 1000, 3000, 2000));

        PolygonOperations.Union([.. areas.Select(area => area.Outline)]).Sum(piece => piece.AreaNm2).ShouldBe(8e12);
    }

    /// <summary>Rectangles in micrometres, each a pad of the pin J1.1.</summary>
    private static ContactArea[] AreasOf(params (long X0, long Y0, long X1, long Y1)[] pads)
    {
        Net net = new("piece", false, [], [], [.. pads.Select(PadOf)]);
        NetList board = new([net], [new CopperLayer(1, "top.gbr", [], new LayerArtwork("top.gbr", [], new Dictionary<string, IReadOnlyList<string>>(), new BoxNm(0, 0, 1, 1)))], [], []);
        return [.. new ContactBinder(net, board, []).Bind(new PinContact("J1", "1", Here)).ShouldHaveSingleItem().Areas];
    }

    private static Pad PadOf((long X0, long Y0, long X1, long Y1) um)
    {
        PointNm[] ring = new BoxNm(um.X0 * 1000, um.Y0 * 1000, um.X1 * 1000, um.Y1 * 1000).ToRing();
        PaintedObject shape = new(PaintKind.Flash, Polarity.Dark, [ring], default, ring[0], ObjectLabels.None, Here);
        return new Pad(1, ring[0], new PinName("J1", "1"), shape);
    }
}
