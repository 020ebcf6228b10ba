using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Copper;

/// <summary>Board outline drawn with a thin pen -> filled board, cut-outs left out.</summary>
public static class ProfileBuilder
{
    /// <returns>The board's pieces; empty when no contour closes.</returns>
    /// <exception cref="EntangledOutlinesException">Its lines cross or touch each other too often.</exception>
    public static IReadOnlyList<PolygonNm> Build(IEnumerable<LayerArtwork> profiles)
    {
        List<PointNm[]> loops = [];
        foreach (LayerArtwork profile in profiles)
        {
            loops.AddRange(Loops(profile));
            loops.AddRange(profile.Objects.Where(painted => painted.Kind == PaintKind.Region)
                .SelectMany(painted => painted.Rings.Select(ring => Array.ConvertAll(ring, p => p + painted.Offset))));
        }

        // Loops alternate between board and cut-out from the outside in, whichever way they were drawn.
        return PolygonOperations.InsideOddNumber(loops);
    }

    /// <summary>The lines of a drawing that close, joined end to end.</summary>
    /// <exception cref="EntangledOutlinesException">Too many ends lie near each other.</exception>
    public static IEnumerable<PointNm[]> Loops(LayerArtwork drawing) =>
        new EndJoiner([.. drawing.Contours.Where(contour => contour.Length > 1)]).Loops();
}
