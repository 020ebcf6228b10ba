using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>Refuses places of the brief's thermal section that the board does not have.</summary>
public static class HeatPlaceCheck
{
    /// <param name="section">What the brief says.</param>
    /// <param name="nets">Pads and layers.</param>
    /// <param name="bounds">Extent of the board.</param>
    public static IReadOnlyList<Diagnostic> Run(ThermalSection section, NetList nets, BoxNm bounds) =>
        [.. section.Losses.Select(loss => loss.Place).Concat(section.Sinks.Select(sink => sink.Place))
            .Select(place => Fault(place, nets, bounds)).OfType<Diagnostic>()];

    private static Diagnostic? Fault(Contact place, NetList nets, BoxNm bounds) => place switch
    {
        ComponentContact { Component: var name } => nets.Nets.Any(net => net.Pads.Any(pad => pad.Pin?.Component == name)) ? null
            : new Diagnostic("HEA001", Severity.Error, place.Position, $"the component {name}", "a component whose pads the files name"),
        RectangleContact rectangle => Area(rectangle.Layer, rectangle.Box.ToRing(), place.Position, nets, bounds),
        CircleContact circle => Area(
            circle.Layer, HoleOutline.Circle(circle.Centre, circle.DiameterNm / 2.0), place.Position, nets, bounds),
        _ => throw new InvalidOperationException($"no heat spot can be {place.GetType().Name}"),
    };

    private static Diagnostic? Area(LayerReference layer, PointNm[] outline, SourcePosition position, NetList nets, BoxNm bounds)
    {
        if (layer.Resolve(nets.Layers[^1].Number) is null)
        {
            return new Diagnostic("HEA002", Severity.Error, position, $"layer {layer}", $"a layer of the board, which has {nets.Layers[^1].Number}");
        }

        return outline.All(bounds.Contains) ? null
            : new Diagnostic("HEA003", Severity.Error, position, "an area that reaches beyond the board", "one inside its extent");
    }
}
