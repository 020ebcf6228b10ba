using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>What kind of drawing operation made an object.</summary>
public enum PaintKind
{
    Flash,
    Stroke,
    Region,
}

/// <summary>
/// One graphical object of a layer, flattened to rings. The object covers the points whose winding number over
/// all its rings is not zero: outer rings run counter-clockwise, holes clockwise, neither repeats its first point.
/// Objects of a layer are painted in list order: dark adds, clear removes what is there already.
/// </summary>
/// <param name="Kind">Flash, stroke (line or arc) or region contour.</param>
/// <param name="Polarity">Effective polarity (block toggles already applied).</param>
/// <param name="Rings">Rings in nanometres; arrays may be shared between objects and are never written.</param>
/// <param name="Offset">Added to every ring point: lets all flashes of one aperture share their rings.</param>
/// <param name="Anchor">Flash origin, stroke start, or first contour point: the place a person would point at.</param>
/// <param name="Labels">Claims of the file about the object.</param>
/// <param name="Position">Where in the file the object was made.</param>
public sealed record PaintedObject(
    PaintKind Kind,
    Polarity Polarity,
    IReadOnlyList<PointNm[]> Rings,
    PointNm Offset,
    PointNm Anchor,
    ObjectLabels Labels,
    SourcePosition Position);
