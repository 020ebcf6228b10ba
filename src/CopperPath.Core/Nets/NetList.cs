using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Nets;

/// <summary>All nets of a board, largest copper area first, and the layers they were found on.</summary>
/// <param name="Nets">Nets in descending order of area; ties by name.</param>
/// <param name="Layers">The layers, top to bottom.</param>
/// <param name="Diagnostics">Disagreements between claims and copper, inferred plating.</param>
/// <param name="PlatedHoleCount">Holes taken as plated.</param>
/// <param name="PlatedHolesOnAllLayers">Those that meet copper on both outer layers of their span.</param>
public sealed record NetList(
    IReadOnlyList<Net> Nets,
    IReadOnlyList<CopperLayer> Layers,
    IReadOnlyList<Diagnostic> Diagnostics,
    int PlatedHoleCount,
    int PlatedHolesOnAllLayers)
{
    /// <summary>The net of that name, exactly as written, or null.</summary>
    public Net? Named(string name) => Nets.FirstOrDefault(net => net.Name == name);

    /// <summary>The net whose copper covers a point of a layer, or null.</summary>
    public Net? At(int layer, PointNm point) => Nets.FirstOrDefault(net =>
        net.SheetOn(layer) is { } sheet
        && sheet.Islands.Any(island => island.Bounds.Contains(point))
        && new PolygonLocator(sheet.Islands).Find(point) >= 0);
}
