using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.Copper;

/// <summary>The finished copper of one layer before drilling.</summary>
/// <param name="Number">Layer number, 1 = top.</param>
/// <param name="File">File the layer was drawn in.</param>
/// <param name="Islands">Separate pieces of copper; they touch each other at most in single points.</param>
/// <param name="Artwork">The drawn objects the islands came from: pads and labels are looked up there.</param>
public sealed record CopperLayer(
    int Number,
    string File,
    IReadOnlyList<PolygonNm> Islands,
    LayerArtwork Artwork)
{
    /// <summary>Bounds of all islands.</summary>
    public BoxNm Bounds { get; } = BoxNm.Around(Islands.Select(island => island.Bounds));

    /// <summary>Copper area in square metres.</summary>
    public double AreaM2 => Islands.Sum(island => island.AreaNm2) * 1e-18;
}
