using CopperPath.Geometry;

namespace CopperPath.Thermal;

/// <summary>Shares of an area by the columns it lies in.</summary>
internal static class AreaShares
{
    /// <summary>Columns and their shares of the area inside rings that do not overlap (outer ones counter-clockwise, holes clockwise); they add to 1.</summary>
    public static IReadOnlyList<(int Column, double Share)> Of(TreeCells cells, IEnumerable<PointNm[]> rings)
    {
        SortedDictionary<int, double> areas = [];
        double wholeM2 = 0;
        new CellClipper(cells.Tree).Divide(rings, (leaf, areaM2, _) =>
        {
            int column = cells.ColumnOf(leaf);
            areas[column] = areas.GetValueOrDefault(column) + areaM2;
            wholeM2 += areaM2;
        });
        return [.. areas.Select(part => (part.Key, part.Value / wholeM2))];
    }
}
