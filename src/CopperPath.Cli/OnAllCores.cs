namespace CopperPath.Cli;

/// <summary>Work on all cores with the results in the order of what they were made from.</summary>
internal static class OnAllCores
{
    /// <summary>Each item is taken by whichever core is free next, the first ones first: put the longest work there.</summary>
    public static TMade[] Of<TItem, TMade>(IReadOnlyList<TItem> items, Func<TItem, TMade> make)
    {
        TMade[] made = new TMade[items.Count];
        int taken = 0;
        Parallel.For(0, Math.Min(Environment.ProcessorCount, items.Count), _ =>
        {
            for (int i = Interlocked.Increment(ref taken) - 1; i < made.Length; i = Interlocked.Increment(ref taken) - 1)
            {
                made[i] = make(items[i]);
            }
        });
        return made;
    }
}
