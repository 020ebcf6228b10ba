using CopperPath.OutsideText;

namespace CopperPath.Diagnostics;

/// <summary>
/// One remark about the input: what was found and what was expected, and where.
/// Bad input is data, not an exception: readers return diagnostics beside their result.
/// </summary>
/// <param name="Code">Stable identifier, e.g. <c>GBR012</c>: three letters of the reader, three digits.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Position">Where it was seen.</param>
/// <param name="Found">What stood there, in words that fit after "found".</param>
/// <param name="Expected">What would have been right, in words that fit after "expected".</param>
/// <param name="AffectsCopper">True when copper may be wrong or missing because of it: such a run never passes.</param>
public sealed record Diagnostic(
    string Code,
    Severity Severity,
    SourcePosition Position,
    string Found,
    string Expected,
    bool AffectsCopper = false)
{
    /// <summary>The one line a person reads; what it quotes of a file is visible and of bounded length.</summary>
    public override string ToString()
    {
        string word = Severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "note",
        };
        return $"{VisibleText.Of(Position.ToString())}: {word} {Code}: found {VisibleText.Of(Found)}; expected {VisibleText.Of(Expected)}";
    }
}
