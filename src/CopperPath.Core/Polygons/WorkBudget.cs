namespace CopperPath.Polygons;

/// <summary>
/// What one operation may cost. It is counted, not timed, so that it is spent by the same input on any machine and with
/// any number of cores: about one unit for a comparison of two segments, and more for what is kept in memory.
/// </summary>
internal sealed class WorkBudget(long mostUnits)
{
    /// <summary>Units for a passage through a hot pixel, which is kept, copied and sorted.</summary>
    public const int UnitsPerPassage = 40;

    /// <summary>Units for any operation, a second or two of one core.</summary>
    private const long Base = 200_000_000;

    /// <summary>Units for each segment more; layers of real boards spend a tenth of it.</summary>
    private const long UnitsPerSegment = 100;

    private long _spentUnits;

    /// <summary>Units spent so far.</summary>
    public long SpentUnits => Interlocked.Read(ref _spentUnits);

    /// <summary>The budget of an operation on so many segments.</summary>
    public static WorkBudget For(int segments) => new(Base + (UnitsPerSegment * segments));

    /// <summary>Spends; whether there is any left then is the same whatever the order of spending.</summary>
    /// <exception cref="SpentBudgetException">More was spent than there was.</exception>
    public void Spend(long units)
    {
        if (Interlocked.Add(ref _spentUnits, units) > mostUnits)
        {
            throw new SpentBudgetException();
        }
    }
}

/// <summary>Ends the work on a tile when the budget of the operation is spent.</summary>
internal sealed class SpentBudgetException() : Exception("the work budget of the operation is spent");
