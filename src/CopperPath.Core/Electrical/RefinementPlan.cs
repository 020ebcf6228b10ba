namespace CopperPath.Electrical;

/// <summary>
/// How often each triangle is halved so that the bounds meet the demand with the fewest triangles. What n parts of a
/// triangle add to the distance of the bounds falls with the square of n: it falls with the fourth power of the edge, as
/// the squared error of quadratic functions does, and the edge with the square root of n. With e a triangle's share, the
/// least sum of n for a given sum of e / n^2 has n proportional to the cube root of e.
/// </summary>
internal static class RefinementPlan
{
    /// <summary>The estimate is not trusted further than this many halvings at a time: near corners the error falls slower.</summary>
    private const int MostHalvings = 4;

    /// <summary>Shares that stay above the aim in practice, because neighbours differ, are planned for.</summary>
    private const double Margin = 0.95;

    /// <param name="flows">The sheets.</param>
    /// <param name="errorOf">What a triangle adds to the error; given a sheet, the triangle and the number of the sheet.</param>
    /// <param name="allowedError">Sum to aim at, in the same unit.</param>
    /// <returns>Halvings for each triangle of each sheet.</returns>
    public static IReadOnlyList<int[]> For(
        IReadOnlyList<SheetFlow> flows, Func<SheetFlow, int, int, double> errorOf, double allowedError)
    {
        double[][] roots = new double[flows.Count][];
        Parallel.For(0, roots.Length, s =>
        {
            roots[s] = new double[flows[s].Mesh.TriangleCount];
            for (int t = 0; t < roots[s].Length; t++)
            {
                roots[s][t] = Math.Cbrt(Math.Max(0, errorOf(flows[s], t, s)));
            }
        });
        double partsPerRoot = Math.Sqrt(roots.Sum(sheet => sheet.Sum()) / (Margin * allowedError));

        // A demand just missed may round to no halving at all: ask for more until something is halved.
        double greatestRoot = roots.Max(sheet => sheet.DefaultIfEmpty().Max());
        partsPerRoot = Math.Max(partsPerRoot, 2 / greatestRoot);
        return [.. roots.Select(sheet => sheet.Select(root => HalvingsFor(root * partsPerRoot)).ToArray())];
    }

    private static int HalvingsFor(double parts) =>
        parts <= 1 ? 0 : Math.Min(MostHalvings, (int)Math.Round(Math.Log2(parts)));
}
