using System.Text;
using CopperPath.Files;

namespace CopperPath.Cli.Output;

/// <summary>
/// The list, kept in a report's folder, of the files that were written there. A later run replaces a folder that holds nothing
/// else; whatever is not listed belongs to somebody and is never removed.
/// </summary>
internal static class ReportManifest
{
    public const string FileName = ".copperpath-report";

    private const int MostBytes = 1 << 20;

    /// <summary>Files that desktops leave in every folder they show.</summary>
    private static readonly string[] s_litter = [".DS_Store", "Thumbs.db", "desktop.ini"];

    /// <param name="command">The command that wrote the files.</param>
    /// <param name="names">Their names.</param>
    public static byte[] Of(string command, IEnumerable<string> names) =>
        Encoding.UTF8.GetBytes(string.Concat(new[] { HeadOf(command) }.Concat(names).Select(line => line + "\n")));

    /// <summary>Something in a folder that no earlier run of the command wrote, or null where it may be replaced.</summary>
    public static string? ForeignIn(string folder, string command)
    {
        string[] lines = Lines(folder);
        if (lines.Length > 0 && lines[0] != HeadOf(command))
        {
            return FileName + " of another command";
        }

        HashSet<string> ours = [.. OursOf(lines)];
        return new DirectoryInfo(folder).EnumerateFileSystemInfos()
            .Where(entry => !ours.Contains(entry.Name) || entry.LinkTarget is not null || entry.Attributes.HasFlag(FileAttributes.Directory))
            .Select(entry => entry.Name).Min(StringComparer.Ordinal);
    }

    /// <summary>Removes a report: its files, and the folder where nothing else is left in it.</summary>
    public static void Delete(string folder)
    {
        foreach (string name in OursOf(Lines(folder)))
        {
            Draft.Try(() => File.Delete(Path.Combine(folder, name)));
        }

        Draft.Try(() => Directory.Delete(folder));
    }

    private static string HeadOf(string command) => $"Files written by copperpath {command}; it replaces this folder while it holds nothing else:";

    /// <summary>The manifest itself comes last: while it is there the rest is known for what it is.</summary>
    private static string[] OursOf(string[] lines) =>
        [.. lines.Skip(1).Where(name => name.Length > 0 && Path.GetFileName(name) == name), .. s_litter, FileName];

    private static string[] Lines(string folder)
    {
        string path = Path.Combine(folder, FileName);
        return !PathKinds.IsLink(path) && RegularFile.Read(path, MostBytes, out _) is { } bytes
            ? Encoding.UTF8.GetString(bytes).TrimEnd('\n').Split('\n')
            : [];
    }
}
