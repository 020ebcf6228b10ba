using System.Globalization;
using CopperPath.Diagnostics;
using CopperPath.Files;
using CopperPath.Quantities;

namespace CopperPath.Reading.BoardFiles;

/// <summary>Gathers files under the limits, and the remarks made on the way.</summary>
internal sealed class BoardFileCollector(string path, BoardSourceLimits limits)
{
    /// <summary>Files that desktop systems leave behind; they belong to no board.</summary>
    private static readonly HashSet<string> _desktopLitter = new(StringComparer.OrdinalIgnoreCase)
    {
        "Thumbs.db", "desktop.ini", "__MACOSX",
    };

    private const int NamesListed = 4;
    private const int LongestShown = 120;

    private readonly SortedDictionary<string, BoardFile> _files = new(StringComparer.Ordinal);
    private readonly List<Diagnostic> _remarks = [];

    public BoardSourceLimits Limits => limits;

    public static bool IsLitter(string name) => name.StartsWith('.') || _desktopLitter.Contains(name);

    public void Error(string code, string file, string found, string expected) =>
        _remarks.Add(new Diagnostic(code, Severity.Error, SourcePosition.WholeFile(file), found, expected, AffectsCopper: true));

    public void Note(string code, string file, string found, string expected) =>
        _remarks.Add(new Diagnostic(code, Severity.Note, SourcePosition.WholeFile(file), found, expected));

    /// <summary>
    /// Says which folders below the files hold more that is named as fabrication data: a board is read from one folder,
    /// and what lies beside it may be another revision as well as its drill files.
    /// </summary>
    public void RemarkOnBelow(IEnumerable<(string Folder, string Name)> files)
    {
        foreach (IGrouping<string, string> folder in files.Where(file => NameClaims.IsFabricationName(file.Name))
            .GroupBy(file => file.Folder, file => file.Name, StringComparer.Ordinal).OrderBy(folder => folder.Key, StringComparer.Ordinal))
        {
            string one = folder.Order(StringComparer.Ordinal).First();
            _remarks.Add(new Diagnostic(BoardSourceCode.LeftBelow, Severity.Warning, SourcePosition.WholeFile(path),
                Text($"{Counted.Of(folder.Count(), "file")} named as fabrication data in the folder {folder.Key} below, such as {one}"),
                "all files of the board in one folder; those are not read"));
        }
    }

    /// <summary>
    /// Whether that many files of that size together may be read: asked before the first one is, so that a budget that would
    /// be spent costs nothing. Makes the one remark when not.
    /// </summary>
    /// <param name="count">Number of files.</param>
    /// <param name="lengthBytes">Sum of their sizes, of those that may be read one by one.</param>
    /// <param name="mostBytes">Largest sum, bytes.</param>
    /// <param name="remedy">What else to do.</param>
    public bool AcceptsAll(int count, long lengthBytes, long mostBytes, string remedy)
    {
        if (count > limits.MaxFiles)
        {
            Error(BoardSourceCode.TooLarge, path, Text($"more than {limits.MaxFiles} files"),
                Text($"at most {limits.MaxFiles} files for a board; give the folder that holds its fabrication files alone"));
            return false;
        }

        if (lengthBytes > mostBytes)
        {
            Error(BoardSourceCode.TooLarge, path, Text($"{lengthBytes} bytes in all files"), Text($"at most {mostBytes} bytes; {remedy}"));
            return false;
        }

        return true;
    }

    /// <summary>Whether a file of this size may be read; makes the remark when not.</summary>
    public bool AcceptsSize(string name, long lengthBytes)
    {
        if (lengthBytes <= limits.MaxFileBytes)
        {
            return true;
        }

        Error(BoardSourceCode.TooLarge, name, Text($"{lengthBytes} bytes"), Text($"at most {limits.MaxFileBytes} bytes in one file"));
        return false;
    }

    /// <summary>The remark on a file that was not read.</summary>
    public void Refuse(string name, FileRefusal refusal)
    {
        (string code, string expected) = refusal.Fault switch
        {
            FileFault.TooLarge => (BoardSourceCode.TooLarge, Text($"at most {limits.MaxFileBytes} bytes in one file")),
            FileFault.Unreadable => (BoardSourceCode.Unreadable, "a readable file"),
            _ => (BoardSourceCode.NotAFile, "a regular file, or a link to one"),
        };
        Error(code, name, refusal.Fault == FileFault.Missing ? "a link that leads nowhere" : refusal.Found, expected);
    }

    public void Add(BoardFile file)
    {
        if (!_files.TryAdd(file.Name, file))
        {
            Error(BoardSourceCode.DuplicateName, file.Name, "a second file of this name", "one file of each name");
        }
    }

    /// <summary>A few names of many, for a message.</summary>
    public static string Listed(IReadOnlyList<string> names)
    {
        string few = string.Join(", ", names.Take(NamesListed).Select(Shown));
        return names.Count <= NamesListed ? few : Text($"{few} and {names.Count - NamesListed} more");
    }

    /// <summary>A name that is safe to print, cut where it is long.</summary>
    public static string Shown(string name) => string.Concat(name.Take(LongestShown).Select(c => char.IsControl(c) ? '?' : c));

    public BoardSource ToSource()
    {
        if (_files.Count == 0 && _remarks.TrueForAll(r => r.Severity != Severity.Error))
        {
            Error(BoardSourceCode.Empty, path, "no files", "the fabrication files of a board");
        }

        return new BoardSource(path, [.. _files.Values], _remarks);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
