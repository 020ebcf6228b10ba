using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>A brief on disk.</summary>
public static class BriefFile
{
    /// <summary>Reads a brief; a missing or unreadable file is a diagnostic like any other.</summary>
    public static BriefReading Read(string path)
    {
        try
        {
            return BriefReader.Read(path, File.ReadAllText(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            string found = Directory.Exists(path) ? "a folder" : File.Exists(path) ? "a file that can not be read" : "no such file";
            return new BriefReading(null, [new Diagnostic("BRF000", Severity.Error, SourcePosition.WholeFile(path), found,
                "a review brief; 'copperpath survey FOLDER' writes one to start from")]);
        }
    }

    /// <summary>Path of the board's folder or archive, which the brief gives relative to itself.</summary>
    public static string FolderOf(string briefPath, ReviewBrief brief) =>
        Path.Combine(Path.GetDirectoryName(briefPath) ?? "", brief.Board.Files);
}
