using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.CrossCheck;

/// <summary>
/// The landmarks of a drawing. Pads are flashes in most files and small regions in others; the clearance of a hole in
/// a plane is a clear flash in some and a round hole in the area in others.
/// </summary>
internal static class LandmarkFinder
{
    /// <summary>Larger regions are areas, not pads. The project's choice; lands of bolts reach 10 mm.</summary>
    private const long LargestPadNm = 10 * Units.NmPerMm;

    /// <summary>A round hole in an area covers pi/4 of its box, an octagonal one 0.83; arcs flattened lie between.</summary>
    private const double LeastRoundShare = 0.74;
    private const double MostRoundShare = 0.84;

    /// <summary>Landmarks of a copper layer: pads, and the clearances in its areas.</summary>
    public static IReadOnlyList<Landmark> Of(CopperLayer layer) =>
        [.. Of(layer.Artwork), .. layer.Islands.SelectMany(island => island.Holes).Select(Clearance).OfType<Landmark>()];

    /// <summary>Landmarks that are drawn as such: flashes and small regions, each place and size once.</summary>
    public static IReadOnlyList<Landmark> Of(LayerArtwork artwork)
    {
        Dictionary<IReadOnlyList<PointNm[]>, (BoxNm Box, bool IsRound)> shapes = new(ReferenceEqualityComparer.Instance);
        HashSet<(PointNm, BoxNm)> seen = [];
        List<Landmark> landmarks = [];
        foreach (PaintedObject painted in artwork.Objects)
        {
            if (painted.Rings.Count == 0 || painted.Kind == PaintKind.Stroke)
            {
                continue;
            }

            if (!shapes.TryGetValue(painted.Rings, out (BoxNm Box, bool IsRound) shape))
            {
                BoxNm around = BoxNm.Around(painted.Rings.Select(BoxNm.Of));
                shapes[painted.Rings] = shape = (around, IsRound(painted.Rings[0], around));
            }

            BoxNm box = shape.Box.MovedBy(painted.Offset);
            PointNm at = painted.Kind == PaintKind.Flash ? painted.Anchor : box.Centre;
            if (Math.Max(box.WidthNm, box.HeightNm) <= LargestPadNm && seen.Add((at, box)))
            {
                landmarks.Add(new Landmark(at, box, painted.Polarity == Polarity.Dark ? LandmarkKind.Land : LandmarkKind.Clearance,
                    shape.IsRound, painted.Labels.ApertureFunction));
            }
        }

        return landmarks;
    }

    private static Landmark? Clearance(PointNm[] ring)
    {
        BoxNm box = BoxNm.Of(ring);
        Landmark clearance = new(box.Centre, box, LandmarkKind.Clearance, IsRound: true, null);
        return clearance.IsEven && box.WidthNm <= LargestPadNm && IsRound(ring, box) ? clearance : null;
    }

    private static bool IsRound(PointNm[] ring, BoxNm box) =>
        Math.Abs(Ring.SignedAreaNm2(ring)) / ((double)box.WidthNm * box.HeightNm) is >= LeastRoundShare and <= MostRoundShare;
}
