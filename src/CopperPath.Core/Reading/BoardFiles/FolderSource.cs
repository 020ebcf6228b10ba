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

        string[] paths = [.. FilesIn(filled)];
        if (!collector.AcceptsCount(paths.Length))
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
            string names = string.Join(", ", below.Select(Path.GetFileName));
            collector.Error(BoardSourceCode.SeveralFolders, folder, $"no files but the folders {names}", "the folder of one board");
            return null;
        }

        collector.Note(BoardSourceCode.OneLevelDown, folder, $"all files in its folder {Path.GetFileName(below[0])}", "files in the folder itself; that one was taken");
        return below[0];
    }

    private static IEnumerable<string> FilesIn(string folder) => Directory.EnumerateFiles(folder)
        .Where(f => !BoardFileCollector.IsLitter(Path.GetFileName(f)))
        .Order(StringComparer.Ordinal);

    private static IEnumerable<string> FoldersIn(string folder) => Directory.EnumerateDirectories(folder)
        .Where(d => !BoardFileCollector.IsLitter(Path.GetFileName(d)))
        .Order(StringComparer.Ordinal);

    private static void Read(string path, BoardFileCollector collector)
    {
        string name = Path.GetFileName(path);
        try
        {
            if (collector.AcceptsSize(name, new FileInfo(path).Length))
            {
                collector.Add(new BoardFile(name, File.ReadAllBytes(path)));
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            collector.Error(BoardSourceCode.Unreadable, name, $"a file that can not be read ({e.Message})", "a readable file");
        }
    }
}
