namespace CopperPath.Electrical;

/// <summary>
/// Cuts the copper of a layer across the current, wherever the current is locally dense: the true widths and
/// currents of its necks. A cut starts in a triangle, runs both ways square to that triangle's current until it
/// leaves the copper. Its current is what the vertices on the upstream side feed through the triangles it crosses: the
/// weak form's own flux, which is conserved exactly, so that a neck carrying all of a net's current says so.
/// </summary>
public static class SectionFinder
{
    /// <summary>One cut is made through the densest triangle of each square of this size, metres.</summary>
    public const double SpacingM = 0.8e-3;

    /// <returns>Cuts in a fixed order (by square, bottom-left to top-right).</returns>
    public static IReadOnlyList<Section> Find(SheetField field)
    {
        MeshWalker walker = new(field.Mesh);
        int[] starts = [.. DensestPerSquare(field)];
        Section[] sections = new Section[starts.Length];
        Parallel.For(0, starts.Length, i => sections[i] = CutThrough(field, walker, starts[i]));
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
        double peak = 0;

        // Vertices behind the cut feed the ones in front of it.
        bool IsUpstream(int vertex) =>
            ((field.Mesh.XM[vertex] - x) * alongX) + ((field.Mesh.YM[vertex] - y) * alongY) < 0;

        // Both halves of the cut run through the first triangle, which feeds only once.
        double current = CurrentFrom(field, triangle, IsUpstream);

        void Cross(int t, double length)
        {
            if (field.Mesh.TriangleMarkers[t] != 0)
            {
                return;
            }

            width += length;
            current += t == triangle ? 0 : CurrentFrom(field, t, IsUpstream);
            peak = Math.Max(peak, field.SheetCurrentAPerM(t));
        }

        (double toX, double toY) = walker.Walk(triangle, x, y, -alongY, alongX, Cross);
        (double fromX, double fromY) = walker.Walk(triangle, x, y, alongY, -alongX, Cross);
        return new Section(field.Layer, fromX, fromY, toX, toY, x, y, width, Math.Abs(current), peak);
    }

    /// <summary>Current that the chosen vertices of a triangle feed into it: -J . grad(shape function) times its area.</summary>
    private static double CurrentFrom(SheetField field, int triangle, Func<int, bool> isChosen)
    {
        TriangleGradient g = new(field.Mesh, triangle);
        double jx = field.SheetCurrentXAPerM[triangle];
        double jy = field.SheetCurrentYAPerM[triangle];
        double sum = isChosen(field.Mesh.Triangles[3 * triangle]) ? (jx * g.X0) + (jy * g.Y0) : 0;
        sum += isChosen(field.Mesh.Triangles[(3 * triangle) + 1]) ? (jx * g.X1) + (jy * g.Y1) : 0;
        sum += isChosen(field.Mesh.Triangles[(3 * triangle) + 2]) ? (jx * g.X2) + (jy * g.Y2) : 0;
        return -g.AreaM2 * sum;
    }
}
