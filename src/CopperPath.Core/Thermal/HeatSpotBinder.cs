using CopperPath.Brief;
using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>Places of the brief, found by <see cref="HeatPlaceCheck"/> to be on the board, -> nodes of the grid.</summary>
internal sealed class HeatSpotBinder(HeatGrid grid, NetList nets)
{
    private readonly int _layerCount = nets.Layers[^1].Number;

    public HeatSpot Bind(string name, Contact place) => place switch
    {
        ComponentContact component => OfPads(name, component.Component),
        RectangleContact rectangle => OfArea(name, rectangle.Layer, rectangle.Box.ToRing()),
        CircleContact circle => OfArea(name, circle.Layer, HoleOutline.Circle(circle.Centre, circle.DiameterNm / 2.0)),
        _ => throw new InvalidOperationException($"no heat spot can be {place.GetType().Name}"),
    };

    private HeatSpot OfArea(string name, LayerReference layer, PointNm[] outline) =>
        new(name, CellShares.Of(grid, grid.PlaneOf(layer.Resolve(_layerCount)!.Value), [outline]));

    private HeatSpot OfPads(string name, string component)
    {
        List<(int Layer, PointNm[] Outline)> outlines = [.. nets.Nets.SelectMany(net => net.Pads)
            .Where(pad => pad.Pin?.Component == component)
            .SelectMany(pad => pad.Outlines.Select(outline => (pad.Layer, outline)))];
        double totalNm2 = outlines.Sum(pad => Ring.SignedAreaNm2(pad.Outline));
        return new HeatSpot(name, [.. outlines.SelectMany(pad => CellShares.Of(grid, grid.PlaneOf(pad.Layer), [pad.Outline])
            .Select(part => (part.Node, part.Share * Ring.SignedAreaNm2(pad.Outline) / totalNm2)))]);
    }
}
