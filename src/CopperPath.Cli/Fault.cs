namespace CopperPath.Cli;

/// <summary>What went wrong where nothing should, in the words of one line.</summary>
internal static class Fault
{
    /// <summary>The line that ends a run; no stack trace, for the reader is no programmer.</summary>
    public static string LineOf(Exception fault) => IsOutOfMemory(fault)
        ? $"{Product.Name}: error RUN002: found too little memory for this board; expected more of it; the run was given up"
        : $"{Product.Name}: error RUN001: found a fault of the program ({WordsOf(fault)}); expected none: please report it with the files that led to it; the run was given up";

    /// <summary>The innermost cause; of several from work done side by side, the same one whatever the thread count.</summary>
    public static string WordsOf(Exception fault)
    {
        if (IsOutOfMemory(fault))
        {
            return "out of memory";
        }

        Exception cause = Innermost(fault).MinBy(inner => $"{inner.GetType().Name}: {inner.Message}", StringComparer.Ordinal)!;
        return $"{cause.GetType().Name}: {cause.Message}";
    }

    /// <summary>True for work that was called off, which is no fault.</summary>
    public static bool IsCancellation(Exception fault) => Innermost(fault).Any(inner => inner is OperationCanceledException);

    private static bool IsOutOfMemory(Exception fault) => Innermost(fault).Any(inner => inner is OutOfMemoryException);

    private static IEnumerable<Exception> Innermost(Exception fault) => fault switch
    {
        AggregateException { InnerExceptions.Count: > 0 } several => several.InnerExceptions.SelectMany(Innermost),
        { InnerException: { } inner } => Innermost(inner),
        _ => [fault],
    };
}
