using CopperPath.Diagnostics;
using CopperPath.Files;

namespace CopperPath.Reading.BoardFiles;

/// <summary>
/// The fabrication files of one board, from a folder or a zip archive. Archives are read in place and never unpacked
/// to disk. Only one folder level counts: when the files stand in the sole subfolder, that one is taken.
/// </summary>
/// <param name="Path">The path given.</param>
/// <param name="Files">Files in ordinal order of their names; empty when nothing could be read.</param>
/// <param name="Diagnostics">Remarks; at least one error when <paramref name="Files"/> is empty.</param>
public sealed record BoardSource(
    string Path,
    IReadOnlyList<BoardFile> Files,
    IReadOnlyList<Diagnostic> Diagnostics)
{
    private const string FolderOrArchive = "a folder or a zip archive of fabrication files";

    /// <summary>Opens a folder or a zip archive, told apart by what stands at the path. Never throws for bad input.</summary>
    /// <param name="path">Folder or archive.</param>
    /// <param name="limits">Bounds on what is read; null for the usual ones.</param>
    public static BoardSource Open(string path, BoardSourceLimits? limits = null)
    {
        BoardFileCollector collector = new(path, limits ?? BoardSourceLimits.Usual);
        try
        {
            switch (PathKinds.At(path))
            {
                case PathKind.Folder:
                    FolderSource.Collect(path, collector);
                    break;
                case PathKind.RegularFile:
                    ZipSource.Collect(path, collector);
                    break;
                case PathKind.Nothing:
                    collector.Error(BoardSourceCode.Missing, path, "nothing at this path", FolderOrArchive);
                    break;
                case var other:
                    collector.Error(BoardSourceCode.NotAFile, path, PathKinds.Named(other), FolderOrArchive);
                    break;
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            collector.Error(BoardSourceCode.Unreadable, path, $"a path that can not be read ({e.Message})", "a readable folder or zip archive");
        }

        return collector.ToSource();
    }
}
