using CopperPath.Brief;
using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>Areas on layers that share something by their size: the places of a component or a sink on the board.</summary>
/// <param name="Name">How reports call it.</param>
/// <param name="Areas">Counter-clockwise rings on layers.</param>
internal sealed record HeatPlace(string Name, IReadOnlyList<(int Layer, PointNm[] Outline)> Areas)
{
    public double AreaM2 => Areas.Sum(area => Ring.SignedAreaNm2(area.Outline)) * 1e-18;

    /// <summary>Places of the brief, found by <see cref="HeatPlaceCheck"/> to be on the board.</summary>
    public static HeatPlace Of(string name, Contact place, NetList nets) => new(name, place switch
    {
        ComponentContact component => [.. nets.Nets.SelectMany(net => net.Pads)
            .Where(pad => pad.Pin?.Component == component.Component)
            .SelectMany(pad => pad.Outlines.Select(outline => (pad.Layer, outline)))],
        RectangleContact rectangle => [(LayerOf(rectangle.Layer, nets), rectangle.Box.ToRing())],
        CircleContact circle => [(LayerOf(circle.Layer, nets), HoleOutline.Circle(circle.Centre, circle.DiameterNm / 2.0))],
        _ => throw new InvalidOperationException($"no heat spot can be {place.GetType().Name}"),
    });

    private static int LayerOf(LayerReference layer, NetList nets) => layer.Resolve(nets.Layers[^1].Number)!.Value;

    /// <summary>Its nodes and their shares.</summary>
    public HeatSpot On(TreeCells cells)
    {
        double wholeNm2 = Areas.Sum(area => Ring.SignedAreaNm2(area.Outline));
        return new HeatSpot(Name, [.. Areas.SelectMany(area => AreaShares.Of(cells, [area.Outline])
            .Select(part => (cells.NodeOn(area.Layer, part.Column), part.Share * Ring.SignedAreaNm2(area.Outline) / wholeNm2)))]);
    }
}
