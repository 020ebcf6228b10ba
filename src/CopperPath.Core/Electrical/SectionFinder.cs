
namespace CopperPath.Electrical;

/// <summary>
/// Cuts the copper of a layer across the current, wherever the current is locally dense: the true widths and
/// currents of its necks. A cut starts in a triangle, runs both ways square to that triangle's current until it
/// leaves the copper, and sums |J . n| dl, so that current flowing along the cut or back counts as it crosses.
/// </summary>
public static class SectionFinder
{
    /// <summary>One cut is made through the densest triangle of each square of this size, metres.</summary>
    public const double SpacingM = 0.4e-3;

    /// <returns>Cuts in a fixed order (by square, bottom-left to top-right).</returns>
    public static IReadOnlyList<Section> Find(SheetField field)
    {
        MeshWalker walker = new(field.Mesh);
        List<Section> sections = [];
        foreach (int triangle in DensestPerSquare(field))
        {
            sections.Add(CutThrough(field, walker, triangle));
        }

        return sections;
    }

    private static IEnumerable<int> DensestPerSquare(SheetField field)
    {
        SortedDictionary<(long Row, long Column), (int Triangle, double Density)> squares = [];
        for (int t = 0; t < field.Mesh.TriangleCount; t++)
        {
            double density = field.SheetCurrentAPerM(t);
            if (field.Mesh.TriangleMarkers[t] != 0 || density == 0)
            {
                continue;
            }

            (double x, double y) = MeshWalker.Centroid(field.Mesh, t);
            (long, long) square = ((long)Math.Floor(y / SpacingM), (long)Math.Floor(x / SpacingM));
            if (!squares.TryGetValue(square, out (int, double Density) best) || density > best.Density)
            {
                squares[square] = (t, density);
            }
        }

        return squares.Values.Select(best => best.Triangle);
    }

    private static Section CutThrough(SheetField field, MeshWalker walker, int triangle)
    {
        (double x, double y) = MeshWalker.Centroid(field.Mesh, triangle);
        double density = field.SheetCurrentAPerM(triangle);
        double alongX = field.SheetCurrentXAPerM[triangle] / density;
        double alongY = field.SheetCurrentYAPerM[triangle] / density;
        double width = 0;
        double current = 0;
        double peak = 0;

        void Cross(int t, double length)
        {
            if (field.Mesh.TriangleMarkers[t] != 0)
            {
                return;
            }

            width += length;
            current += length * ((field.SheetCurrentXAPerM[t] * alongX) + (field.SheetCurrentYAPerM[t] * alongY));
            peak = Math.Max(peak, field.SheetCurrentAPerM(t));
        }

        (double toX, double toY) = walker.Walk(triangle, x, y, -alongY, alongX, Cross);
        (double fromX, double fromY) = walker.Walk(triangle, x, y, alongY, -alongX, Cross);
        return new Section(field.Layer, fromX, fromY, toX, toY, x, y, width, Math.Abs(current), peak);
    }
}
