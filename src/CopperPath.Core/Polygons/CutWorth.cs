namespace CopperPath.Polygons;

/// <summary>
/// Whether cutting a box into tiles pays. Comparing all segments of a box with all takes time in proportion to the third
/// power of their number where everything crosses; a cut pays when its tiles together take less.
/// </summary>
/// <remarks>
/// Up to four tiles around one point may keep most segments, as where all of them meet there: then it is enough that the
/// other tiles take less, as the point comes nearer with each cut. Where many tiles in a row keep most of them, they run
/// along each other, and no number of cuts will separate them.
/// </remarks>
internal struct CutWorth(int whole)
{
    private double _cubes;
    private double _cubesOfMost;
    private int _minColumn = int.MaxValue;
    private int _maxColumn;
    private int _minRow = int.MaxValue;
    private int _maxRow;

    public readonly bool Pays => (IsMostAtOnePoint ? _cubes : _cubes + _cubesOfMost) < (double)whole * whole * whole;

    private readonly bool IsMostAtOnePoint => _maxColumn - _minColumn <= 1 && _maxRow - _minRow <= 1;

    public static CutWorth Of(CoverGrid grid, int whole)
    {
        var worth = new CutWorth(whole);
        for (int tile = 0; tile < grid.TileCount; tile++)
        {
            worth.Add(grid, tile, grid.ListOf(tile).Length);
        }

        return worth;
    }

    /// <summary>Takes a tile into account, in which so many segments are left.</summary>
    public void Add(CoverGrid grid, int tile, int count)
    {
        if (count == 0)
        {
            return;
        }

        double cube = (double)count * count * count;
        if (count > whole / 2)
        {
            (int row, int column) = Math.DivRem(tile, grid.Columns);
            _cubesOfMost += cube;
            (_minColumn, _maxColumn) = (Math.Min(_minColumn, column), Math.Max(_maxColumn, column));
            (_minRow, _maxRow) = (Math.Min(_minRow, row), Math.Max(_maxRow, row));
        }
        else
        {
            _cubes += cube;
        }
    }
}
