using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// Divides areas among the leaves of a <see cref="CellTree"/> by cutting them along the middle lines of its cells, down from the
/// whole board; exact up to rounding. Not for several threads at once.
/// </summary>
/// <remarks>
/// Rings are cut one by one (Sutherland and Hodgman, 1974). Where a ring runs along a line back and forth the two ways cancel, in area
/// and in the length covered of the line, and so do holes.
/// </remarks>
internal sealed class CellClipper(CellTree tree)
{
    /// <summary>Smaller parts of a cell are what rounding leaves.</summary>
    public const double LeastShare = 1e-9;

    private readonly List<Pieces> _pool = [];

    /// <summary>What is told of each leaf: its number, the area inside and the lengths covered of its sides.</summary>
    public delegate void PartOfLeaf(int leaf, double areaM2, CoveredSides sides);

    /// <param name="rings">Outer rings counter-clockwise, holes clockwise, that do not overlap.</param>
    /// <param name="part">Told of each leaf that holds some of it.</param>
    public void Divide(IEnumerable<PointNm[]> rings, PartOfLeaf part)
    {
        Pieces whole = Buffer(0);
        whole.Clear();
        foreach (PointNm[] ring in rings)
        {
            foreach (PointNm point in ring)
            {
                whole.Add(Units.MetresFromNm(point.X), Units.MetresFromNm(point.Y));
            }

            whole.EndRing();
        }

        Descend(CellTree.Root, whole, 1, part);
    }

    private Pieces Buffer(int index)
    {
        while (_pool.Count <= index)
        {
            _pool.Add(new Pieces());
        }

        return _pool[index];
    }

    private void Descend(int cell, Pieces pieces, int buffer, PartOfLeaf part)
    {
        while (true)
        {
            if (!tree.IsThere(cell) || pieces.Count == 0)
            {
                return;
            }

            if (tree.IsLeaf(cell))
            {
                (double areaM2, CoveredSides sides) = pieces.In(tree.BoxOf(cell));
                if (Math.Abs(areaM2) > 0)
                {
                    part(cell, areaM2, sides);
                }

                return;
            }

            (double middleX, double middleY) = tree.MiddleOf(cell);
            (double minX, double minY, double maxX, double maxY) = pieces.Bounds();
            bool isWest = maxX <= middleX;
            bool isEast = minX >= middleX;
            bool isSouth = maxY <= middleY;
            bool isNorth = minY >= middleY;
            if ((isWest || isEast) && (isSouth || isNorth))
            {
                cell = tree.Child(cell, (isEast && !isWest ? 1 : 0) + (isNorth && !isSouth ? 2 : 0));
                continue;
            }

            if (pieces.Fills(tree.BoxOf(cell)))
            {
                Fill(cell, part);
                return;
            }

            (Pieces west, Pieces east) = (Buffer(buffer), Buffer(buffer + 1));
            (Pieces south, Pieces north) = (Buffer(buffer + 2), Buffer(buffer + 3));
            pieces.CutAcrossX(middleX, west, east);
            for (int column = 0; column < 2; column++)
            {
                (column == 0 ? west : east).CutAcrossY(middleY, south, north);
                Descend(tree.Child(cell, column), south, buffer + 4, part);
                Descend(tree.Child(cell, column + 2), north, buffer + 4, part);
            }

            return;
        }
    }

    private void Fill(int cell, PartOfLeaf part)
    {
        if (!tree.IsThere(cell))
        {
            return;
        }

        if (tree.IsLeaf(cell))
        {
            CellBox box = tree.BoxOf(cell);
            part(cell, box.AreaM2, new CoveredSides(box.HeightM, box.HeightM, box.WidthM, box.WidthM));
            return;
        }

        for (int quarter = 0; quarter < 4; quarter++)
        {
            Fill(tree.Child(cell, quarter), part);
        }
    }

    /// <summary>Rings in metres.</summary>
    private sealed class Pieces
    {
        private readonly List<int> _ends = [];
        private double[] _x = new double[64];
        private double[] _y = new double[64];

        public int Count { get; private set; }

        public void Clear()
        {
            Count = 0;
            _ends.Clear();
        }

        public void Add(double x, double y)
        {
            if (Count == _x.Length)
            {
                Array.Resize(ref _x, 2 * Count);
                Array.Resize(ref _y, 2 * Count);
            }

            (_x[Count], _y[Count]) = (x, y);
            Count++;
        }

        /// <summary>Ends a ring; one of fewer than three corners is none.</summary>
        public void EndRing()
        {
            int first = _ends.Count > 0 ? _ends[^1] : 0;
            if (Count - first < 3)
            {
                Count = first;
            }
            else
            {
                _ends.Add(Count);
            }
        }

        public (double MinX, double MinY, double MaxX, double MaxY) Bounds()
        {
            (double minX, double minY, double maxX, double maxY) = (_x[0], _y[0], _x[0], _y[0]);
            for (int k = 1; k < Count; k++)
            {
                minX = Math.Min(minX, _x[k]);
                minY = Math.Min(minY, _y[k]);
                maxX = Math.Max(maxX, _x[k]);
                maxY = Math.Max(maxY, _y[k]);
            }

            return (minX, minY, maxX, maxY);
        }

        /// <summary>True when the rings, which lie inside a cell, are the whole of it.</summary>
        public bool Fills(CellBox box) => AreaM2(box) >= (1 - LeastShare) * box.AreaM2;

        /// <summary>Area, and the lengths covered of the sides of the cell the rings lie in.</summary>
        public (double AreaM2, CoveredSides Sides) In(CellBox box)
        {
            double west = 0;
            double east = 0;
            double south = 0;
            double north = 0;
            int first = 0;
            foreach (int end in _ends)
            {
                for (int b = first, a = end - 1; b < end; a = b++)
                {
                    if (_x[a] == _x[b])
                    {
                        west -= _x[a] == box.WestM ? _y[b] - _y[a] : 0;
                        east += _x[a] == box.EastM ? _y[b] - _y[a] : 0;
                    }

                    if (_y[a] == _y[b])
                    {
                        south += _y[a] == box.SouthM ? _x[b] - _x[a] : 0;
                        north -= _y[a] == box.NorthM ? _x[b] - _x[a] : 0;
                    }
                }

                first = end;
            }

            return (AreaM2(box), new CoveredSides(Math.Max(0, west), Math.Max(0, east), Math.Max(0, south), Math.Max(0, north)));
        }

        public void CutAcrossX(double line, Pieces below, Pieces above) => Cut(_x, _y, line, below, above, isAcrossX: true);

        public void CutAcrossY(double line, Pieces below, Pieces above) => Cut(_y, _x, line, below, above, isAcrossX: false);

        private double AreaM2(CellBox box)
        {
            double twice = 0;
            int first = 0;
            foreach (int end in _ends)
            {
                for (int b = first, a = end - 1; b < end; a = b++)
                {
                    twice += ((_x[a] - box.WestM) * (_y[b] - box.SouthM)) - ((_x[b] - box.WestM) * (_y[a] - box.SouthM));
                }

                first = end;
            }

            return twice / 2;
        }

        private void Cut(double[] along, double[] across, double line, Pieces below, Pieces above, bool isAcrossX)
        {
            below.Clear();
            above.Clear();
            int first = 0;
            foreach (int end in _ends)
            {
                for (int b = first, a = end - 1; b < end; a = b++)
                {
                    double fromA = along[a] - line;
                    double fromB = along[b] - line;
                    if ((fromA < 0 && fromB > 0) || (fromA > 0 && fromB < 0))
                    {
                        double at = across[a] + (fromA / (fromA - fromB) * (across[b] - across[a]));
                        Put(below, line, at);
                        Put(above, line, at);
                    }

                    if (fromB <= 0)
                    {
                        Put(below, along[b], across[b]);
                    }

                    if (fromB >= 0)
                    {
                        Put(above, along[b], across[b]);
                    }
                }

                below.EndRing();
                above.EndRing();
                first = end;
            }

            void Put(Pieces pieces, double x, double y) => pieces.Add(isAcrossX ? x : y, isAcrossX ? y : x);
        }
    }
}
