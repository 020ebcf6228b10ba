using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>The lengths by which still air takes the size of a plate, from the plate's own outline.</summary>
/// <param name="AreaOverPerimeterM">Area of one face over its perimeter, metres: of a horizontal plate.</param>
/// <param name="HeightM">From its lowest to its highest point along the ordinate, metres: of an upright plate.</param>
public sealed record PlateSize(double AreaOverPerimeterM, double HeightM)
{
    /// <summary>A rectangle, sides in metres.</summary>
    public static PlateSize OfRectangle(double widthM, double heightM) => new(widthM * heightM / (2 * (widthM + heightM)), heightM);

    /// <summary>
    /// An outline of one or more pieces; air flows over each on its own, so the height is that of the tallest. Cut-outs count
    /// for nothing: the published forms know none.
    /// </summary>
    /// <param name="outline">At least one piece.</param>
    public static PlateSize Of(IReadOnlyList<PolygonNm> outline) => new(
        Units.MetresFromNm(outline.Sum(piece => Math.Abs(Ring.SignedAreaNm2(piece.Outer))) / outline.Sum(piece => Ring.PerimeterNm(piece.Outer))),
        Units.MetresFromNm(outline.Max(piece => piece.Bounds.HeightNm)));

    /// <summary>Length for one face, metres.</summary>
    public double LengthM(FacePosture posture) => posture == FacePosture.Vertical ? HeightM : AreaOverPerimeterM;
}
