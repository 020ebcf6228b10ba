using CopperPath.Geometry;

namespace CopperPath.Meshing;

/// <summary>
/// A uniform grid of square cells remembering which segments pass through which cell, so that the neighbours of a
/// segment are found without looking at all the others. A query may name a segment more than once.
/// </summary>
internal sealed class SegmentGrid
{
    /// <summary>Cells for each segment: outlines crowd around holes, while most of a board's cells stay empty.</summary>
    private const double CellsPerSegment = 8;

    private readonly long _minX;
    private readonly long _minY;
    private readonly double _cell;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int[] _firstOfCell;
    private readonly List<(int Segment, int Next)> _entries = [];

    /// <param name="bounds">Where the segments lie, in lattice units.</param>
    /// <param name="expectedSegments">About how many there will be.</param>
    public SegmentGrid(BoxNm bounds, int expectedSegments)
    {
        const int greatestSide = 2048;
        _minX = bounds.MinX;
        _minY = bounds.MinY;
        double width = Math.Max(1, bounds.WidthNm), height = Math.Max(1, bounds.HeightNm);
        double wished = Math.Sqrt(width * height / (CellsPerSegment * Math.Max(1, expectedSegments)));
        _cell = Math.Max(1, Math.Max(wished, Math.Max(width, height) / greatestSide));
        _columns = (int)(width / _cell) + 1;
        _rows = (int)(height / _cell) + 1;
        _firstOfCell = new int[_columns * _rows];
        Array.Fill(_firstOfCell, -1);
    }

    public void Add(int segment, long ax, long ay, long bx, long by)
    {
        if (ay > by)
        {
            (ax, ay, bx, by) = (bx, by, ax, ay);
        }

        int firstRow = Row(ay), lastRow = Row(by);
        double slope = by == ay ? 0 : (double)(bx - ax) / (by - ay);
        for (int row = firstRow; row <= lastRow; row++)
        {
            // The part of the segment inside this row of cells; a unit of margin covers rounding.
            double fromY = Math.Max(ay, _minY + (row * _cell)), toY = Math.Min(by, _minY + ((row + 1) * _cell));
            double fromX = by == ay ? ax : ax + (slope * (fromY - ay));
            double toX = by == ay ? bx : ax + (slope * (toY - ay));
            int firstColumn = Column(Math.Min(fromX, toX) - 1), lastColumn = Column(Math.Max(fromX, toX) + 1);
            for (int column = firstColumn; column <= lastColumn; column++)
            {
                int place = (row * _columns) + column;
                _entries.Add((segment, _firstOfCell[place]));
                _firstOfCell[place] = _entries.Count - 1;
            }
        }
    }

    /// <summary>Adds to <paramref name="found"/> every segment of the cells that touch the box grown by two units.</summary>
    public void Collect(BoxNm box, List<int> found)
    {
        int lastRow = Row(box.MaxY + 2), firstColumn = Column(box.MinX - 2), lastColumn = Column(box.MaxX + 2);
        for (int row = Row(box.MinY - 2); row <= lastRow; row++)
        {
            for (int column = firstColumn; column <= lastColumn; column++)
            {
                CollectCell((row * _columns) + column, found);
            }
        }
    }

    private void CollectCell(int cell, List<int> found)
    {
        for (int entry = _firstOfCell[cell]; entry >= 0; entry = _entries[entry].Next)
        {
            found.Add(_entries[entry].Segment);
        }
    }

    private int Column(double x) => Math.Clamp((int)((x - _minX) / _cell), 0, _columns - 1);

    private int Row(double y) => Math.Clamp((int)((y - _minY) / _cell), 0, _rows - 1);
}
