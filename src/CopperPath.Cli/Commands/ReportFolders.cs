using CopperPath.Cli.Output;

namespace CopperPath.Cli.Commands;

/// <summary>Where the report of each brief goes: no two of one run into the same folder.</summary>
internal static class ReportFolders
{
    /// <summary>Folder of the page that leads to the reports of several briefs.</summary>
    private const string OverviewName = "overview";

    /// <param name="briefs">Paths of the briefs; at least one.</param>
    /// <param name="output">The folder asked for, or null for one beside each brief.</param>
    /// <returns>One folder for each brief, in the same order, and the one of the page that leads to them.</returns>
    public static (IReadOnlyList<string> Folders, string Overview) Of(IReadOnlyList<string> briefs, string? output)
    {
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase);
        string[] folders = [.. briefs.Select(brief => Free(
            output is null ? Beside(brief) : briefs.Count == 1 ? output : Path.Combine(output, Path.GetFileNameWithoutExtension(brief)), taken))];
        return (folders, Free(Path.Combine(output ?? Path.GetDirectoryName(Beside(briefs[0]))!, OverviewName), taken));
    }

    /// <summary>The folder of a brief that says nothing else.</summary>
    public static string Beside(string brief) => Path.Combine(
        Path.GetDirectoryName(brief) ?? "", ReportFolder.HomeName, Path.GetFileNameWithoutExtension(brief));

    /// <summary>The folder, or the first of folder-2, folder-3 ... that no earlier brief has; letter case does not tell two apart.</summary>
    private static string Free(string folder, HashSet<string> taken)
    {
        string free = folder;
        for (int i = 2; !taken.Add(Path.GetFullPath(free)); i++)
        {
            free = FormattableString.Invariant($"{folder}-{i}");
        }

        return free;
    }
}
