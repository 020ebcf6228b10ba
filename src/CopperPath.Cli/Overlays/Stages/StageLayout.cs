using SkiaSharp;

namespace CopperPath.Cli.Overlays.Stages;

/// <summary>Where everything on a stage picture stands, pixels: worked out before anything is drawn.</summary>
/// <param name="Size">Picture size.</param>
/// <param name="View">The board view.</param>
/// <param name="Transform">Board coordinates to pixels.</param>
/// <param name="Texts">Lines of text outside the view.</param>
/// <param name="Ribbon">The stages in the order of the current.</param>
/// <param name="Ticks">Marks of the axes, millimetres.</param>
/// <param name="Labels">A plate for each fill.</param>
/// <param name="Ends">Marks where current enters and leaves.</param>
/// <param name="Parts">Outlines of parts; those too small for their designator go without.</param>
public sealed record StageLayout(
    SKSizeI Size,
    SKRect View,
    ViewTransform Transform,
    IReadOnlyList<TextRun> Texts,
    IReadOnlyList<RibbonChip> Ribbon,
    IReadOnlyList<AxisTick> Ticks,
    IReadOnlyList<StageLabel> Labels,
    IReadOnlyList<PlacedEnd> Ends,
    IReadOnlyList<PlacedPart> Parts);

/// <summary>A stage in the ribbon.</summary>
/// <param name="Box">Its box; an arrow leads to the next.</param>
/// <param name="Kind">Accent.</param>
/// <param name="Head">First line.</param>
/// <param name="Facts">Lines below it.</param>
public sealed record RibbonChip(SKRect Box, StageKind Kind, string Head, IReadOnlyList<string> Facts);

/// <summary>A mark of an axis.</summary>
/// <param name="At">On the edge of the view.</param>
/// <param name="IsAcross">True on the lower edge, false on the left one.</param>
/// <param name="Text">Millimetres.</param>
public sealed record AxisTick(SKPoint At, bool IsAcross, string Text);

/// <summary>A plate that names a fill.</summary>
/// <param name="Fill">Number of the fill in the scene.</param>
/// <param name="Plate">The plate.</param>
/// <param name="Lines">Its lines; the first is the name.</param>
/// <param name="Anchor">A place on the fill a leader leads to; null where the plate lies on the fill itself.</param>
public sealed record StageLabel(int Fill, SKRect Plate, IReadOnlyList<string> Lines, SKPoint? Anchor);

/// <summary>A mark where current enters or leaves.</summary>
/// <param name="End">What it marks.</param>
/// <param name="At">Its middle.</param>
/// <param name="RadiusPx">Its radius.</param>
/// <param name="TextAt">Baseline start of the amperes; null where there is no room.</param>
public sealed record PlacedEnd(StageEnd End, SKPoint At, float RadiusPx, SKPoint? TextAt);

/// <summary>A part's outline and the place of its designator; null where there is no room.</summary>
public sealed record PlacedPart(StagePartMark Part, SKRect Box, SKPoint? TextAt);
