using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>Where everything on a picture stands, in pixels: worked out before anything is drawn, so that it can be checked.</summary>
/// <param name="Size">Picture size.</param>
/// <param name="Frame">The panel that holds the board and the number plates around it.</param>
/// <param name="View">The board view inside the panel.</param>
/// <param name="Transform">Board coordinates to pixels.</param>
/// <param name="Texts">Every line of text, in drawing order.</param>
/// <param name="FieldLegend">Legend of the shaded quantity; null when no sheet has a value.</param>
/// <param name="ViaLegend">Legend of the via currents; null without vias.</param>
/// <param name="ScaleBar">The length bar.</param>
/// <param name="KeyMap">The whole board in small; null where the view shows all of it.</param>
/// <param name="Keys">Swatches that explain the fills.</param>
/// <param name="Contours">Lines of equal value, each with at least one plate that says which.</param>
/// <param name="Vias">Marks of the plated holes, in drawing order.</param>
/// <param name="CallOuts">Call-outs inside the view, with their plates.</param>
/// <param name="ListedPlates">The plates that head the rows of the call-out list.</param>
/// <param name="Rules">Thin horizontal rules between the parts.</param>
public sealed record OverlayLayout(
    SKSizeI Size,
    SKRect Frame,
    SKRect View,
    ViewTransform Transform,
    IReadOnlyList<TextRun> Texts,
    LegendBar? FieldLegend,
    LegendBar? ViaLegend,
    LengthBar ScaleBar,
    KeyMap? KeyMap,
    IReadOnlyList<KeySwatch> Keys,
    IReadOnlyList<PlacedContour> Contours,
    IReadOnlyList<PlacedVia> Vias,
    IReadOnlyList<PlacedCallOut> CallOuts,
    IReadOnlyList<NumberPlate> ListedPlates,
    IReadOnlyList<SKRect> Rules);

/// <summary>One line of text.</summary>
/// <param name="Text">The line.</param>
/// <param name="Baseline">Start of its baseline, pixels.</param>
/// <param name="SizePx">Font size, pixels.</param>
/// <param name="IsStrong">True for the heavier weight.</param>
/// <param name="Ink">Colour role.</param>
/// <param name="Bounds">Advance width by ascent and descent: glyphs do not reach beyond it.</param>
public sealed record TextRun(string Text, SKPoint Baseline, float SizePx, bool IsStrong, Ink Ink, SKRect Bounds);

/// <summary>Which of the theme's colours a line of text has.</summary>
public enum Ink
{
    Main,
    Muted,
    Accent,
    OnAccent,
}

/// <summary>A horizontal legend bar.</summary>
/// <param name="Bar">The shaded bar.</param>
/// <param name="Scale">The scale it shows.</param>
/// <param name="Ticks">Abscissas of the ticks, one per tick of the scale.</param>
/// <param name="PeakXPx">Abscissa of the largest value shown, at the bar's end when it lies beyond.</param>
/// <param name="RunsOver">True when values lie above the last shade.</param>
/// <param name="IsWedge">True when the size of a mark grows with the value too.</param>
public sealed record LegendBar(
    SKRect Bar, ValueScale Scale, IReadOnlyList<float> Ticks, float PeakXPx, bool RunsOver, bool IsWedge);

/// <summary>A bar of round length.</summary>
public sealed record LengthBar(SKRect Bar, double LengthMm);

/// <summary>The whole board in small.</summary>
/// <param name="Box">The map, pixels.</param>
/// <param name="Transform">Board coordinates to the map.</param>
/// <param name="Shown">The part the view shows.</param>
public sealed record KeyMap(SKRect Box, ViewTransform Transform, SKRect Shown);

/// <summary>A small sample of a fill or mark.</summary>
public sealed record KeySwatch(SKRect Box, KeyKind Kind);

/// <summary>What a swatch explains.</summary>
public enum KeyKind
{
    OtherCopper,
    UnsolvedCopper,
    Via,
    ViaOverLimit,
}

/// <summary>A number on its plate; the plate's shape tells the rank. A plate without a number explains the shape.</summary>
public sealed record NumberPlate(SKRect Box, int? Number, CallOutRank Rank);

/// <summary>A call-out on the board: ring, leader and plate.</summary>
/// <param name="CallOut">The call-out.</param>
/// <param name="Plate">The plate; null when no free place was found, which the list then says.</param>
/// <param name="Spot">The spot, pixels.</param>
/// <param name="RingRadiusPx">Radius of the ring round the spot.</param>
/// <param name="Extent">Box round all the call-out is about, drawn in place of the ring; null where the ring says it.</param>
/// <param name="LeaderStart">Leader end on the ring or on the box.</param>
/// <param name="LeaderEnd">Leader end on the plate.</param>
public sealed record PlacedCallOut(
    CallOut CallOut,
    SKPoint Spot,
    float RingRadiusPx,
    SKRect? Extent,
    NumberPlate? Plate,
    SKPoint LeaderStart,
    SKPoint LeaderEnd)
{
    /// <summary>True when a box meets any part of it.</summary>
    public bool Covers(SKRect box)
    {
        SKRect ring = SKRect.Create(Spot.X - RingRadiusPx, Spot.Y - RingRadiusPx, 2 * RingRadiusPx, 2 * RingRadiusPx);
        return (Extent ?? ring).IntersectsWith(box)
            || (Plate is { } plate && (plate.Box.IntersectsWith(box) || CallOutPlacement.SegmentMeets(LeaderStart, LeaderEnd, box)));
    }
}
