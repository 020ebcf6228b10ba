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
        RealLayer[] bySize = [.. RealLayer.Of(boards).Where(layer => layer.Runs == 1).OrderByDescending(layer => layer.Vertices)];
        WarmUp(bySize[bySize.Length / 2]);

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

    /// <summary>Both sides on a middling layer until the compiler is done with them.</summary>
    private static void WarmUp(RealLayer layer)
    {
        IReadOnlyList<PaintStep> steps = layer.Steps();
        for (int run = 0; run < 40; run++)
        {
            _ = PolygonOperations.Paint(steps);
        }

        _ = PaintingOracle.Union(PaintingOracle.ShapesOf(layer.Objects));
    }
}
