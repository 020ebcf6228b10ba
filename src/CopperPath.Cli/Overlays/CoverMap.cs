using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>How much of any box in the view is copper or vias, from a coarse raster and its running sums.</summary>
internal sealed class CoverMap
{
    private readonly SKRect _view;
    private readonly float _cellPx;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int[] _shadedSums;
    private readonly int[] _quietSums;
    private readonly int[] _viaSums;

    /// <summary>Rasterises what a view shows in cells of about <paramref name="cellPx"/> pixels.</summary>
    public CoverMap(SKRect view, float cellPx, SKPath shadedCopper, SKPath quietCopper, IReadOnlyList<SKRect> vias)
    {
        _view = view;
        _cellPx = cellPx;
        _columns = Math.Max(1, (int)Math.Ceiling(view.Width / cellPx));
        _rows = Math.Max(1, (int)Math.Ceiling(view.Height / cellPx));
        _shadedSums = Sums((canvas, paint) => canvas.DrawPath(shadedCopper, paint));
        _quietSums = Sums((canvas, paint) => canvas.DrawPath(quietCopper, paint));
        _viaSums = Sums((canvas, paint) =>
        {
            foreach (SKRect via in vias)
            {
                canvas.DrawOval(via, paint);
            }
        });
    }

    /// <summary>Shares (0..1) of a box covered by the shaded net, by other copper and by vias.</summary>
    public (double Shaded, double Quiet, double Vias) Shares(SKRect box)
    {
        int left = Math.Clamp((int)((box.Left - _view.Left) / _cellPx), 0, _columns);
        int right = Math.Clamp((int)Math.Ceiling((box.Right - _view.Left) / _cellPx), 0, _columns);
        int top = Math.Clamp((int)((box.Top - _view.Top) / _cellPx), 0, _rows);
        int bottom = Math.Clamp((int)Math.Ceiling((box.Bottom - _view.Top) / _cellPx), 0, _rows);
        double cells = Math.Max(1, (right - left) * (bottom - top));
        return (In(_shadedSums) / cells, In(_quietSums) / cells, In(_viaSums) / cells);

        int In(int[] sums) => sums[At(right, bottom)] - sums[At(left, bottom)] - sums[At(right, top)] + sums[At(left, top)];
    }

    private int At(int column, int row) => (row * (_columns + 1)) + column;

    private int[] Sums(Action<SKCanvas, SKPaint> draw)
    {
        using SKBitmap bitmap = new(new SKImageInfo(_columns, _rows, SKColorType.Alpha8, SKAlphaType.Premul));
        using SKCanvas canvas = new(bitmap);
        canvas.Clear(SKColors.Transparent);
        canvas.Scale(1 / _cellPx);
        canvas.Translate(-_view.Left, -_view.Top);
        using SKPaint paint = new() { Color = SKColors.Black, IsAntialias = true };
        draw(canvas, paint);

        ReadOnlySpan<byte> pixels = bitmap.GetPixelSpan();
        int[] sums = new int[(_columns + 1) * (_rows + 1)];
        for (int row = 0; row < _rows; row++)
        {
            int line = 0;
            for (int column = 0; column < _columns; column++)
            {
                line += pixels[(row * bitmap.RowBytes) + column] > 64 ? 1 : 0;
                sums[At(column + 1, row + 1)] = sums[At(column + 1, row)] + line;
            }
        }

        return sums;
    }
}
