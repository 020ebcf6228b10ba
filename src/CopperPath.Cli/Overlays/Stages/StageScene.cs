using CopperPath.Geometry;

namespace CopperPath.Cli.Overlays.Stages;

/// <summary>
/// The power path on the board, stage by stage: pure data. Coordinates are board coordinates as the fabrication files give
/// them, seen from above.
/// </summary>
/// <param name="Title">What the picture is of.</param>
/// <param name="ViewNm">The part of the board to show; not empty.</param>
/// <param name="Outline">The board itself; may be empty when the files give none.</param>
/// <param name="LineArt">Copper of no stage, drawn as thin lines.</param>
/// <param name="Ribbon">The stages in the order of the current from source to load and back.</param>
/// <param name="Fills">Copper of the stages, in the same order.</param>
/// <param name="Parts">Parts of the path.</param>
/// <param name="Ends">Where current enters and leaves the stages.</param>
/// <param name="SeenFromBelow">True to mirror left and right, as the layer looks with the board turned over.</param>
/// <param name="Theme">Light for paper, dark for screens.</param>
/// <param name="WidthPx">Picture width, pixels.</param>
public sealed record StageScene(
    TitleBlock Title,
    BoxNm ViewNm,
    IReadOnlyList<PolygonNm> Outline,
    IReadOnlyList<PolygonNm> LineArt,
    IReadOnlyList<StageInWords> Ribbon,
    IReadOnlyList<StageFill> Fills,
    IReadOnlyList<StagePartMark> Parts,
    IReadOnlyList<StageEnd> Ends,
    bool SeenFromBelow,
    OverlayTheme Theme,
    int WidthPx)
{
    /// <summary>Text and lines this much larger than on a sheet of their own; for pictures shown small.</summary>
    public float TextScale { get; init; } = 1;

    /// <summary>False where amperes are not written beside the marks.</summary>
    public bool EndsHaveText { get; init; } = true;

    /// <summary>What lengths of text and lines are counted in, pixels.</summary>
    internal float UnitPx => TextScale * WidthPx / BaseWidthPx;

    /// <summary>Sizes are chosen for a picture this wide.</summary>
    private const float BaseWidthPx = 1800;
}

/// <summary>What the copper does; each has an accent of its own.</summary>
public enum StageKind
{
    Feed,
    Input,
    SwitchNode,
    Output,
    Return,
    Other,
}

/// <summary>A stage, or several alike, in the ribbon.</summary>
public sealed record StageInWords(StageKind Kind, string Name, string Facts);

/// <summary>The copper of a stage.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Name">How it is called.</param>
/// <param name="Facts">Its figures in a few words; may be empty.</param>
/// <param name="Copper">Its islands on the layers shown.</param>
public sealed record StageFill(StageKind Kind, string Name, string Facts, IReadOnlyList<PolygonNm> Copper);

/// <summary>A part of the path: the box round its pads and its designator.</summary>
public sealed record StagePartMark(string Name, BoxNm Box);

/// <summary>Where current enters or leaves a stage.</summary>
/// <param name="Kind">The stage's kind.</param>
/// <param name="At">Middle of the contacts.</param>
/// <param name="CurrentA">Amperes; negative where it leaves.</param>
/// <param name="Text">The same in words.</param>
public sealed record StageEnd(StageKind Kind, PointNm At, double CurrentA, string Text);
