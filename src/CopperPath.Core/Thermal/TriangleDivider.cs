namespace CopperPath.Thermal;

/// <summary>
/// Divides the power of triangles among the leaves of a <see cref="CellTree"/>, as <see cref="CellClipper"/> divides areas of any shape: a
/// triangle cut along straight lines stays convex, which makes short work of it. Not for several threads at once.
/// </summary>
/// <param name="tree">Cells.</param>
/// <param name="powerW">Power by number of cell; that of the leaves is added to, watts.</param>
internal sealed class TriangleDivider(CellTree tree, double[] powerW)
{
    /// <summary>Every cut adds one corner at most, and a leaf lies no deeper than this many cells.</summary>
    private const int MostCorners = 3 + (2 * MostDepth);

    private const int MostDepth = 64;

    // Corners of the part in hand at every depth: whole, west or east, and a quarter.
    private readonly (double XM, double YM)[][] _parts = [.. Enumerable.Range(0, 2 * MostDepth).Select(_ => new (double, double)[MostCorners])];

    private double _densityWPerM2;

    /// <param name="triangle">What is divided.</param>
    /// <param name="within">A cell that holds the whole of it.</param>
    /// <returns>The narrowest cell that does.</returns>
    public int Divide(TriangleLoss triangle, int within)
    {
        (_parts[0][0], _parts[0][1], _parts[0][2]) = (triangle.A, triangle.B, triangle.C);
        int holder = HolderOf(_parts[0].AsSpan(0, 3), within);
        if (tree.IsLeaf(holder))
        {
            powerW[holder] += triangle.PowerW;
        }
        else if (tree.IsThere(holder))
        {
            _densityWPerM2 = triangle.PowerW / triangle.AreaM2;
            Divide(holder, 0, 3);
        }

        return holder;
    }

    /// <summary>Gives the leaves of a cell that is cut by its middle lines each its part.</summary>
    private void Divide(int cell, int depth, int corners)
    {
        ReadOnlySpan<(double XM, double YM)> whole = _parts[2 * depth].AsSpan(0, corners);
        if (AreaM2(whole) >= (1 - CellClipper.LeastShare) * tree.BoxOf(cell).AreaM2)
        {
            Fill(cell);
            return;
        }

        (double middleX, double middleY) = tree.MiddleOf(cell);
        ((double XM, double YM)[] half, (double XM, double YM)[] quarter) = (_parts[(2 * depth) + 1], _parts[(2 * depth) + 2]);
        for (int k = 0; k < 4; k++)
        {
            int inHalf = Cut(whole, half, middleX, (k & 1) == 0, isAcrossX: true);
            int left = Cut(half.AsSpan(0, inHalf), quarter, middleY, k < 2, isAcrossX: false);
            if (left < 3)
            {
                continue;
            }

            int holder = HolderOf(quarter.AsSpan(0, left), tree.Child(cell, k));
            if (tree.IsLeaf(holder))
            {
                powerW[holder] += _densityWPerM2 * AreaM2(quarter.AsSpan(0, left));
            }
            else if (tree.IsThere(holder))
            {
                Divide(holder, depth + 1, left);
            }
        }
    }

    /// <summary>The narrowest cell that holds the whole of something; one that is not there for what rounding leaves beyond the board.</summary>
    private int HolderOf(ReadOnlySpan<(double XM, double YM)> corners, int cell)
    {
        if (tree.IsLeaf(cell))
        {
            return cell;
        }

        (double west, double east, double south, double north) = Extent(corners);
        while (tree.IsThere(cell) && !tree.IsLeaf(cell))
        {
            (double middleX, double middleY) = tree.MiddleOf(cell);
            if ((west < middleX && east > middleX) || (south < middleY && north > middleY))
            {
                break;
            }

            cell = tree.Child(cell, (east > middleX ? 1 : 0) + (north > middleY ? 2 : 0));
        }

        return cell;
    }

    private void Fill(int cell)
    {
        if (tree.IsLeaf(cell))
        {
            powerW[cell] += _densityWPerM2 * tree.BoxOf(cell).AreaM2;
        }
        else if (tree.IsThere(cell))
        {
            for (int quarter = 0; quarter < 4; quarter++)
            {
                Fill(tree.Child(cell, quarter));
            }
        }
    }

    private static (double West, double East, double South, double North) Extent(ReadOnlySpan<(double XM, double YM)> corners)
    {
        (double west, double east, double south, double north) = (corners[0].XM, corners[0].XM, corners[0].YM, corners[0].YM);
        foreach ((double xM, double yM) in corners[1..])
        {
            (west, east) = (Math.Min(west, xM), Math.Max(east, xM));
            (south, north) = (Math.Min(south, yM), Math.Max(north, yM));
        }

        return (west, east, south, north);
    }

    private static double AreaM2(ReadOnlySpan<(double XM, double YM)> corners)
    {
        double twice = 0;
        for (int k = 2; k < corners.Length; k++)
        {
            twice += ((corners[k - 1].XM - corners[0].XM) * (corners[k].YM - corners[0].YM))
                - ((corners[k].XM - corners[0].XM) * (corners[k - 1].YM - corners[0].YM));
        }

        return twice / 2;
    }

    /// <summary>The part on one side of a line.</summary>
    /// <returns>Number of its corners.</returns>
    private static int Cut(ReadOnlySpan<(double XM, double YM)> corners, (double XM, double YM)[] part, double lineM, bool isBelow, bool isAcrossX)
    {
        int count = 0;
        (double XM, double YM) a = corners.Length > 0 ? corners[^1] : default;
        double fromA = From(a);
        foreach ((double XM, double YM) b in corners)
        {
            double fromB = From(b);
            if ((fromA < 0 && fromB > 0) || (fromA > 0 && fromB < 0))
            {
                double share = fromA / (fromA - fromB);
                part[count++] = isAcrossX ? (lineM, a.YM + (share * (b.YM - a.YM))) : (a.XM + (share * (b.XM - a.XM)), lineM);
            }

            if (fromB <= 0)
            {
                part[count++] = b;
            }

            (a, fromA) = (b, fromB);
        }

        return count;

        // Negative on the side that is kept.
        double From((double XM, double YM) corner)
        {
            double beyondM = (isAcrossX ? corner.XM : corner.YM) - lineM;
            return isBelow ? beyondM : -beyondM;
        }
    }
}
