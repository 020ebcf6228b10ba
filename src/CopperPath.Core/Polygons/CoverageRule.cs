namespace CopperPath.Polygons;

/// <summary>
/// Keeps the winding numbers of all sources at one place of the plane while a walk moves that place across edges,
/// and says what covers it.
/// </summary>
internal abstract class CoverageRule
{
    private readonly int[] _winding;

    protected CoverageRule(int sourceCount) => _winding = new int[sourceCount];

    /// <summary>Up to 64 yes/no answers about the present place; what they mean is the rule's own affair.</summary>
    public abstract ulong Coverage { get; }

    /// <summary>Crosses an edge: <paramref name="direction"/> is +1 towards its left side, -1 towards its right.</summary>
    public void Cross(ReadOnlySpan<Contribution> contributions, int direction)
    {
        foreach (Contribution contribution in contributions)
        {
            int before = _winding[contribution.Source];
            int after = before + (direction * contribution.Delta);
            _winding[contribution.Source] = after;
            if (before == 0)
            {
                Enter(contribution.Source);
            }
            else if (after == 0)
            {
                Leave(contribution.Source);
            }
        }
    }

    protected abstract void Enter(int source);

    protected abstract void Leave(int source);
}

/// <summary>One bit for each source: set where its winding number is not zero.</summary>
internal sealed class CoveredBySource(int sourceCount) : CoverageRule(sourceCount)
{
    public const int MaxSources = 64;

    private ulong _covering;

    public override ulong Coverage => _covering;

    protected override void Enter(int source) => _covering |= 1UL << source;

    protected override void Leave(int source) => _covering &= ~(1UL << source);
}

/// <summary>One bit: set where the last run of objects that covers the place is dark.</summary>
/// <remarks>
/// A run is a stretch of the painting order with one polarity; runs alternate. Bits of the covering runs are kept
/// in words, and a bit for each word that is not zero in a word above, so that the last run is found in a step or two.
/// </remarks>
internal sealed class CoveredByPaint : CoverageRule
{
    private readonly int[] _runOfSource;
    private readonly bool[] _isDark;
    private readonly int[] _coveringOfRun;
    private readonly ulong[] _runs;
    private readonly ulong[] _words;

    public CoveredByPaint(int[] runOfSource, bool[] isDark)
        : base(runOfSource.Length)
    {
        _runOfSource = runOfSource;
        _isDark = isDark;
        _coveringOfRun = new int[isDark.Length];
        _runs = new ulong[(isDark.Length / 64) + 1];
        _words = new ulong[(_runs.Length / 64) + 1];
    }

    public override ulong Coverage
    {
        get
        {
            for (int w = _words.Length - 1; w >= 0; w--)
            {
                if (_words[w] != 0)
                {
                    int word = (w * 64) + System.Numerics.BitOperations.Log2(_words[w]);
                    int run = (word * 64) + System.Numerics.BitOperations.Log2(_runs[word]);
                    return _isDark[run] ? 1UL : 0UL;
                }
            }

            return 0;
        }
    }

    protected override void Enter(int source)
    {
        int run = _runOfSource[source];
        if (_coveringOfRun[run]++ == 0)
        {
            _runs[run / 64] |= 1UL << (run % 64);
            _words[run / 4096] |= 1UL << (run / 64 % 64);
        }
    }

    protected override void Leave(int source)
    {
        int run = _runOfSource[source];
        if (--_coveringOfRun[run] == 0)
        {
            _runs[run / 64] &= ~(1UL << (run % 64));
            if (_runs[run / 64] == 0)
            {
                _words[run / 4096] &= ~(1UL << (run / 64 % 64));
            }
        }
    }
}
