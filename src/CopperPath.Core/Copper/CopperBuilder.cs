using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Copper;

/// <summary>Artwork of a copper layer -> separate pieces of copper, in painting order, polarity honoured.</summary>
public static class CopperBuilder
{
    /// <summary>
    /// Builds the copper of one layer.
    /// </summary>
    /// <param name="number">Layer number, 1 = top.</param>
    /// <param name="artwork">The drawn image.</param>
    /// <param name="profile">Board outline; needed only where the file draws absent copper (negative polarity).</param>
    /// <param name="isNegative">Whether it draws absent copper; null leaves it to the file.</param>
    /// <returns>
    /// The layer, or null with an error when a negative layer comes without a board outline, or when its outlines cross
    /// each other so often that building it would have no end.
    /// </returns>
    public static (CopperLayer? Layer, IReadOnlyList<Diagnostic> Diagnostics) Build(
        int number, LayerArtwork artwork, IReadOnlyList<PolygonNm> profile, bool? isNegative = null)
    {
        try
        {
            return isNegative ?? DeclaredNegative(artwork) ?? false
                ? BuildInverted(number, artwork, profile) : (new CopperLayer(number, artwork.File, Painted(artwork), artwork), []);
        }
        catch (EntangledOutlinesException entangled)
        {
            return (null, [Entangled(artwork, entangled)]);
        }
    }

    /// <summary>What an image covers when all is painted in its order, polarity of each object honoured.</summary>
    /// <exception cref="EntangledOutlinesException">Outlines cross each other too often; its source is the number of an object.</exception>
    public static IReadOnlyList<PolygonNm> Painted(LayerArtwork artwork) =>
        PolygonOperations.Paint([.. artwork.Objects.Select(StepOf)]);

    /// <summary>The one error of an image that was given up, at the first object where it is most crowded.</summary>
    public static Diagnostic Entangled(LayerArtwork artwork, EntangledOutlinesException entangled) => new(
        "CUP004", Severity.Error, artwork.Objects[entangled.SourceNumber].Position,
        string.Create(CultureInfo.InvariantCulture,
            $"outlines that cross or touch each other too often to be united, most near X {entangled.Place.X * 1e-6:0.###} mm, Y {entangled.Place.Y * 1e-6:0.###} mm"),
        "shapes as a board has them; the file was given up", AffectsCopper: true);

    /// <summary>The copper that an image of absent copper leaves inside the board outline.</summary>
    /// <exception cref="EntangledOutlinesException">Outlines cross each other too often; its source is the number of an object.</exception>
    internal static CopperLayer Inverted(int number, LayerArtwork artwork, IReadOnlyList<PolygonNm> profile)
    {
        IReadOnlyList<PolygonNm> image = Painted(artwork);
        try
        {
            return new CopperLayer(number, artwork.File, PolygonOperations.Subtract(RingsOf(profile), RingsOf(image)), artwork);
        }
        catch (EntangledOutlinesException entangled)
        {
            // Outlines that were united belong to no object any more: the first stands for the image.
            throw new EntangledOutlinesException(0, entangled.Place);
        }
    }

    private static (CopperLayer? Layer, IReadOnlyList<Diagnostic> Diagnostics) BuildInverted(
        int number, LayerArtwork artwork, IReadOnlyList<PolygonNm> profile)
    {
        SourcePosition where = SourcePosition.WholeFile(artwork.File);
        if (profile.Count == 0)
        {
            return (null, [new Diagnostic("CUP001", Severity.Error, where, "a layer drawn as absent copper, and no board outline",
                "a profile file, inside which the copper is what the image leaves", AffectsCopper: true)]);
        }

        return (Inverted(number, artwork, profile), [new Diagnostic("CUP002", Severity.Note, where,
            "a layer drawn as absent copper", "copper; it was inverted inside the board outline")]);
    }

    /// <summary>All rings of all polygons, as the polygon room's operations take them.</summary>
    public static IReadOnlyList<PointNm[]> RingsOf(IEnumerable<PolygonNm> polygons) =>
        [.. polygons.SelectMany(polygon => polygon.Rings)];

    private static PaintStep StepOf(PaintedObject painted) =>
        new(painted.Polarity == Polarity.Dark, painted.Rings, painted.Offset);

    /// <summary>True where the file says that it draws absent copper, false where it says copper, null where it says nothing.</summary>
    internal static bool? DeclaredNegative(LayerArtwork artwork) =>
        artwork.FileAttributes.TryGetValue(".FilePolarity", out IReadOnlyList<string>? fields) && fields.Count > 0
            ? string.Equals(fields[0], "Negative", StringComparison.OrdinalIgnoreCase)
            : null;
}
