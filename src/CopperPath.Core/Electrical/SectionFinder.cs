namespace CopperPath.Electrical;

/// <summary>
/// Searches the copper of a layer for the cuts a reviewer should look at: the true widths and currents of its necks.
/// A cut is made through the densest triangle of each square of a raster, square to the current there. Where it is
/// worse than those of the squares around it, it is shifted and turned for as long as that makes it worse still. A cut
/// carries the balanced current, so that its amperes depend only on where its ends lie: a neck that carries all of a
/// net's current says so.
/// </summary>
public static class SectionFinder
{
    /// <summary>One cut is made in each square of this size, metres.</summary>
    public const double SpacingM = 0.8e-3;

    /// <summary>A cut this much milder than the worst of the layer is not searched further.</summary>
    private const double LeastShareOfWorst = 0.2;

    /// <param name="field">The layer.</param>
    /// <param name="severity">What makes one cut worse than another; positive, larger is worse.</param>
    /// <returns>Cuts in a fixed order (by square of their start, bottom-left to top-right).</returns>
    public static IReadOnlyList<Section> Find(SheetField field, Func<Section, double> severity)
    {
        SectionSearch search = new(field, severity);
        SortedDictionary<(long Row, long Column), int> starts = DensestPerSquare(field);
        (long Row, long Column)[] squares = [.. starts.Keys];
        Section[] sections = new Section[squares.Length];
        Parallel.For(0, squares.Length, i => sections[i] = search.Across(starts[squares[i]]));

        Dictionary<(long, long), double> severities = [];
        for (int i = 0; i < squares.Length; i++)
        {
            severities[squares[i]] = severity(sections[i]);
        }

        double least = LeastShareOfWorst * severities.Values.DefaultIfEmpty().Max();
        Section[] worst = [.. sections];
        Parallel.For(0, squares.Length, i =>
        {
            if (severities[squares[i]] >= least && IsWorstAround(squares[i], severities))
            {
                worst[i] = search.From(starts[squares[i]]);
            }
        });
        return worst;
    }

    private static bool IsWorstAround((long Row, long Column) square, Dictionary<(long, long), double> severities)
    {
        for (long row = square.Row - 1; row <= square.Row + 1; row++)
        {
            for (long column = square.Column - 1; column <= square.Column + 1; column++)
            {
                if (severities.TryGetValue((row, column), out double other) && other > severities[square])
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static SortedDictionary<(long Row, long Column), int> DensestPerSquare(SheetField field)
    {
        SortedDictionary<(long Row, long Column), int> densest = [];
        for (int t = 0; t < field.Mesh.TriangleCount; t++)
        {
            double density = field.SheetCurrentAPerM(t);
            if (field.Mesh.TriangleMarkers[t] != 0 || density == 0)
            {
                continue;
            }

            (double x, double y) = MeshWalker.Centroid(field.Mesh, t);
            (long, long) square = ((long)Math.Floor(y / SpacingM), (long)Math.Floor(x / SpacingM));
            if (!densest.TryGetValue(square, out int best) || density > field.SheetCurrentAPerM(best))
            {
                densest[square] = t;
            }
        }

        return densest;
    }
}
