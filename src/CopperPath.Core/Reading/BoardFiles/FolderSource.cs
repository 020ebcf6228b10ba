using CopperPath.Files;

namespace CopperPath.Reading.BoardFiles;

/// <summary>Reads the files of a folder.</summary>
internal static class FolderSource
{
    public static void Collect(string folder, BoardFileCollector collector)
    {
        string? filled = FindFiles(folder, collector);
        if (filled is null)
        {
            return;
        }

        string[] paths = [.. FilesIn(filled).Take(collector.Limits.MaxFiles + 1).Order(StringComparer.Ordinal)];
        long lengthBytes = paths.Where(path => PathKinds.At(path) == PathKind.RegularFile)
            .Select(path => new FileInfo(path).Length).Where(length => length <= collector.Limits.MaxFileBytes).Sum();
        if (!collector.AcceptsAll(
            paths.Length, lengthBytes, collector.Limits.MaxTotalBytes, "give the folder that holds the board's fabrication files alone"))
        {
            return;
        }

        foreach (string path in paths)
        {
            Read(path, collector);
        }

        // Folders that may not be entered are passed over: nothing of them was to be read.
        EnumerationOptions permitted = new() { IgnoreInaccessible = true, AttributesToSkip = 0 };
        collector.RemarkOnBelow(FoldersIn(filled).SelectMany(below => Directory.EnumerateFiles(below, "*", permitted)
            .Select(path => (Path.GetFileName(below), Path.GetFileName(path)))));
    }

    /// <summary>The folder itself, or its sole subfolder when it holds no files; null after a remark.</summary>
    private static string? FindFiles(string folder, BoardFileCollector collector)
    {
        if (FilesIn(folder).Any())
        {
            return folder;
        }

        string[] below = [.. FoldersIn(folder)];
        if (below.Length == 0)
        {
            collector.Error(BoardSourceCode.Empty, folder, "an empty folder", "the fabrication files of a board");
            return null;
        }

        if (below.Length > 1)
        {
            string names = BoardFileCollector.Listed([.. below.Select(path => Path.GetFileName(path))]);
            collector.Error(BoardSourceCode.SeveralFolders, folder, $"no files but the folders {names}", "the folder of one board");
            return null;
        }

        collector.Note(BoardSourceCode.OneLevelDown, folder, $"all files in its folder {Path.GetFileName(below[0])}", "files in the folder itself; that one was taken");
        return below[0];
    }

    private static IEnumerable<string> FilesIn(string folder) => Directory.EnumerateFiles(folder)
        .Where(f => !BoardFileCollector.IsLitter(Path.GetFileName(f)));

    private static IEnumerable<string> FoldersIn(string folder) => Directory.EnumerateDirectories(folder)
        .Where(d => !BoardFileCollector.IsLitter(Path.GetFileName(d)))
        .Order(StringComparer.Ordinal);

    private static void Read(string path, BoardFileCollector collector)
    {
        string name = Path.GetFileName(path);
        if (RegularFile.Read(path, collector.Limits.MaxFileBytes, out FileRefusal? refusal) is { } bytes)
        {
            collector.Add(new BoardFile(name, bytes));
        }
        else
        {
            collector.Refuse(name, refusal!);
        }
    }
}
