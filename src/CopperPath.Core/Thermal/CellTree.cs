namespace CopperPath.Thermal;

/// <summary>
/// Squares, or nearly so, that are split into four where more is to be seen: even cells over the whole board, of which each may be
/// split again and again. Neighbours differ by one splitting at most.
/// </summary>
public sealed class CellTree
{
    private const int Absent = -1;
    private const int Leaf = -2;

    private readonly double _fromXM;
    private readonly double _fromYM;
    private readonly double _toXM;
    private readonly double _toYM;
    private readonly int _columns;
    private readonly int _rows;
    private readonly int _rootDepth;

    // Of each cell: the first of its four children, which follow one another, or Leaf or Absent; and its place.
    private readonly List<int> _children = [];
    private readonly List<(int Depth, int I, int J)> _places = [];
    private readonly List<(double XM, double YM)> _middles = [];

    private CellTree(CellTree other)
    {
        (_fromXM, _fromYM, _toXM, _toYM) = (other._fromXM, other._fromYM, other._toXM, other._toYM);
        (_columns, _rows, _rootDepth) = (other._columns, other._rows, other._rootDepth);
        (_children, _places, _middles) = ([.. other._children], [.. other._places], [.. other._middles]);
    }

    /// <param name="extent">What is to be covered.</param>
    /// <param name="cellM">Cells are no wider than this before they are split, metres.</param>
    public CellTree(CellBox extent, double cellM)
    {
        (_fromXM, _fromYM, _toXM, _toYM) = (extent.WestM, extent.SouthM, extent.EastM, extent.NorthM);
        (_columns, _rows) = (Parts(extent.WidthM), Parts(extent.HeightM));
        while (1 << _rootDepth < Math.Max(_columns, _rows))
        {
            _rootDepth++;
        }

        // The even cells are the lowest storey of a tree themselves, padded to a power of two by cells that are not there.
        Add(0, 0, 0);
        for (int cell = 0; cell < _children.Count; cell++)
        {
            if (_places[cell].Depth < _rootDepth && _children[cell] == Leaf)
            {
                Divide(cell);
            }
        }

        int Parts(double lengthM) => Math.Max(1, (int)Math.Ceiling((lengthM / cellM) - 1e-9));
    }

    /// <summary>The cell that holds all others.</summary>
    public static int Root => 0;

    /// <summary>Splittings of the even cells that the most split cell has seen.</summary>
    public int DeepestSplit => _places.Max(place => place.Depth) - _rootDepth;

    /// <summary>Numbers of cells run below this.</summary>
    public int CellCount => _children.Count;

    /// <summary>Width of cells by how often they were split, metres: the shorter side.</summary>
    public double WidthM(int splits) =>
        Math.Min((_toXM - _fromXM) / _columns, (_toYM - _fromYM) / _rows) / (1 << splits);

    /// <summary>Number of leaves.</summary>
    public int LeafCount => _children.Count(child => child == Leaf);

    public bool IsThere(int cell) => _children[cell] != Absent;

    public bool IsLeaf(int cell) => _children[cell] == Leaf;

    /// <summary>One of the four cells a cell was split into: 0 and 1 the lower two from the west, 2 and 3 the upper two.</summary>
    public int Child(int cell, int quarter) => _children[cell] + quarter;

    /// <summary>How often an even cell was split to make this one; negative for cells that hold several of them.</summary>
    public int SplitsOf(int cell) => _places[cell].Depth - _rootDepth;

    /// <summary>Whether one splitting made both cells.</summary>
    public bool AreSiblings(int cell, int other)
    {
        ((int depth, int i, int j), (int otherDepth, int otherI, int otherJ)) = (_places[cell], _places[other]);
        return depth == otherDepth && i >> 1 == otherI >> 1 && j >> 1 == otherJ >> 1;
    }

    /// <summary>Place of a cell, those of the upper storeys cut to the board.</summary>
    public CellBox BoxOf(int cell)
    {
        (int depth, int i, int j) = _places[cell];
        return new CellBox(
            Math.Min(_toXM, XM(depth, i)), Math.Min(_toYM, YM(depth, j)), Math.Min(_toXM, XM(depth, i + 1)), Math.Min(_toYM, YM(depth, j + 1)));
    }

    /// <summary>Line that parts a cell that is not a leaf in the middle, by its whole width, metres.</summary>
    public (double XM, double YM) MiddleOf(int cell) => _middles[cell];

    /// <summary>The leaf a point lies in; beyond the board, one at its edge.</summary>
    public int LeafAt(double xM, double yM)
    {
        xM = Math.Clamp(xM, _fromXM, Math.BitDecrement(_toXM));
        yM = Math.Clamp(yM, _fromYM, Math.BitDecrement(_toYM));
        int cell = Root;
        while (!IsLeaf(cell))
        {
            (double middleX, double middleY) = MiddleOf(cell);
            int quarter = (xM >= middleX ? 1 : 0) + (yM >= middleY ? 2 : 0);

            // A point at the edge of the board may be rounded beyond it.
            cell = _children[cell] + (IsThere(_children[cell] + quarter) ? quarter : IsThere(_children[cell] + (quarter & 1)) ? quarter & 1
                : IsThere(_children[cell] + (quarter & 2)) ? quarter & 2 : 0);
        }

        return cell;
    }

    /// <summary>Leaves in an order that keeps neighbours close to each other.</summary>
    public List<int> Leaves()
    {
        List<int> leaves = [];
        Collect(Root);
        return leaves;

        void Collect(int cell)
        {
            if (IsLeaf(cell))
            {
                leaves.Add(cell);
            }
            else if (IsThere(cell))
            {
                for (int quarter = 0; quarter < 4; quarter++)
                {
                    Collect(_children[cell] + quarter);
                }
            }
        }
    }

    /// <summary>Splits a leaf, and before it those of its neighbours that are wider than it.</summary>
    public void Split(int leaf)
    {
        if (!IsLeaf(leaf))
        {
            return;
        }

        for (int side = 0; side < 4; side++)
        {
            while (Neighbour(leaf, side) is var other && other >= 0 && IsLeaf(other) && _places[other].Depth < _places[leaf].Depth)
            {
                Split(other);
            }
        }

        Divide(leaf);
    }

    /// <summary>The same with every leaf split.</summary>
    public CellTree Finer()
    {
        CellTree finer = new(this);
        for (int cell = 0, count = _children.Count; cell < count; cell++)
        {
            if (IsLeaf(cell))
            {
                finer.Divide(cell);
            }
        }

        return finer;
    }

    public CellTree Copy() => new(this);

    /// <summary>The cell of the same size on a side (west, east, south, north), or the leaf that holds it; -1 beyond the board.</summary>
    public int Neighbour(int cell, int side)
    {
        (int depth, int i, int j) = _places[cell];
        i += side == 0 ? -1 : side == 1 ? 1 : 0;
        j += side == 2 ? -1 : side == 3 ? 1 : 0;
        if (i < 0 || j < 0 || i >= Across(_columns, depth) || j >= Across(_rows, depth))
        {
            return -1;
        }

        int found = Root;
        for (int d = depth - 1; d >= 0 && !IsLeaf(found); d--)
        {
            found = _children[found] + ((i >> d) & 1) + (2 * ((j >> d) & 1));
        }

        return IsThere(found) ? found : -1;
    }

    private int Across(int roots, int depth) =>
        depth >= _rootDepth ? roots << (depth - _rootDepth) : (roots + (1 << (_rootDepth - depth)) - 1) >> (_rootDepth - depth);

    private double XM(int depth, int i) => _fromXM + ((_toXM - _fromXM) * (i * Math.ScaleB(1, _rootDepth - depth) / _columns));

    private double YM(int depth, int j) => _fromYM + ((_toYM - _fromYM) * (j * Math.ScaleB(1, _rootDepth - depth) / _rows));

    private void Divide(int cell)
    {
        (int depth, int i, int j) = _places[cell];
        _children[cell] = _children.Count;
        for (int quarter = 0; quarter < 4; quarter++)
        {
            Add(depth + 1, (2 * i) + (quarter & 1), (2 * j) + (quarter >> 1));
        }
    }

    private void Add(int depth, int i, int j)
    {
        bool isThere = i < Across(_columns, depth) && j < Across(_rows, depth);
        _children.Add(isThere ? Leaf : Absent);
        _places.Add((depth, i, j));
        _middles.Add((XM(depth + 1, (2 * i) + 1), YM(depth + 1, (2 * j) + 1)));
    }
}
