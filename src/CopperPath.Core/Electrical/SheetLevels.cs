using System.Runtime.InteropServices;
using CopperPath.Meshing;
using CopperPath.Polygons;

namespace CopperPath.Electrical;

/// <summary>
/// Lines of given potentials in one sheet, piece by piece. The potential is taken as linear in each triangle; the
/// current through a piece is that of the balanced flow, so that it depends only on where the piece ends.
/// </summary>
internal sealed class SheetLevels
{
    /// <summary>A line through more triangles than this runs over copper at rest, where it means nothing.</summary>
    private const int MostTriangles = 20_000;

    private readonly SheetField _field;
    private readonly double _thicknessM;
    private readonly double[] _levelsV;
    private readonly int[] _firstOf;
    private readonly int[] _triangles;

    private SheetLevels(SheetField field, double thicknessM, double[] levelsV)
    {
        (_field, _thicknessM, _levelsV) = (field, thicknessM, levelsV);
        _firstOf = new int[levelsV.Length + 1];
        EachCrossing((level, _) => _firstOf[level + 1]++);
        for (int level = 0; level < levelsV.Length; level++)
        {
            _firstOf[level + 1] = _firstOf[level] + (_firstOf[level + 1] > MostTriangles ? 0 : _firstOf[level + 1]);
        }

        int[] next = _firstOf[..^1];
        _triangles = new int[_firstOf[^1]];
        EachCrossing((level, triangle) =>
        {
            if (_firstOf[level + 1] > _firstOf[level])
            {
                _triangles[next[level]++] = triangle;
            }
        });
    }

    /// <param name="field">The sheet.</param>
    /// <param name="thicknessM">Its copper, metres.</param>
    /// <param name="levelsV">Potentials, rising.</param>
    /// <returns>The pieces of each line, by level.</returns>
    public static List<LevelLine>[] Of(SheetField field, double thicknessM, double[] levelsV)
    {
        SheetLevels levels = new(field, thicknessM, levelsV);
        List<LevelLine>[] lines = new List<LevelLine>[levelsV.Length];
        int[] placeOf = new int[field.Mesh.TriangleCount];
        for (int level = 0; level < lines.Length; level++)
        {
            lines[level] = levels.LinesAt(level, placeOf);
        }

        return lines;
    }

    /// <summary>A vertex at the potential itself counts as above it, so that each triangle is crossed by two edges or none.</summary>
    private void EachCrossing(Action<int, int> crossed)
    {
        SheetMesh mesh = _field.Mesh;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            double a = _field.PotentialV[mesh.Triangles[3 * t]];
            double b = _field.PotentialV[mesh.Triangles[(3 * t) + 1]];
            double c = _field.PotentialV[mesh.Triangles[(3 * t) + 2]];
            double least = Math.Min(a, Math.Min(b, c)), most = Math.Max(a, Math.Max(b, c));
            if (!(most > least))
            {
                continue;
            }

            int found = Array.BinarySearch(_levelsV, least);
            for (int level = found < 0 ? ~found : found + 1; level < _levelsV.Length && _levelsV[level] <= most; level++)
            {
                crossed(level, t);
            }
        }
    }

    private List<LevelLine> LinesAt(int level, int[] placeOf)
    {
        ReadOnlySpan<int> triangles = _triangles.AsSpan(_firstOf[level].._firstOf[level + 1]);
        DisjointSets pieces = new(triangles.Length);
        for (int i = 0; i < triangles.Length; i++)
        {
            placeOf[triangles[i]] = i;
        }

        bool[] isEnd = new bool[triangles.Length];
        Segment[] segments = new Segment[triangles.Length];
        for (int i = 0; i < triangles.Length; i++)
        {
            segments[i] = SegmentIn(triangles[i], level);
            foreach (int edge in (ReadOnlySpan<int>)[segments[i].FromEdge, segments[i].ToEdge])
            {
                // A triangle on the other side of a crossed edge is crossed as well.
                if (_field.Mesh.Links.Twin(edge) is >= 0 and int twin)
                {
                    pieces.Join(i, placeOf[twin / 3]);
                }
                else
                {
                    isEnd[i] = true;
                }
            }
        }

        Dictionary<int, Gathering> gatherings = [];
        for (int i = 0; i < triangles.Length; i++)
        {
            ref Gathering? gathering = ref CollectionsMarshal.GetValueRefOrAddDefault(gatherings, pieces.Find(i), out _);
            gathering ??= new Gathering();
            gathering.Add(segments[i], isEnd[i], _field.CopperShare(triangles[i]));
        }

        return [.. gatherings.Values.Select(gathering => gathering.ToLine(_field.Layer, _thicknessM))];
    }

    private Segment SegmentIn(int triangle, int level)
    {
        SheetMesh mesh = _field.Mesh;
        double levelV = _levelsV[level];
        int downEdge = -1, upEdge = -1;
        for (int edge = 3 * triangle; edge < (3 * triangle) + 3; edge++)
        {
            bool isFromAbove = _field.PotentialV[mesh.Triangles[edge]] >= levelV;
            bool isToAbove = _field.PotentialV[mesh.Triangles[TriangleLinks.Next(edge)]] >= levelV;
            (downEdge, upEdge) = isFromAbove == isToAbove ? (downEdge, upEdge) : isFromAbove ? (edge, upEdge) : (downEdge, edge);
        }

        // Counter-clockwise the border goes down, along what is below, and up: from the way up to the way down, below lies on the left.
        (double fromX, double fromY) = PointOn(upEdge, levelV);
        (double toX, double toY) = PointOn(downEdge, levelV);
        double dx = toX - fromX, dy = toY - fromY;
        double currentA = (_field.SheetCurrentYAPerM[triangle] * dx) - (_field.SheetCurrentXAPerM[triangle] * dy);
        return new Segment(upEdge, downEdge, fromX, fromY, toX, toY, Math.Sqrt((dx * dx) + (dy * dy)), currentA, _field.CopperCurrentAPerM(triangle));
    }

    private (double X, double Y) PointOn(int edge, double levelV)
    {
        SheetMesh mesh = _field.Mesh;
        int from = mesh.Triangles[edge], to = mesh.Triangles[TriangleLinks.Next(edge)];
        double along = (levelV - _field.PotentialV[from]) / (_field.PotentialV[to] - _field.PotentialV[from]);
        return (mesh.XM[from] + (along * (mesh.XM[to] - mesh.XM[from])), mesh.YM[from] + (along * (mesh.YM[to] - mesh.YM[from])));
    }

    private readonly record struct Segment(
        int FromEdge, int ToEdge, double FromX, double FromY, double ToX, double ToY, double LengthM, double CurrentA, double CopperAPerM);

    /// <summary>Segments of one piece, put together.</summary>
    private sealed class Gathering
    {
        private readonly HashSet<(int, int)> _known = [];
        private readonly List<(int Column, int Row)> _squares = [];
        private double _widthM, _conductingM, _currentA, _peakAPerM = -1, _peakX, _peakY;
        private double _left = double.PositiveInfinity, _bottom = double.PositiveInfinity;
        private double _right = double.NegativeInfinity, _top = double.NegativeInfinity;
        private bool _isOpen;

        public void Add(in Segment segment, bool isEnd, double copperShare)
        {
            _widthM += segment.LengthM;
            _conductingM += segment.LengthM / copperShare;
            _currentA += segment.CurrentA;
            _isOpen |= isEnd;
            double midX = (segment.FromX + segment.ToX) / 2, midY = (segment.FromY + segment.ToY) / 2;
            if (segment.CopperAPerM > _peakAPerM)
            {
                (_peakAPerM, _peakX, _peakY) = (segment.CopperAPerM, midX, midY);
            }

            Pass(segment.FromX, segment.FromY);
            Pass(midX, midY);
            Pass(segment.ToX, segment.ToY);
        }

        public LevelLine ToLine(int layer, double thicknessM) => new(
            layer, _widthM, _conductingM, _currentA, _conductingM * thicknessM, !_isOpen, _peakAPerM / thicknessM, _peakX, _peakY,
            _left, _bottom, _right, _top, _squares, null);

        private void Pass(double x, double y)
        {
            (_left, _right) = (Math.Min(_left, x), Math.Max(_right, x));
            (_bottom, _top) = (Math.Min(_bottom, y), Math.Max(_top, y));
            (int, int) square = LevelLine.SquareOf(x, y);
            if (_known.Add(square))
            {
                _squares.Add(square);
            }
        }
    }
}
