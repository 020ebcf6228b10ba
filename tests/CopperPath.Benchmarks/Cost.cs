using System.Diagnostics;

namespace CopperPath.Benchmarks;

/// <summary>What one piece of work cost.</summary>
/// <param name="CpuS">Processor seconds of all threads of the process, collections and compiler included.</param>
/// <param name="WallS">Elapsed seconds.</param>
internal readonly record struct Cost(double CpuS, double WallS)
{
    /// <summary>Does the work once and measures it; garbage of earlier work is swept away first.</summary>
    public static Cost Of(Action work)
    {
        GC.Collect();
        GC.WaitForPendingFinalizers();
        TimeSpan cpu = Environment.CpuUsage.TotalTime;
        Stopwatch watch = Stopwatch.StartNew();
        work();
        double wallS = watch.Elapsed.TotalSeconds;
        return new Cost((Environment.CpuUsage.TotalTime - cpu).TotalSeconds, wallS);
    }

    /// <summary>Median of each of the two.</summary>
    public static Cost MedianOf(IReadOnlyCollection<Cost> costs) =>
        new(Median(costs.Select(cost => cost.CpuS)), Median(costs.Select(cost => cost.WallS)));

    private static double Median(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
