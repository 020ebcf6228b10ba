using System.IO.Compression;
using CopperPath.Files;

namespace CopperPath.Reading.BoardFiles;

/// <summary>
/// Reads the entries of a zip archive in place. The archive is not trusted: entry paths, counts, stated sizes and
/// checksums are all verified, and no more than the stated size is ever unpacked.
/// </summary>
internal static class ZipSource
{
    /// <summary>Characters of an entry's path; file systems end at some 255 for a name.</summary>
    private const int LongestPath = 1_000;

    public static void Collect(string path, BoardFileCollector collector)
    {
        BoardSourceLimits limits = collector.Limits;
        using FileStream? stream = RegularFile.Open(path, limits.MaxArchiveBytes, out FileRefusal? refusal);
        if (stream is null)
        {
            collector.Refuse(path, refusal!);
            return;
        }

        try
        {
            using ZipArchive archive = new(stream, ZipArchiveMode.Read);
            long lengthBytes = archive.Entries.Select(entry => entry.Length).Where(length => length <= limits.MaxFileBytes).Sum();
            if (collector.AcceptsAll(
                archive.Entries.Count, lengthBytes, limits.MostUnpacked(stream.Length), "unpack it, look at it and give the folder"))
            {
                Collect(path, archive, collector);
            }
        }
        catch (InvalidDataException)
        {
            collector.Error(BoardSourceCode.Corrupt, path, "a file that is not a whole zip archive", "a folder or a zip archive of fabrication files");
        }
    }

    private static void Collect(string path, ZipArchive archive, BoardFileCollector collector)
    {
        List<(string Folder, string Name, ZipArchiveEntry Entry)> entries = [];
        foreach (ZipArchiveEntry entry in archive.Entries.OrderBy(e => e.FullName, StringComparer.Ordinal))
        {
            if (!IsSafe(entry.FullName))
            {
                collector.Error(BoardSourceCode.UnsafePath, path, $"the entry path '{BoardFileCollector.Shown(entry.FullName)}'", "a path that stays inside the archive");
                continue;
            }

            int slash = entry.FullName.LastIndexOf('/');
            string name = entry.FullName[(slash + 1)..];
            if (name.Length > 0 && !entry.FullName.Split('/').Any(BoardFileCollector.IsLitter))
            {
                entries.Add((slash < 0 ? "" : entry.FullName[..slash], name, entry));
            }
        }

        string[] folders = [.. entries.Select(e => e.Folder).Distinct().Order(StringComparer.Ordinal)];
        if (folders is not [])
        {
            if (folders.Length > 1 && folders[0].Length > 0)
            {
                collector.Error(BoardSourceCode.SeveralFolders, path, $"files in the folders {BoardFileCollector.Listed(folders)}", "the files of one board in one folder");
                return;
            }

            if (folders[0].Length > 0)
            {
                collector.Note(BoardSourceCode.OneLevelDown, path, $"all files in its folder {BoardFileCollector.Shown(folders[0])}", "files at the top of the archive; that folder was taken");
            }

            foreach ((_, string name, ZipArchiveEntry entry) in entries.Where(e => e.Folder == folders[0]))
            {
                Read(name, entry, collector);
            }

            collector.RemarkOnBelow(entries.Where(e => e.Folder != folders[0]).Select(e => (e.Folder, e.Name)));
        }
    }

    private static void Read(string name, ZipArchiveEntry entry, BoardFileCollector collector)
    {
        if (!collector.AcceptsSize(name, entry.Length))
        {
            return;
        }

        try
        {
            using Stream unpacked = entry.Open();
            byte[] bytes = new byte[entry.Length];
            int read = unpacked.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            if (read < bytes.Length || unpacked.ReadByte() >= 0 || Crc32.Of(bytes) != entry.Crc32)
            {
                collector.Error(BoardSourceCode.Corrupt, name, "an archive entry whose size or checksum is wrong", "an undamaged archive");
                return;
            }

            collector.Add(new BoardFile(name, bytes));
        }
        catch (Exception e) when (e is InvalidDataException or IOException or NotSupportedException)
        {
            collector.Error(BoardSourceCode.Corrupt, name, $"an archive entry that can not be unpacked ({e.Message})", "an undamaged, unencrypted archive");
        }
    }

    private static bool IsSafe(string path) =>
        !path.StartsWith('/')
        && path.AsSpan().IndexOfAny('\\', ':') < 0
        && !path.Any(char.IsControl)
        && path.Length <= LongestPath
        && path.TrimEnd('/').Split('/').All(part => part is not ("" or "." or ".."));
}
