using CopperPath.Cli.Overlays;
using CopperPath.Cli.Overlays.Stages;

namespace CopperPath.Cli.Report.Html;

/// <summary>The power path on the board as the page's first figure: inside the page, so that it is there without script and network.</summary>
internal static class StageFigure
{
    /// <summary>Twice what it takes up on the page, for screens of many pixels.</summary>
    private const int WidthPx = 1480;
    private const float TextScale = 1.6f;

    public static Markup Of(StageScene scene, Review review)
    {
        byte[] png = StagePainter.Paint(scene with { WidthPx = WidthPx, TextScale = TextScale, EndsHaveText = false, Theme = OverlayTheme.Light }, PictureFormat.Png);
        string text = $"The power path of {review.Brief!.Board.Name} by stages, all layers folded into one: "
            + string.Join("; ", scene.Fills.Select(fill => $"{fill.Name}, {fill.Facts}")) + ".";
        return $"""
            <figure class="stages"><img src="data:image/png;base64,{Convert.ToBase64String(png)}" alt="{text}"></figure>
            """;
    }
}
