using CopperPath.Diagnostics;

namespace CopperPath.Core.Tests.CrossCheck;

/// <summary>A board's files in memory, spoiled, written into a folder, rebuilt, and what was said of it.</summary>
public static class SpoiledSet
{
    /// <summary>Rebuilds files given as text.</summary>
    public static Board Rebuilt(IReadOnlyDictionary<string, string> files)
    {
        string folder = Directory.CreateTempSubdirectory("copperpath-set-").FullName;
        try
        {
            foreach ((string name, string text) in files)
            {
                File.WriteAllText(Path.Combine(folder, name), text);
            }

            return Analysis.Survey(folder).Board;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>The text files of a folder.</summary>
    public static SortedDictionary<string, string> Read(string folder) => new(
        Directory.EnumerateFiles(folder).ToDictionary(file => Path.GetFileName(file), File.ReadAllText), StringComparer.Ordinal);

    /// <summary>What leaves the copper in doubt, one line each.</summary>
    public static string Doubts(Board board) => string.Join('\n', board.Diagnostics.Where(diagnostic => diagnostic.AffectsCopper));

    /// <summary>All that the cross-check says above a note.</summary>
    public static IEnumerable<Diagnostic> Remarks(Board board) =>
        board.Diagnostics.Where(diagnostic => diagnostic.Code.StartsWith("SET", StringComparison.Ordinal) && diagnostic.Severity != Severity.Note);
}
