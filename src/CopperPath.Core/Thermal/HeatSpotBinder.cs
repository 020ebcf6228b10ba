using CopperPath.Brief;
using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>Places of the brief -> nodes of the grid.</summary>
internal sealed class HeatSpotBinder(HeatGrid grid, NetList nets)
{
    private readonly int _layerCount = nets.Layers[^1].Number;

    /// <summary>A spot; without parts where the board has no such place, which the circuit has said by then.</summary>
    public HeatSpot Bind(string name, Contact place) => place switch
    {
        ComponentContact component => OfPads(name, component.Component),
        RectangleContact rectangle => OfArea(name, rectangle.Layer, rectangle.Box.ToRing()),
        CircleContact circle => OfArea(name, circle.Layer, HoleOutline.Circle(circle.Centre, circle.DiameterNm / 2.0)),
        _ => throw new InvalidOperationException($"no heat spot can be {place.GetType().Name}"),
    };

    private HeatSpot OfArea(string name, LayerReference layer, PointNm[] outline) =>
        new(name, layer.Resolve(_layerCount) is { } number ? CellShares.Of(grid, grid.PlaneOf(number), [outline]) : []);

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
