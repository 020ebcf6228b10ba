using CopperPath.Diagnostics;

namespace CopperPath.Reading.BoardFiles;

/// <summary>Remarks made while files are identified.</summary>
internal sealed class IdentificationLog(string sourcePath)
{
    private readonly List<Diagnostic> _remarks = [];

    public IReadOnlyList<Diagnostic> Remarks => _remarks;

    public void Add(IEnumerable<Diagnostic> remarks) => _remarks.AddRange(remarks);

    public void Error(string code, string? file, string found, string expected) =>
        _remarks.Add(new Diagnostic(code, Severity.Error, At(file), found, expected, AffectsCopper: true));

    public void Warn(string code, string? file, string found, string expected, bool affectsCopper = false) =>
        _remarks.Add(new Diagnostic(code, Severity.Warning, At(file), found, expected, affectsCopper));

    private SourcePosition At(string? file) => SourcePosition.WholeFile(file ?? sourcePath);
}
