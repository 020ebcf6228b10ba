namespace CopperPath.Geometry;

/// <summary>Points in square cells as large as the reach of a look-up, so that each look-up visits nine cells.</summary>
public sealed class PointIndex
{
    private readonly long _reachNm;
    private readonly PointNm[] _points;
    private readonly ILookup<(long, long), int> _cells;

    /// <param name="points">Points to find again, by their place in the list.</param>
    /// <param name="reachNm">Largest distance at which a point is found, nanometres, positive.</param>
    public PointIndex(IEnumerable<PointNm> points, long reachNm)
    {
        _reachNm = reachNm;
        _points = [.. points];
        _cells = Enumerable.Range(0, _points.Length).ToLookup(i => (Cell(_points[i].X), Cell(_points[i].Y)));
    }

    /// <summary>Whether a point lies within reach, edge included.</summary>
    public bool HasNear(PointNm point) => Near(point).Any();

    /// <summary>Indices of the points within reach, in no promised order.</summary>
    public IEnumerable<int> Near(PointNm point)
    {
        for (long x = Cell(point.X) - 1; x <= Cell(point.X) + 1; x++)
        {
            for (long y = Cell(point.Y) - 1; y <= Cell(point.Y) + 1; y++)
            {
                foreach (int i in _cells[(x, y)])
                {
                    if (_points[i].DistanceNmTo(point) <= _reachNm)
                    {
                        yield return i;
                    }
                }
            }
        }
    }

    /// <summary>The nearest point within reach, the first listed of equals; -1 when there is none.</summary>
    public int Nearest(PointNm point) => Near(point)
        .OrderBy(i => _points[i].DistanceNmTo(point)).ThenBy(i => i).FirstOrDefault(-1);

    private long Cell(long coordinateNm) => (long)Math.Floor((double)coordinateNm / _reachNm);
}
