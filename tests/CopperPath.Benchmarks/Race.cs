using CopperPath.Geometry;
using CopperPath.Polygons;
using NtsGeometry = NetTopologySuite.Geometries.Geometry;

namespace CopperPath.Benchmarks;

/// <summary>
/// The engine and NetTopologySuite unite the same outlines on the same grid of one nanometre, in turns within one run.
/// Each is given the outlines in its own form before the clock starts, and gives finished polygons.
/// </summary>
internal static class Race
{
    private const int OurRunsPerTurn = 5;

    /// <param name="boards">Folder of the real boards.</param>
    /// <param name="layerCount">How many of the largest layers, by corners of their outlines.</param>
    /// <param name="turns">How often each side has its turn.</param>
    public static void Run(string boards, int layerCount, int turns)
    {
        RealLayer[] bySize = BySize(boards);
        RealLayer middling = bySize[bySize.Length / 2];
        WarmUp(middling);
        _ = PaintingOracle.Union(PaintingOracle.ShapesOf(middling.Objects));

        Console.WriteLine($"Medians of {turns} turns of the oracle (one run each) and of ours ({OurRunsPerTurn} runs each); {Environment.ProcessorCount} cores");
        Console.WriteLine("| Layer | Objects | Vertices | Ours, CPU s | Oracle, CPU s | Times | Ours, elapsed s | Oracle, elapsed s | Times | Areas differ by |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (RealLayer layer in bySize.Take(layerCount))
        {
            IReadOnlyList<PaintStep> steps = layer.Steps();
            NtsGeometry[] shapes = PaintingOracle.ShapesOf(layer.Objects);
            List<Cost> ours = [], oracle = [];
            double ourArea = 0, oracleArea = 0;
            for (int turn = 0; turn < turns; turn++)
            {
                for (int run = 0; run < OurRunsPerTurn; run++)
                {
                    IReadOnlyList<PolygonNm> copper = [];
                    ours.Add(Cost.Of(() => copper = PolygonOperations.Paint(steps)));
                    ourArea = copper.Sum(polygon => polygon.AreaNm2);
                }

                NtsGeometry? union = null;
                oracle.Add(Cost.Of(() => union = PaintingOracle.Union(shapes)));
                oracleArea = union!.Area;
            }

            (Cost our, Cost its) = (Cost.MedianOf(ours), Cost.MedianOf(oracle));
            Console.WriteLine(FormattableString.Invariant(
                $"| {layer.Name} | {layer.Objects.Count} | {layer.Vertices} | {our.CpuS:F3} | {its.CpuS:F2} | {its.CpuS / our.CpuS:F1} | {our.WallS:F3} | {its.WallS:F2} | {its.WallS / our.WallS:F1} | {Math.Abs(ourArea - oracleArea) / oracleArea:E1} |"));
        }
    }

    /// <summary>Only the engine, layer by layer in turns: what two builds are compared by.</summary>
    public static void RunAlone(string boards, int layerCount, int turns)
    {
        RealLayer[] bySize = BySize(boards);
        WarmUp(bySize[bySize.Length / 2]);
        (RealLayer Layer, IReadOnlyList<PaintStep> Steps, List<Cost> Costs)[] layers =
            [.. bySize.Take(layerCount).Select(layer => (layer, layer.Steps(), new List<Cost>()))];
        for (int turn = 0; turn < turns; turn++)
        {
            foreach ((_, IReadOnlyList<PaintStep> steps, List<Cost> costs) in layers)
            {
                costs.Add(Cost.Of(() => PolygonOperations.Paint(steps)));
            }
        }

        Console.WriteLine($"Medians of {turns} runs; {Environment.ProcessorCount} cores");
        Console.WriteLine("| Layer | Objects | Vertices | CPU s | Elapsed s |");
        Console.WriteLine("| --- | --- | --- | --- | --- |");
        foreach ((RealLayer layer, _, List<Cost> costs) in layers)
        {
            Cost cost = Cost.MedianOf(costs);
            Console.WriteLine(FormattableString.Invariant(
                $"| {layer.Name} | {layer.Objects.Count} | {layer.Vertices} | {cost.CpuS:F3} | {cost.WallS:F3} |"));
        }
    }

    private static RealLayer[] BySize(string boards) =>
        [.. RealLayer.Of(boards).Where(layer => layer.Runs == 1).OrderByDescending(layer => layer.Vertices)];

    /// <summary>The engine on a middling layer until the compiler is done with it.</summary>
    private static void WarmUp(RealLayer layer)
    {
        IReadOnlyList<PaintStep> steps = layer.Steps();
        for (int run = 0; run < 40; run++)
        {
            _ = PolygonOperations.Paint(steps);
        }
    }
}
