namespace CopperPath.Cli.Output;

/// <summary>
/// What lies on disk and must not stay there should the program be stopped. Disk is touched under one lock: whoever stops the
/// program takes it and never gives it back, so that nothing is written behind the clearing up, and no swap is cut in two.
/// </summary>
internal static class Unfinished
{
    private static readonly Lock s_disk = new();
    private static readonly List<IDisposable> s_drafts = [];

    /// <summary>Touches the disk; what the action leaves unfinished has been named by <see cref="Add"/> before.</summary>
    public static void Undisturbed(Action action)
    {
        lock (s_disk)
        {
            action();
        }
    }

    public static void Add(IDisposable draft)
    {
        lock (s_disk)
        {
            s_drafts.Add(draft);
        }
    }

    public static void Remove(IDisposable draft)
    {
        lock (s_disk)
        {
            s_drafts.Remove(draft);
        }
    }

    /// <summary>Removes all drafts; the disk is closed to other threads from here to the end of the process.</summary>
    public static void ClearForGood()
    {
        s_disk.Enter();
        foreach (IDisposable draft in s_drafts.ToArray())
        {
            draft.Dispose();
        }
    }
}
