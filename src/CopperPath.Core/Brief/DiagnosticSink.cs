using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>Gathers what a reading has to say.</summary>
internal sealed class DiagnosticSink
{
    private readonly List<Diagnostic> _diagnostics = [];

    public int ErrorCount { get; private set; }

    public bool HasErrors => ErrorCount > 0;

    public void Error(string code, SourcePosition position, string found, string expected)
    {
        ErrorCount++;
        _diagnostics.Add(new Diagnostic(code, Severity.Error, position, found, expected));
    }

    /// <summary>A guess to be confirmed: it is read like any value, and the run can not end in a pass.</summary>
    public void Unconfirmed(Blank blank) => _diagnostics.Add(new Diagnostic(
        BriefCodes.Unconfirmed, Severity.Error, blank.Position,
        $"a guess for `{blank.Key}`: {blank.Guess}{(blank.Because is null ? "" : $" ({blank.Because})")}",
        blank.Candidates.Count == 0 ? "a value somebody confirms" : $"a value somebody confirms, such as {string.Join(", ", blank.Candidates)}"));

    public void Warning(string code, SourcePosition position, string found, string expected) =>
        _diagnostics.Add(new Diagnostic(code, Severity.Warning, position, found, expected));

    /// <summary>Everything said, in file order; remarks on one place stay in the order they were made.</summary>
    public IReadOnlyList<Diagnostic> InFileOrder() =>
        [.. _diagnostics.OrderBy(d => d.Position.Line).ThenBy(d => d.Position.Column)];
}
