using CopperPath.Copper;
using CopperPath.Polygons;

namespace CopperPath.Benchmarks;

/// <summary>How the time of the engine grows from one copy of the demo board to sixteen side by side.</summary>
internal static class Growth
{
    private static readonly int[] s_copies = [1, 2, 4, 8, 16];

    /// <param name="board">Folder of the board's fabrication files.</param>
    /// <param name="turns">How often each size is painted; sizes take turns.</param>
    public static void Run(string board, int turns)
    {
        IReadOnlyList<CopperLayer> layers = Analysis.Survey(board).Board.Nets!.Layers;
        IReadOnlyList<PaintStep>[][] fields =
            [.. s_copies.Select(copies => layers.Select(layer => TiledBoard.StepsOf(layer, copies)).ToArray())];
        List<Cost>[] costs = [.. s_copies.Select(_ => new List<Cost>())];
        for (int warmUp = 0; warmUp < 20; warmUp++)
        {
            PaintAll(fields[0]);
        }

        for (int turn = 0; turn < turns; turn++)
        {
            for (int i = 0; i < fields.Length; i++)
            {
                costs[i].Add(Cost.Of(() => PaintAll(fields[i])));
            }
        }

        double[] vertices = [.. fields.Select(field => (double)field.Sum(TiledBoard.VerticesOf))];
        Cost[] medians = [.. costs.Select(Cost.MedianOf)];
        Console.WriteLine($"All {layers.Count} layers of {Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(board)))}; medians of {turns} turns; {Environment.ProcessorCount} cores");
        Console.WriteLine("| Copies | Vertices | CPU s | ns a vertex | against n log n | Elapsed s | ns a vertex |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        for (int i = 0; i < s_copies.Length; i++)
        {
            double allowed = vertices[i] * Math.Log2(vertices[i]) / (vertices[0] * Math.Log2(vertices[0]));
            Console.WriteLine(FormattableString.Invariant(
                $"| {s_copies[i]} | {vertices[i]:F0} | {medians[i].CpuS:F3} | {1e9 * medians[i].CpuS / vertices[i]:F0} | {medians[i].CpuS / medians[0].CpuS / allowed:F2} | {medians[i].WallS:F3} | {1e9 * medians[i].WallS / vertices[i]:F0} |"));
        }

        Console.WriteLine(FormattableString.Invariant(
            $"Time grows as n^{Exponent(vertices, medians.Select(cost => cost.CpuS)):F3} (processor), n^{Exponent(vertices, medians.Select(cost => cost.WallS)):F3} (elapsed); n log n would be n^{Exponent(vertices, vertices.Select(n => n * Math.Log2(n))):F3} here."));
    }

    private static void PaintAll(IReadOnlyList<PaintStep>[] layers)
    {
        foreach (IReadOnlyList<PaintStep> steps in layers)
        {
            _ = PolygonOperations.Paint(steps);
        }
    }

    /// <summary>Slope of the least-squares line through the logarithms.</summary>
    private static double Exponent(IEnumerable<double> sizes, IEnumerable<double> times)
    {
        (double X, double Y)[] points = [.. sizes.Zip(times, (size, time) => (Math.Log(size), Math.Log(time)))];
        double meanX = points.Average(p => p.X), meanY = points.Average(p => p.Y);
        return points.Sum(p => (p.X - meanX) * (p.Y - meanY)) / points.Sum(p => (p.X - meanX) * (p.X - meanX));
    }
}
