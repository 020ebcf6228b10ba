using System.Diagnostics;
using System.Globalization;

namespace CopperPath.Core.Tests.Gallery;

/// <summary>Elapsed and processor seconds of one kind of work, turn by turn.</summary>
internal sealed class TimedSeries(string name)
{
    private readonly List<double> _elapsed = [];
    private readonly List<double> _processor = [];

    public double ElapsedSeconds => Median(_elapsed);

    public double ProcessorSeconds => Median(_processor);

    public void Time(Action action)
    {
        using Process process = Process.GetCurrentProcess();
        TimeSpan before = process.TotalProcessorTime;
        Stopwatch watch = Stopwatch.StartNew();
        action();
        watch.Stop();
        process.Refresh();
        _elapsed.Add(watch.Elapsed.TotalSeconds);
        _processor.Add((process.TotalProcessorTime - before).TotalSeconds);
    }

    /// <summary>Takes what another program printed: elapsed and processor seconds of one factorization and solve.</summary>
    public void Add(string report)
    {
        double[] seconds = [.. report.Trim().Split(' ').Select(word => double.Parse(word, CultureInfo.InvariantCulture))];
        _elapsed.Add(seconds[0]);
        _processor.Add(seconds[1]);
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"  {name}: {Median(_elapsed):F4} s elapsed (least {_elapsed.Min():F4}), {Median(_processor):F4} s of processor");

    private static double Median(List<double> seconds) => seconds.Order().ElementAt(seconds.Count / 2);
}
