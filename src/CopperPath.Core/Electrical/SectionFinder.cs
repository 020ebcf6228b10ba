using System.Runtime.InteropServices;

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

    /// <summary>From how many cuts of a layer, the worst of their surroundings, a search for a worse one starts.</summary>
    private const int SearchCount = 100;

    /// <param name="field">The layer.</param>
    /// <param name="severity">What makes one cut worse than another; positive, larger is worse.</param>
    /// <returns>Cuts in a fixed order (by square of their start, bottom-left to top-right).</returns>
    public static IReadOnlyList<Section> Find(SheetField field, Func<Section, double> severity)
    {
        SectionSearch search = new(field, severity);
        Dictionary<(long Row, long Column), int> starts = DensestPerSquare(field);
        (long Row, long Column)[] squares = [.. starts.Keys.Order()];
        Section[] sections = new Section[squares.Length];
        Parallel.For(0, squares.Length, i => sections[i] = search.Across(starts[squares[i]]));

        Dictionary<(long, long), double> severities = [];
        for (int i = 0; i < squares.Length; i++)
        {
            severities[squares[i]] = severity(sections[i]);
        }

        int[] worst = [.. Enumerable.Range(0, squares.Length)
            .Where(i => IsWorstAround(squares[i], severities))
            .OrderByDescending(i => severities[squares[i]]).Take(SearchCount)];
        Parallel.For(0, worst.Length, i => sections[worst[i]] = search.From(starts[squares[worst[i]]]));
        return sections;
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

    private static Dictionary<(long Row, long Column), int> DensestPerSquare(SheetField field)
    {
        double[] density = new double[field.Mesh.TriangleCount];
        Parallel.For(0, density.Length, t => density[t] = field.Mesh.IsHeld(t) ? 0 : field.CopperCurrentAPerM(t));
        Dictionary<(long Row, long Column), int> densest = [];
        for (int t = 0; t < density.Length; t++)
        {
            if (density[t] == 0)
            {
                continue;
            }

            (double x, double y) = MeshWalker.Centroid(field.Mesh, t);
            (long, long) square = ((long)Math.Floor(y / SpacingM), (long)Math.Floor(x / SpacingM));
            ref int best = ref CollectionsMarshal.GetValueRefOrAddDefault(densest, square, out bool isKnown);
            if (!isKnown || density[t] > density[best])
            {
                best = t;
            }
        }

        return densest;
    }
}
