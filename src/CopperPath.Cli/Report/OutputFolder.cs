namespace CopperPath.Cli.Report;

/// <summary>A file to be written, complete in memory.</summary>
public sealed record OutputFile(string Name, byte[] Content);

/// <summary>Writes a set of files so that each is either whole or absent.</summary>
public static class OutputFolder
{
    /// <returns>Null, or one line saying what went wrong.</returns>
    public static string? Write(string folder, IReadOnlyList<OutputFile> files)
    {
        try
        {
            Directory.CreateDirectory(folder);
            foreach (OutputFile file in files)
            {
                WriteWhole(Path.Combine(folder, file.Name), file.Content);
            }

            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return $"{folder}: error OUT001: found a folder that can not be written ({e.Message}); expected a writable one, see --output";
        }
    }

    /// <summary>A rename within one folder is atomic, a write is not.</summary>
    public static void WriteWhole(string path, byte[] content)
    {
        string draft = path + ".part";
        File.WriteAllBytes(draft, content);
        File.Move(draft, path, overwrite: true);
    }
}
