using CopperPath.Polygons;

namespace CopperPath.Benchmarks;

/// <summary>
/// Most live memory while a layer is painted, over what was live before: the heap is collected whole over and over
/// while the engine runs, and each time what is left is counted. Garbage does not count, the result does. In a second run the
/// collector is left alone, and the heap is read with the garbage in it.
/// </summary>
internal static class PeakMemory
{
    /// <param name="boards">Folder of the real boards.</param>
    /// <param name="layerCount">How many of the largest layers, by corners of their outlines.</param>
    public static void Run(string boards, int layerCount)
    {
        Console.WriteLine("| Layer | Vertices | Peak, bytes a vertex | Result | Peak with garbage | Allocated in all | Samples |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- | --- |");
        foreach (RealLayer layer in RealLayer.Of(boards).OrderByDescending(layer => layer.Vertices).Take(layerCount))
        {
            Measure(layer.Name, layer.Steps());
        }
    }

    private static void Measure(string name, IReadOnlyList<PaintStep> steps)
    {
        _ = PolygonOperations.Paint(steps);
        double vertices = TiledBoard.VerticesOf(steps);
        long before = LiveBytes();
        long allocatedBefore = GC.GetTotalAllocatedBytes(precise: true);
        (long peak, int samples, object copper) = PeakOf(LiveBytes, steps);
        long allocated = GC.GetTotalAllocatedBytes(precise: true) - allocatedBefore;
        long result = LiveBytes() - before;
        GC.KeepAlive(copper);
        copper = steps;
        long heapBefore = LiveBytes();
        (long heapPeak, _, copper) = PeakOf(HeapBytes, steps);
        GC.KeepAlive(copper);
        Console.WriteLine(FormattableString.Invariant(
            $"| {name} | {vertices:F0} | {(peak - before) / vertices:F0} | {result / vertices:F0} | {(heapPeak - heapBefore) / vertices:F0} | {allocated / vertices:F0} | {samples} |"));
    }

    /// <summary>Paints while another thread reads a gauge over and over; gives its highest reading and the copper.</summary>
    private static (long Peak, int Samples, object Copper) PeakOf(Func<long> gauge, IReadOnlyList<PaintStep> steps)
    {
        long peak = 0;
        int samples = 0;
        bool isDone = false;
        Thread sampler = new(() =>
        {
            while (!Volatile.Read(ref isDone))
            {
                peak = Math.Max(peak, gauge());
                samples++;
            }
        });
        sampler.Start();
        object copper = PolygonOperations.Paint(steps);
        Volatile.Write(ref isDone, true);
        sampler.Join();
        return (peak, samples, copper);
    }

    private static long HeapBytes()
    {
        Thread.Sleep(1);
        return GC.GetTotalMemory(forceFullCollection: false);
    }

    private static long LiveBytes()
    {
        GC.Collect(GC.MaxGeneration, GCCollectionMode.Forced, blocking: true);
        GCMemoryInfo heap = GC.GetGCMemoryInfo(GCKind.FullBlocking);
        return heap.HeapSizeBytes - heap.FragmentedBytes;
    }
}
