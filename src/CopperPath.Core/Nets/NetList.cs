using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Nets;

/// <summary>All nets of a board, largest copper area first, and the layers they were found on.</summary>
/// <param name="Nets">Nets in descending order of area; ties by name.</param>
/// <param name="Layers">The layers, top to bottom.</param>
/// <param name="Diagnostics">Disagreements between claims and copper, inferred plating.</param>
/// <param name="Holes">Every drilled hole with the copper it meets, in file order.</param>
public sealed record NetList(
    IReadOnlyList<Net> Nets,
    IReadOnlyList<CopperLayer> Layers,
    IReadOnlyList<Diagnostic> Diagnostics,
    IReadOnlyList<HoleLanding> Holes)
{
    /// <summary>What a netlist of the board says to it; null when there is none.</summary>
    public NetlistAgreement? Netlist { get; init; }

    /// <summary>True when a file names the pin of at least one pad.</summary>
    public bool HasPins => Nets.Any(net => net.Pads.Any(pad => pad.Pin is not null));

    /// <summary>Holes taken as plated.</summary>
    public int PlatedHoleCount => Holes.Count(hole => hole.IsPlated);

    /// <summary>Those that meet copper on both outer layers of their span; planes between usually keep clear.</summary>
    public int PlatedHolesOnAllLayers => Holes.Count(hole => hole.IsPlated && hole.MeetsBothFaces);

    /// <summary>The net of that name, exactly as written, else the first one that also claims it, or null.</summary>
    public Net? Named(string name) =>
        Nets.FirstOrDefault(net => net.Name == name) ?? Nets.FirstOrDefault(net => net.ClaimedNames.Contains(name));

    /// <summary>The net whose copper covers a point of a layer, or null.</summary>
    public Net? At(int layer, PointNm point) => Nets.FirstOrDefault(net =>
        net.SheetOn(layer) is { } sheet
        && sheet.Islands.Any(island => island.Bounds.Contains(point))
        && new PolygonLocator(sheet.Islands).Find(point) >= 0);
}
