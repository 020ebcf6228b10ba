using CopperPath.Cli.Output;

namespace CopperPath.Cli.Commands;

/// <summary>Where the report of each brief goes: no two of one run into the same folder.</summary>
internal static class ReportFolders
{
    /// <param name="briefs">Paths of the briefs.</param>
    /// <param name="output">The folder asked for, or null for one beside each brief.</param>
    /// <returns>One folder for each brief, in the same order.</returns>
    public static IReadOnlyList<string> Of(IReadOnlyList<string> briefs, string? output)
    {
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase);
        return [.. briefs.Select(brief => Free(
            output is null ? Beside(brief) : briefs.Count == 1 ? output : Path.Combine(output, Path.GetFileNameWithoutExtension(brief)), taken))];
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
