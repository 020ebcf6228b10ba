using CopperPath.Diagnostics;

namespace CopperPath.Cli.Report;

/// <summary>Remarks about the input, one line each; repeats of one kind in one file are counted, not listed.</summary>
public static class DiagnosticList
{
    private const int ShownPerKind = 3;

    public static void Write(TextWriter writer, IReadOnlyList<Diagnostic> diagnostics, bool withNotes)
    {
        foreach (IGrouping<(string, string), Diagnostic> kind in diagnostics
            .Where(diagnostic => withNotes || diagnostic.Severity != Severity.Note)
            .GroupBy(diagnostic => (diagnostic.Position.File, diagnostic.Code)))
        {
            int count = kind.Count();
            int shown = withNotes || kind.First().Severity == Severity.Error ? count : Math.Min(count, ShownPerKind);
            foreach (Diagnostic diagnostic in kind.Take(shown))
            {
                writer.WriteLine(diagnostic);
            }

            if (count > shown)
            {
                writer.WriteLine(FormattableString.Invariant(
                    $"{kind.Key.Item1}: {count - shown} more of {kind.Key.Item2}; --verbose lists them"));
            }
        }
    }
}
