using CopperPath.Polygons;

namespace CopperPath.Benchmarks;

/// <summary>
/// Most live memory while a layer is painted, over what was live before: the heap is collected whole over and over
/// while the engine runs, and each time what is left is counted. Garbage does not count, the result does.
/// </summary>
internal static class PeakMemory
{
    /// <param name="boards">Folder of the real boards.</param>
    /// <param name="layerCount">How many of the largest layers, by corners of their outlines.</param>
    public static void Run(string boards, int layerCount)
    {
        Console.WriteLine("| Layer | Vertices | Peak, bytes a vertex | Result | Allocated in all | Collections |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- |");
        foreach (RealLayer layer in RealLayer.Of(boards).OrderByDescending(layer => layer.Vertices).Take(layerCount))
        {
            Measure(layer.Name, layer.Steps());
        }
    }

    private static void Measure(string name, IReadOnlyList<PaintStep> steps)
    {
        _ = PolygonOperations.Paint(steps);
        long before = LiveBytes(), peak = before;
        int samples = 0;
        bool isDone = false;
        Thread sampler = new(() =>
        {
            while (!Volatile.Read(ref isDone))
            {
                peak = Math.Max(peak, LiveBytes());
                samples++;
            }
        });
        long allocatedBefore = GC.GetTotalAllocatedBytes(precise: true);
        sampler.Start();
        object copper = PolygonOperations.Paint(steps);
        Volatile.Write(ref isDone, true);
        sampler.Join();
        long allocated = GC.GetTotalAllocatedBytes(precise: true) - allocatedBefore;
        long result = LiveBytes() - before;
        GC.KeepAlive(copper);
        double vertices = TiledBoard.VerticesOf(steps);
        Console.WriteLine(FormattableString.Invariant(
            $"| {name} | {vertices:F0} | {(peak - before) / vertices:F0} | {result / vertices:F0} | {allocated / vertices:F0} | {samples} |"));
    }

    private static long LiveBytes()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true);
        GCMemoryInfo heap = GC.GetGCMemoryInfo(GCKind.FullBlocking);
        return heap.HeapSizeBytes - heap.FragmentedBytes;
    }
}
