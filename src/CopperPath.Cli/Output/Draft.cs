namespace CopperPath.Cli.Output;

/// <summary>Names of things in the making. They can not be foretold, so nobody can have put a link in their place.</summary>
internal static class Draft
{
    /// <summary>A new name beside others in a folder.</summary>
    public static string In(string folder, string ending) => Path.Combine(folder, $".copperpath-{Path.GetRandomFileName()}{ending}");

    /// <summary>Makes a folder and those above it; gives the ones that were not there, the outermost first.</summary>
    public static IReadOnlyList<string> MakeFolders(string folder)
    {
        Stack<string> missing = new();
        for (string? above = folder; above is not null && !Path.Exists(above); above = Path.GetDirectoryName(above))
        {
            missing.Push(above);
        }

        Directory.CreateDirectory(folder);
        return [.. missing];
    }

    /// <summary>Writes a file that must not exist yet, not as a link either.</summary>
    public static void WriteNew(string path, ReadOnlySpan<byte> content)
    {
        using FileStream stream = new(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        stream.Write(content);
    }

    /// <summary>Runs a deletion that may fail: what is gone already, or can not be removed, is left.</summary>
    public static void Try(Action deletion)
    {
        try
        {
            deletion();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
        }
    }
}
