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
        if (width > 0)
        {
            DrawBody(board, part, at, width, height, layer);
        }

        if (width > 0 || footprint.Label != LabelPlace.Centre)
        {
            DrawName(board, part, footprint.Label, at, quarterTurns, Math.Max(width, 2), Math.Max(height, 2), layer);
        }
    }

    private static void DrawBody(Board board, string part, PointMm at, double width, double height, int layer)
    {
        PointMm[] outline =
        [
            at + new PointMm(-width / 2, -height / 2), at + new PointMm(width / 2, -height / 2),
            at + new PointMm(width / 2, height / 2), at + new PointMm(-width / 2, height / 2),
            at + new PointMm(-width / 2, -height / 2),
        ];
        board.Legend.Add(new(layer, part, PenMm, outline));
    }

    private static void DrawName(
        Board board, string part, LabelPlace place, PointMm at, int quarterTurns, double width, double height, int layer)
    {
        var sizeMm = Math.Clamp(Math.Min(width, height) * 0.33, 0.7, 1.5);
        var away = quarterTurns % 2 == 0
            ? (width / 2) + (StrokeFont.WidthOf(part) * sizeMm / 2) + 0.4
            : (height / 2) + (sizeMm / 2) + 0.4;
        var side = layer == 1 ? 1 : -1;
        var centre = place switch
        {
            LabelPlace.LeftEnd => at + new PointMm(-side * away, 0).Turned(quarterTurns),
            LabelPlace.RightEnd => at + new PointMm(side * away, 0).Turned(quarterTurns),
            _ => at,
        };
        Text(board, layer, part, part, centre, sizeMm, layer == 1);
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
