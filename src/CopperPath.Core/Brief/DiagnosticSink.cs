using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>Gathers what a reading has to say, a bounded number of each code.</summary>
internal sealed class DiagnosticSink
{
    private readonly List<Diagnostic> _diagnostics = [];
    private readonly SortedDictionary<string, int> _errorsByCode = new(StringComparer.Ordinal);

    public int ErrorCount { get; private set; }

    public bool HasErrors => ErrorCount > 0;

    public void Error(string code, SourcePosition position, string found, string expected) =>
        Error(code, position, () => (found, expected));

    /// <summary>An error whose words take work to find; they are asked for only where it is listed.</summary>
    public void Error(string code, SourcePosition position, Func<(string Found, string Expected)> words)
    {
        ErrorCount++;
        int count = _errorsByCode[code] = _errorsByCode.GetValueOrDefault(code) + 1;
        if (count <= RemarkBudget.ListedPerKind)
        {
            (string found, string expected) = words();
            _diagnostics.Add(new Diagnostic(code, Severity.Error, position, found, expected));
        }
    }

    /// <summary>A guess to be confirmed: it is read like any value, and the run can not end in a pass.</summary>
    public void Unconfirmed(Blank blank) => _diagnostics.Add(new Diagnostic(
        BriefCodes.Unconfirmed, Severity.Error, blank.Position,
        $"a guess for `{blank.Key}`: {blank.Guess}{(blank.Because is null ? "" : $" ({blank.Because})")}",
        blank.Candidates.Count == 0 ? "a value somebody confirms" : $"a value somebody confirms, such as {string.Join(", ", blank.Candidates)}"));

    public void Warning(string code, SourcePosition position, string found, string expected) =>
        _diagnostics.Add(new Diagnostic(code, Severity.Warning, position, found, expected));

    /// <summary>
    /// Everything said, in file order, those left out counted last; remarks on one place stay in the order they were made.
    /// </summary>
    public IReadOnlyList<Diagnostic> InFileOrder() =>
    [
        .. _diagnostics.OrderBy(d => d.Position.Line).ThenBy(d => d.Position.Column),
        .. _errorsByCode.Where(code => code.Value > RemarkBudget.ListedPerKind).Select(code => RemarkBudget.More(
            _diagnostics[0].Position.File, code.Key, code.Value - RemarkBudget.ListedPerKind, Severity.Error, affectsCopper: false)),
    ];
}
