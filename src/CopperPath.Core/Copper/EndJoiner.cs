using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Copper;

/// <summary>Joins pieces of line end to end, each with the first that has a free end near, and keeps the chains that close.</summary>
/// <remarks>
/// Ends are looked up by place. Where thousands lie near each other and none near enough, looking is counted and given up.
/// </remarks>
internal sealed class EndJoiner
{
    /// <summary>Ends this near belong together: profile drawings are rounded piece by piece.</summary>
    private const long JoinNm = 20_000;

    /// <summary>Most ends looked at; a drawing of 10 000 lines whose ends all lie in one place takes half of it.</summary>
    private const long MostLooks = 400_000_000;

    private readonly List<PointNm[]> _pieces;
    private readonly bool[] _isTaken;
    private readonly Dictionary<(long, long), EndsHere> _endsByCell = [];
    private long _looks;

    /// <param name="pieces">Lines of two points or more.</param>
    public EndJoiner(List<PointNm[]> pieces)
    {
        _pieces = pieces;
        _isTaken = new bool[pieces.Count];
        for (int i = 0; i < pieces.Count; i++)
        {
            NoteEnd(pieces[i][0], 2 * i);
            NoteEnd(pieces[i][^1], (2 * i) + 1);
        }
    }

    /// <exception cref="EntangledOutlinesException">Too many ends lie near each other.</exception>
    public IEnumerable<PointNm[]> Loops()
    {
        for (int first = 0; first < _pieces.Count; first++)
        {
            if (_isTaken[first])
            {
                continue;
            }

            _isTaken[first] = true;
            List<PointNm> chain = [.. _pieces[first]];
            while (chain[0].DistanceNmTo(chain[^1]) > JoinNm && FirstNear(chain[^1]) is { } end)
            {
                _isTaken[end / 2] = true;
                PointNm[] piece = _pieces[end / 2];
                chain.AddRange(end % 2 == 0 ? piece.Skip(1) : piece.Reverse().Skip(1));
            }

            if (chain.Count > 3 && chain[0].DistanceNmTo(chain[^1]) <= JoinNm)
            {
                chain.RemoveAt(chain.Count - 1);
                yield return [.. chain];
            }
        }
    }

    private void NoteEnd(PointNm place, int end)
    {
        (long, long) cell = CellOf(place);
        if (!_endsByCell.TryGetValue(cell, out EndsHere? here))
        {
            _endsByCell[cell] = here = new EndsHere();
        }

        here.Ends.Add(end);
    }

    /// <summary>The free end near a place whose piece was drawn first: twice the number of the piece, and 1 more at its last point.</summary>
    private int? FirstNear(PointNm place)
    {
        int? first = null;
        (long x, long y) = CellOf(place);
        for (long column = x - 1; column <= x + 1; column++)
        {
            for (long row = y - 1; row <= y + 1; row++)
            {
                if (_endsByCell.TryGetValue((column, row), out EndsHere? here))
                {
                    first = FirstNear(place, here, first);
                }
            }
        }

        return first;
    }

    private int? FirstNear(PointNm place, EndsHere here, int? before)
    {
        while (here.FirstFree < here.Ends.Count && _isTaken[here.Ends[here.FirstFree] / 2])
        {
            here.FirstFree++;
        }

        for (int i = here.FirstFree; i < here.Ends.Count && !(here.Ends[i] > before); i++)
        {
            if (++_looks > MostLooks)
            {
                throw new EntangledOutlinesException(0, place);
            }

            int end = here.Ends[i];
            PointNm[] piece = _pieces[end / 2];
            if (!_isTaken[end / 2] && piece[end % 2 == 0 ? 0 : ^1].DistanceNmTo(place) <= JoinNm)
            {
                return end;
            }
        }

        return before;
    }

    private static (long, long) CellOf(PointNm place) =>
        ((long)Math.Floor((double)place.X / JoinNm), (long)Math.Floor((double)place.Y / JoinNm));

    /// <summary>Ends in one cell, rising, those before the first free one being taken.</summary>
    private sealed class EndsHere
    {
        public List<int> Ends { get; } = [];

        public int FirstFree { get; set; }
    }
}
