namespace CopperPath.DemoBoards.Kit;

/// <summary>Body outline and reference designator of a part on the legend.</summary>
public static class PartLegend
{
    private const double PenMm = 0.15;

    public static void Draw(Board board, string part, Footprint footprint, PointMm at, int quarterTurns, int layer)
    {
        var (width, height) = quarterTurns % 2 == 0
            ? (footprint.BodyWidthMm, footprint.BodyHeightMm)
            : (footprint.BodyHeightMm, footprint.BodyWidthMm);
        if (width <= 0)
        {
            return;
        }

        PointMm[] outline =
        [
            at + new PointMm(-width / 2, -height / 2), at + new PointMm(width / 2, -height / 2),
            at + new PointMm(width / 2, height / 2), at + new PointMm(-width / 2, height / 2),
            at + new PointMm(-width / 2, -height / 2),
        ];
        board.Legend.Add(new(layer, part, PenMm, outline));

        var sizeMm = Math.Clamp(Math.Min(width, height) * 0.4, 0.7, 1.5);
        Text(board, layer, part, part, at, sizeMm, layer == 1);
    }

    /// <summary>Text centred on a point; on the bottom side it is mirrored to read from below.</summary>
    public static void Text(Board board, int layer, string part, string text, PointMm centre, double sizeMm, bool upright)
    {
        var side = upright ? 1 : -1;
        var left = -StrokeFont.WidthOf(text) / 2;
        foreach (var stroke in StrokeFont.StrokesOf(text))
        {
            board.Legend.Add(new(
                layer,
                part,
                Math.Max(0.12, sizeMm / 8),
                [.. stroke.Select(p => centre + new PointMm(side * (p.X + left) * sizeMm, (p.Y - 0.5) * sizeMm))]));
        }
    }
}
