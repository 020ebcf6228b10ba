using System.Collections.Concurrent;

namespace CopperPath.Cli.Report;

/// <summary>A part of the report that could not be made.</summary>
/// <param name="Name">Its file, or the section of a file.</param>
/// <param name="Reason">What went wrong, in words.</param>
/// <param name="IsResult">True where it holds the results themselves, false where it only shows them.</param>
internal sealed record MissingPart(string Name, string Reason, bool IsResult)
{
    /// <summary>The one line a person reads.</summary>
    public override string ToString() =>
        $"{Name}: error OUT005: found a fault while it was made ({Reason}); expected a part of the report; the rest does not lack it";
}

/// <summary>
/// Makes the parts of a report, each by itself: what fails is named and left out, so that a picture that can not be
/// drawn never takes results, findings or the exit code with it.
/// </summary>
internal sealed class ReportParts
{
    private readonly ConcurrentBag<MissingPart> _missing = [];

    /// <summary>What could not be made, in the order of the names.</summary>
    public IReadOnlyList<MissingPart> Missing =>
        [.. _missing.OrderBy(part => part.Name, StringComparer.Ordinal).ThenBy(part => part.Reason, StringComparer.Ordinal)];

    /// <param name="name">What to call the part where it fails.</param>
    /// <param name="make">Makes it.</param>
    /// <param name="otherwise">What stands in its place then.</param>
    /// <param name="isResult">Whether the run can not stand without it.</param>
    public T Make<T>(string name, Func<T> make, T otherwise, bool isResult = false) => Make(name, make, _ => otherwise, isResult);

    /// <inheritdoc cref="Make{T}(string, Func{T}, T, bool)"/>
    public T Make<T>(string name, Func<T> make, Func<string, T> otherwise, bool isResult = false)
    {
        try
        {
            return make();
        }
        catch (Exception fault) when (!Fault.IsCancellation(fault))
        {
            string reason = Fault.WordsOf(fault);
            _missing.Add(new MissingPart(name, reason, isResult));
            return otherwise(reason);
        }
    }

    /// <summary>Does what leaves nothing to keep, such as speaking.</summary>
    public void Do(string name, Action act) => Make(
        name,
        () =>
        {
            act();
            return true;
        },
        otherwise: false);
}
