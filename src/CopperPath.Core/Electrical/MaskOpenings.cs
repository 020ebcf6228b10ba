using CopperPath.Geometry;
using CopperPath.Meshing;
using CopperPath.Polygons;

namespace CopperPath.Electrical;

/// <summary>
/// Openings of the mask as marked rings of a mesh. They take the markers above those of contacts and barrels, which so keep
/// theirs inside an opening. Where rings overlap the lowest marker wins, so the deeper a ring lies in others the lower its
/// marker is: a pad inside the ring that a board's outline draws in the mask file is an opening in copper that is covered.
/// </summary>
internal static class MaskOpenings
{
    /// <param name="pieces">Openings, none overlapping another.</param>
    /// <param name="lastMarker">The highest marker that is taken.</param>
    public static IEnumerable<MarkedRing> Rings(IReadOnlyList<PolygonNm> pieces, int lastMarker)
    {
        PolygonNm[] holes = [.. pieces.SelectMany(piece => piece.Holes).Select(hole => new PolygonNm([.. hole.Reverse()], []))];
        PolygonLocator[] locators = [.. holes.Select(hole => new PolygonLocator([hole]))];
        int[] depths = [.. pieces.Select(piece => holes.Zip(locators)
            .Count(hole => hole.First.Bounds.Touches(piece.Bounds) && IsIn(piece, hole.Second)))];
        int deepest = depths.DefaultIfEmpty().Max();

        // Two markers for each depth, the higher one for openings and the lower for what stays covered in them.
        return pieces.Zip(depths).SelectMany(opening =>
        {
            int covered = lastMarker + 1 + (2 * (deepest - opening.Second));
            return opening.First.Holes.Select(hole => new MarkedRing([.. hole.Reverse()], covered))
                .Prepend(new MarkedRing(opening.First.Outer, covered + 1));
        });
    }

    /// <summary>The mesh with copper in openings marked as tinned and all other copper as plain.</summary>
    public static SheetMesh Tinned(SheetMesh mesh, int lastMarker) => mesh with
    {
        TriangleMarkers = Array.ConvertAll(mesh.TriangleMarkers, marker =>
            marker <= lastMarker ? marker : (marker - lastMarker) % 2 == 0 ? SheetMesh.Tinned : 0),
    };

    /// <summary>A piece beside a hole may share corners with its edge, so all corners are asked.</summary>
    private static bool IsIn(PolygonNm piece, PolygonLocator hole) => Array.TrueForAll(piece.Outer, corner => hole.Find(corner) >= 0);
}
