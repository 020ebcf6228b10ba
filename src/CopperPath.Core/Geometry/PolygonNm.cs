namespace CopperPath.Geometry;

/// <summary>
/// One connected piece of copper: an outer ring (counter-clockwise) and its holes (clockwise).
/// Rings do not repeat their first point; they may touch each other at single points but do not cross.
/// </summary>
public sealed record PolygonNm(PointNm[] Outer, PointNm[][] Holes)
{
    /// <summary>Bounds of the outer ring.</summary>
    public BoxNm Bounds { get; } = BoxNm.Of(Outer);

    /// <summary>Area inside the outer ring less the holes, in square nanometres.</summary>
    public double AreaNm2 => Ring.SignedAreaNm2(Outer) + Holes.Sum(Ring.SignedAreaNm2);

    /// <summary>Outer ring first, then the holes.</summary>
    public IEnumerable<PointNm[]> Rings => Holes.Prepend(Outer);
}
