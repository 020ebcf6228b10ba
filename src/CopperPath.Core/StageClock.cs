using System.Diagnostics;

namespace CopperPath;

/// <summary>Tells the caller which stage begins, and keeps how long each took.</summary>
internal sealed class StageClock(Action<string>? progress)
{
    private readonly List<StageTiming> _timings = [];
    private readonly Stopwatch _watch = new();
    private string? _stage;

    public void Begin(string stage)
    {
        End();
        progress?.Invoke(stage);
        _stage = stage;
        _watch.Restart();
    }

    /// <summary>Ends the running stage and gives all timings so far.</summary>
    public IReadOnlyList<StageTiming> End()
    {
        if (_stage is not null)
        {
            _timings.Add(new StageTiming(_stage, _watch.Elapsed.TotalSeconds));
            _stage = null;
        }

        return _timings;
    }
}
