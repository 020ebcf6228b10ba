namespace CopperPath.Brief;

/// <summary>What every section reader shares: where faults go, how values are read, which defaults were used.</summary>
internal sealed class BriefContext(DiagnosticSink sink)
{
    private readonly List<string> _statedDefaults = [];

    public DiagnosticSink Sink { get; } = sink;

    /// <summary>Converters read so far: terminals may ask for their currents.</summary>
    public IReadOnlyList<ConverterSection> Converters { get; set; } = [];

    public BriefValues Values { get; } = new(sink);

    public IReadOnlyList<string> StatedDefaults => _statedDefaults;

    public void StateDefault(string line) => _statedDefaults.Add(line);
}
