using System.Globalization;
using CopperPath.Diagnostics;
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

    private readonly SortedDictionary<string, BoardFile> _files = new(StringComparer.Ordinal);
    private readonly List<Diagnostic> _remarks = [];
    private long _totalBytes;

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

    /// <summary>Whether that many files may be read; makes the remark when not.</summary>
    public bool AcceptsCount(int count)
    {
        if (count <= limits.MaxFiles)
        {
            return true;
        }

        Error(BoardSourceCode.TooLarge, path, Text($"{count} files"), Text($"at most {limits.MaxFiles} files for a board"));
        return false;
    }

    /// <summary>Whether a file of this size may still be read; makes the remark when not.</summary>
    public bool AcceptsSize(string name, long lengthBytes)
    {
        long mostBytes = Math.Min(limits.MaxFileBytes, Array.MaxLength);
        if (lengthBytes > mostBytes)
        {
            Error(BoardSourceCode.TooLarge, name, Text($"{lengthBytes} bytes"), Text($"at most {mostBytes} bytes in one file"));
            return false;
        }

        if (_totalBytes + lengthBytes > limits.MaxTotalBytes)
        {
            Error(BoardSourceCode.TooLarge, name, Text($"{_totalBytes + lengthBytes} bytes so far"), Text($"at most {limits.MaxTotalBytes} bytes in all files"));
            return false;
        }

        return true;
    }

    public void Add(BoardFile file)
    {
        if (_files.TryAdd(file.Name, file))
        {
            _totalBytes += file.Bytes.Length;
        }
        else
        {
            Error(BoardSourceCode.DuplicateName, file.Name, "a second file of this name", "one file of each name");
        }
    }

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
