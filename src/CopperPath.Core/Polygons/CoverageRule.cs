namespace CopperPath.Polygons;

/// <summary>
/// Says which places are covered, given which sources wind around them. What is known of a place is one number, the
/// state: 0 where no source covers it.
/// </summary>
internal sealed class CoverageRule
{
    private readonly int[]? _layerOfSource;
    private readonly bool[] _isCovered;
    private readonly bool _isParity;

    private CoverageRule(int[]? layerOfSource, bool[] isCovered, bool isParity = false)
    {
        _layerOfSource = layerOfSource;
        _isCovered = isCovered;
        _isParity = isParity;
    }

    /// <summary>
    /// Sources painted over each other: a place looks as the last layer covering it does.
    /// </summary>
    /// <param name="layerOfSource">Number of each source's layer, from 1 upwards in painting order.</param>
    /// <param name="isDark">Look of each layer; that of layer 0 is the bare ground.</param>
    public static CoverageRule Painted(int[] layerOfSource, bool[] isDark) => new(layerOfSource, isDark);

    /// <summary>A set operation.</summary>
    /// <param name="isCovered">Entry m is the answer where the sources whose bits are set in m cover, and no others.</param>
    public static CoverageRule OfSets(params bool[] isCovered) => new(null, isCovered);

    /// <summary>Places that an odd number of sources cover.</summary>
    public static CoverageRule OddNumber() => new(null, [false, true], isParity: true);

    /// <summary>Whether some sources may hide others, whatever else covers a place.</summary>
    public bool KnowsHiding => _layerOfSource is not null;

    /// <summary>State of a place that one more source covers.</summary>
    public int With(int state, int source) =>
        _layerOfSource is null ? _isParity ? state ^ 1 : state | (1 << source) : Math.Max(state, _layerOfSource[source]);

    /// <summary>Whether a place of this state stays as it is, whether the source covers it or not.</summary>
    public bool Hides(int state, int source) =>
        _layerOfSource is not null && state >= _layerOfSource[source];

    public bool IsCovered(int state) => _isCovered[state];
}
