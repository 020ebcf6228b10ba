using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// One step in painting a picture: the places around which the rings, taken together, wind a number of times other
/// than zero.
/// </summary>
/// <param name="IsDark">True adds the places to the picture, false takes them away from what is there already.</param>
/// <param name="Rings">Rings in nanometres.</param>
/// <param name="Offset">Added to every point, so that steps may share their rings.</param>
public readonly record struct PaintStep(bool IsDark, IReadOnlyList<PointNm[]> Rings, PointNm Offset);
