using CopperPath.DemoBoards.Kit;
using NetTopologySuite.Geometries;

namespace CopperPath.DemoBoards.Drawing;

/// <summary>Something on a layer of artwork, with what the attributes of a file may say of it.</summary>
/// <param name="Function">Aperture function, without the leading dot name; empty for none.</param>
/// <param name="Net">Net name; null where nets have no meaning, empty for copper of no net.</param>
/// <param name="Part">Reference designator, or null.</param>
/// <param name="Pin">Pin, or null.</param>
public abstract record DrawnObject(string Function, string? Net, string? Part, string? Pin);

/// <summary>A shape stamped at a point.</summary>
public sealed record Flash(PadShape Shape, PointMm At, string Function, string? Net = null, string? Part = null, string? Pin = null)
    : DrawnObject(Function, Net, Part, Pin);

/// <summary>A round pen drawn along a path.</summary>
public sealed record Stroke(double WidthMm, IReadOnlyList<PointMm> Path, string Function, string? Net = null, string? Part = null)
    : DrawnObject(Function, Net, Part, null);

/// <summary>A quarter turn counter-clockwise of a round pen, from a start to an end about a centre.</summary>
public sealed record QuarterArc(double WidthMm, PointMm Start, PointMm End, PointMm Centre, string Function)
    : DrawnObject(Function, null, null, null);

/// <summary>A filled area, possibly with holes.</summary>
public sealed record Region(Polygon Area, string Function, string? Net) : DrawnObject(Function, Net, null, null);
