using SkiaSharp;

namespace CopperPath.Cli.Overlays.Stages;

/// <summary>
/// Which stage's copper is seen at each cell of a coarse grid over the view, and which cells are taken: what plates are placed by.
/// </summary>
internal sealed class FillMap
{
    /// <summary>Side of a cell, pixels.</summary>
    public const int CellPx = 4;

    /// <summary>Below this many times its plate a fill would hardly be seen under it.</summary>
    private const float SmallFill = 2;

    private readonly SKRect _view;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int[] _seen;
    private readonly bool[] _taken;
    private readonly Dictionary<int, (float X, float Y)> _middles = [];

    /// <param name="view">The board view, pixels.</param>
    /// <param name="fills">Paths of the fills in drawing order, with their numbers.</param>
    public FillMap(SKRect view, IEnumerable<(int Number, SKPath Path)> fills)
    {
        _view = view;
        _columns = Math.Max(1, (int)(view.Width / CellPx));
        _rows = Math.Max(1, (int)(view.Height / CellPx));
        _taken = new bool[_columns * _rows];
        using SKBitmap bitmap = new(new SKImageInfo(_columns, _rows, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (SKCanvas canvas = new(bitmap))
        {
            canvas.Clear(SKColors.Black);
            canvas.Scale(1f / CellPx);
            canvas.Translate(-view.Left, -view.Top);
            foreach ((int number, SKPath path) in fills)
            {
                // Numbers from 1 as colours; without smoothing every cell has one of them.
                using SKPaint paint = new() { Color = new SKColor((byte)((number + 1) & 255), (byte)((number + 1) >> 8), 0), IsAntialias = false };
                canvas.DrawPath(path, paint);
            }
        }

        _seen = [.. bitmap.Pixels.Select(colour => colour.Red + (colour.Green << 8) - 1)];
    }

    /// <summary>Number of cells in which a fill is seen.</summary>
    public int CellsOf(int fill) => _seen.Count(seen => seen == fill);

    /// <summary>Keeps a box free of plates.</summary>
    public void Take(SKRect box)
    {
        (int left, int top, int right, int bottom) = CellsIn(box);
        for (int row = top; row <= bottom; row++)
        {
            for (int column = left; column <= right; column++)
            {
                _taken[(row * _columns) + column] = true;
            }
        }
    }

    /// <summary>
    /// The free place for a plate at which it lies on its fill, or nearest to it and over as little other copper as may be. A fill
    /// that is hardly larger than its plate is not hidden by it: the plate then stands beside.
    /// </summary>
    /// <param name="fill">Number of the fill.</param>
    /// <param name="size">Size of the plate.</param>
    /// <returns>The plate and, where it does not lie on its fill, a place on the fill; null without any free place.</returns>
    public (SKRect Plate, SKPoint? Anchor)? PlaceFor(int fill, SKSize size)
    {
        int width = (int)Math.Ceiling(size.Width / CellPx);
        int height = (int)Math.Ceiling(size.Height / CellPx);
        int[] own = Sums(cell => _seen[cell] == fill);
        int[] foreign = Sums(cell => _seen[cell] >= 0 && _seen[cell] != fill);
        int[] taken = Sums(cell => _taken[cell]);
        (float[] distance, int[] nearest) = DistancesTo(fill);
        bool isSmall = CellsOf(fill) < SmallFill * width * height;
        (float cost, int left, int top)? best = null;
        for (int top = 0; top + height <= _rows; top++)
        {
            for (int left = 0; left + width <= _columns; left++)
            {
                if (Sum(taken, left, top, width, height) > 0)
                {
                    continue;
                }

                float area = width * height;
                int middle = ((top + (height / 2)) * _columns) + left + (width / 2);
                float on = Sum(own, left, top, width, height) / area;
                float cost = (4 * (isSmall ? 2 * on : 1 - on)) + (6 * Sum(foreign, left, top, width, height) / area) + (distance[middle] / 12)
                    + (DistanceToMiddle(fill, left + (width / 2), top + (height / 2)) / 400);
                if (best is null || cost < best.Value.cost)
                {
                    best = (cost, left, top);
                }
            }
        }

        if (best is not { } place)
        {
            return null;
        }

        SKRect plate = SKRect.Create(_view.Left + (place.left * CellPx), _view.Top + (place.top * CellPx), size.Width, size.Height);
        int centre = ((place.top + (height / 2)) * _columns) + place.left + (width / 2);
        bool isOnFill = !isSmall && Sum(own, place.left, place.top, width, height) >= 0.5f * width * height;
        return (plate, isOnFill || nearest[centre] < 0 ? null : PointOf(nearest[centre]));
    }

    private float DistanceToMiddle(int fill, int column, int row)
    {
        (float x, float y) = MiddleOf(fill);
        return MathF.Abs(x - column) + MathF.Abs(y - row);
    }

    private (float X, float Y) MiddleOf(int fill)
    {
        if (_middles.TryGetValue(fill, out (float X, float Y) middle))
        {
            return middle;
        }

        int[] cells = [.. Enumerable.Range(0, _seen.Length).Where(cell => _seen[cell] == fill)];
        middle = cells.Length == 0 ? (_columns / 2f, _rows / 2f)
            : ((float)cells.Average(cell => cell % _columns), (float)cells.Average(cell => cell / _columns));
        return _middles[fill] = middle;
    }

    /// <summary>Steps from each cell to the nearest one of a fill, and which that is: breadth first, so the order is fixed.</summary>
    private (float[] Distance, int[] Nearest) DistancesTo(int fill)
    {
        float[] distance = new float[_seen.Length];
        int[] nearest = new int[_seen.Length];
        Array.Fill(distance, float.MaxValue / 4);
        Array.Fill(nearest, -1);
        Queue<int> front = new();
        for (int cell = 0; cell < _seen.Length; cell++)
        {
            if (_seen[cell] == fill)
            {
                (distance[cell], nearest[cell]) = (0, cell);
                front.Enqueue(cell);
            }
        }

        while (front.TryDequeue(out int cell))
        {
            (int column, int row) = (cell % _columns, cell / _columns);
            Visit(column - 1, row);
            Visit(column + 1, row);
            Visit(column, row - 1);
            Visit(column, row + 1);

            void Visit(int nextColumn, int nextRow)
            {
                int next = (nextRow * _columns) + nextColumn;
                if (nextColumn >= 0 && nextColumn < _columns && nextRow >= 0 && nextRow < _rows && nearest[next] < 0)
                {
                    (distance[next], nearest[next]) = (distance[cell] + 1, nearest[cell]);
                    front.Enqueue(next);
                }
            }
        }

        return (distance, nearest);
    }

    /// <summary>Sums over all boxes from the corner, for the sum over any box in four look-ups.</summary>
    private int[] Sums(Func<int, bool> counts)
    {
        int[] sums = new int[(_columns + 1) * (_rows + 1)];
        for (int row = 0; row < _rows; row++)
        {
            int inRow = 0;
            for (int column = 0; column < _columns; column++)
            {
                inRow += counts((row * _columns) + column) ? 1 : 0;
                sums[((row + 1) * (_columns + 1)) + column + 1] = sums[(row * (_columns + 1)) + column + 1] + inRow;
            }
        }

        return sums;
    }

    private int Sum(int[] sums, int left, int top, int width, int height)
    {
        int across = _columns + 1;
        return sums[((top + height) * across) + left + width] - sums[(top * across) + left + width]
            - sums[((top + height) * across) + left] + sums[(top * across) + left];
    }

    private SKPoint PointOf(int cell) =>
        new(_view.Left + (((cell % _columns) + 0.5f) * CellPx), _view.Top + (((cell / _columns) + 0.5f) * CellPx));

    private (int Left, int Top, int Right, int Bottom) CellsIn(SKRect box) => (
        Math.Clamp((int)((box.Left - _view.Left) / CellPx), 0, _columns - 1), Math.Clamp((int)((box.Top - _view.Top) / CellPx), 0, _rows - 1),
        Math.Clamp((int)((box.Right - _view.Left) / CellPx), 0, _columns - 1), Math.Clamp((int)((box.Bottom - _view.Top) / CellPx), 0, _rows - 1));
}
