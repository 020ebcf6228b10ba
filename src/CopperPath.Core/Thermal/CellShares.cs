using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>Divides areas among the cells they lie in.</summary>
internal static class CellShares
{
    /// <summary>Smaller parts are what rounding leaves where triangles of a fan cancel.</summary>
    private const double LeastShare = 1e-12;

    /// <summary>Shares of the area inside rings that do not overlap (outer ones counter-clockwise, holes clockwise); they add to 1.</summary>
    public static IReadOnlyList<(int Node, double Share)> Of(HeatGrid grid, int plane, IEnumerable<PointNm[]> rings)
    {
        SortedDictionary<int, double> areas = [];
        Span<(double X, double Y)> corners = stackalloc (double, double)[3];
        double signedM2 = 0;
        Action<int, int, double> add = (i, j, share) =>
        {
            int node = grid.Node(i, j, plane);
            areas[node] = areas.GetValueOrDefault(node) + (share * signedM2);
        };

        // A fan of triangles from the first corner: those that turn the other way take their area back.
        foreach (PointNm[] ring in rings)
        {
            for (int k = 1; k + 1 < ring.Length; k++)
            {
                (corners[0], corners[1], corners[2]) = (Metres(ring[0]), Metres(ring[k]), Metres(ring[k + 1]));
                signedM2 = SignedArea(corners);
                if (signedM2 != 0)
                {
                    Divide(grid, corners, add);
                }
            }
        }

        double totalM2 = areas.Values.Sum();
        return [.. areas.Where(part => part.Value > LeastShare * totalM2).Select(part => (part.Key, part.Value / totalM2))];
    }

    /// <summary>
    /// Parts of a triangle by exact clipping along the grid lines; their shares add to 1. What lies beyond the grid
    /// counts to the outermost cells.
    /// </summary>
    public static void Divide(
        HeatGrid grid, ReadOnlySpan<(double X, double Y)> triangle, Action<int, int, double> part)
    {
        (double minX, double maxX) = (Math.Min(triangle[0].X, Math.Min(triangle[1].X, triangle[2].X)), Math.Max(triangle[0].X, Math.Max(triangle[1].X, triangle[2].X)));
        (double minY, double maxY) = (Math.Min(triangle[0].Y, Math.Min(triangle[1].Y, triangle[2].Y)), Math.Max(triangle[0].Y, Math.Max(triangle[1].Y, triangle[2].Y)));
        (int firstI, int lastI) = (grid.X.CellAt(minX), grid.X.CellAt(maxX));
        (int firstJ, int lastJ) = (grid.Y.CellAt(minY), grid.Y.CellAt(maxY));
        if (firstI == lastI && firstJ == lastJ)
        {
            part(firstI, firstJ, 1);
            return;
        }

        double wholeM2 = SignedArea(triangle);
        Span<(double X, double Y)> column = stackalloc (double, double)[8];
        Span<(double X, double Y)> work = stackalloc (double, double)[8];
        Span<(double X, double Y)> cell = stackalloc (double, double)[8];
        for (int i = firstI; i <= lastI; i++)
        {
            int count = Clip(triangle, work, i == firstI ? double.NegativeInfinity : grid.X.LinesM[i], keepAbove: true, alongX: true);
            count = Clip(work[..count], column, i == lastI ? double.PositiveInfinity : grid.X.LinesM[i + 1], keepAbove: false, alongX: true);
            for (int j = firstJ; j <= lastJ; j++)
            {
                int inRow = Clip(column[..count], work, j == firstJ ? double.NegativeInfinity : grid.Y.LinesM[j], keepAbove: true, alongX: false);
                inRow = Clip(work[..inRow], cell, j == lastJ ? double.PositiveInfinity : grid.Y.LinesM[j + 1], keepAbove: false, alongX: false);
                double share = SignedArea(cell[..inRow]) / wholeM2;
                if (share > 0)
                {
                    part(i, j, share);
                }
            }
        }
    }

    /// <summary>Cuts a convex polygon along a line across one axis (Sutherland and Hodgman, 1974).</summary>
    private static int Clip(
        ReadOnlySpan<(double X, double Y)> from, Span<(double X, double Y)> to, double lineM, bool keepAbove, bool alongX)
    {
        int count = 0;
        double sign = keepAbove ? 1 : -1;
        for (int k = 0; k < from.Length; k++)
        {
            (double X, double Y) a = from[k];
            (double X, double Y) b = from[(k + 1) % from.Length];
            double insideA = sign * ((alongX ? a.X : a.Y) - lineM);
            double insideB = sign * ((alongX ? b.X : b.Y) - lineM);
            if (insideA >= 0)
            {
                to[count++] = a;
            }

            if ((insideA >= 0) != (insideB >= 0))
            {
                double at = insideA / (insideA - insideB);
                to[count++] = (a.X + (at * (b.X - a.X)), a.Y + (at * (b.Y - a.Y)));
            }
        }

        return count;
    }

    private static (double X, double Y) Metres(PointNm p) => (Units.MetresFromNm(p.X), Units.MetresFromNm(p.Y));

    private static double SignedArea(ReadOnlySpan<(double X, double Y)> polygon)
    {
        double twice = 0;
        for (int k = 1; k + 1 < polygon.Length; k++)
        {
            twice += ((polygon[k].X - polygon[0].X) * (polygon[k + 1].Y - polygon[0].Y))
                - ((polygon[k].Y - polygon[0].Y) * (polygon[k + 1].X - polygon[0].X));
        }

        return twice / 2;
    }
}
