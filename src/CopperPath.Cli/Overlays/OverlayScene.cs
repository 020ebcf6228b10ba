using CopperPath.Geometry;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// Everything one review picture shows: pure data, one layer at a time. Coordinates are board coordinates as the
/// fabrication files give them (seen from above), whichever side the picture is drawn from.
/// </summary>
/// <param name="Title">What the picture is of.</param>
/// <param name="ViewNm">The part of the board to show; not empty.</param>
/// <param name="Outline">The board itself; may be empty when the files give none.</param>
/// <param name="QuietCopper">Copper of other nets on this layer, drawn faintly.</param>
/// <param name="NetCopper">Copper of the net that was solved.</param>
/// <param name="Sheets">The solved field; net copper outside the sheets is drawn as not solved.</param>
/// <param name="Vias">Plated holes of the net.</param>
/// <param name="CallOuts">Numbered remarks; numbers are the caller's and are kept.</param>
/// <param name="Scale">The quantity that shades the sheets.</param>
/// <param name="SeenFromBelow">True to mirror left and right, as the layer looks with the board turned over.</param>
/// <param name="Theme">Light for paper, dark for screens.</param>
/// <param name="WidthPx">
/// Picture width in pixels, at least <see cref="MinimumWidthPx"/>; the height follows from the contents.
/// </param>
public sealed record OverlayScene(
    TitleBlock Title,
    BoxNm ViewNm,
    IReadOnlyList<PolygonNm> Outline,
    IReadOnlyList<PolygonNm> QuietCopper,
    IReadOnlyList<PolygonNm> NetCopper,
    IReadOnlyList<ShadedSheet> Sheets,
    IReadOnlyList<ViaMark> Vias,
    IReadOnlyList<CallOut> CallOuts,
    ScaleSpec Scale,
    bool SeenFromBelow,
    OverlayTheme Theme,
    int WidthPx)
{
    /// <summary>Below this width the legend and the call-outs no longer fit beside each other legibly.</summary>
    public const int MinimumWidthPx = 600;

    /// <summary>Beyond this width a picture of a long board takes hundreds of megabytes to draw.</summary>
    public const int MaximumWidthPx = 8000;

    /// <summary>
    /// Top of the via current scale in amperes, to give several pictures one scale; null takes it from the vias.
    /// </summary>
    public double? ViaScaleTopA { get; init; }

    /// <summary>The whole board with its margin, for a small map of what part the view shows; null where the view shows all.</summary>
    public BoxNm? WholeNm { get; init; }

    /// <summary>What lines of equal value run through, across all copper and between it; null for none.</summary>
    public LevelField? Levels { get; init; }
}

/// <summary>Ground colours of a picture.</summary>
public enum OverlayTheme
{
    /// <summary>Warm light grey, for paper and reports.</summary>
    Light,

    /// <summary>Near-black grey, for screens.</summary>
    Dark,
}
