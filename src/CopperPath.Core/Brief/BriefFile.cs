using System.Text;
using CopperPath.Diagnostics;
using CopperPath.Files;

namespace CopperPath.Brief;

/// <summary>A brief on disk.</summary>
public static class BriefFile
{
    /// <summary>Largest brief read, bytes: as many characters as a brief may have, each of the longest code.</summary>
    private const int MostBytes = 16_000_000;

    /// <summary>Reads a brief; a missing or unreadable file is a diagnostic like any other.</summary>
    public static BriefReading Read(string path)
    {
        if (RegularFile.Read(path, MostBytes, out FileRefusal? refusal) is not { } bytes)
        {
            string expected = refusal!.Fault == FileFault.TooLarge
                ? $"a review brief of at most {MostBytes} bytes"
                : "a review brief; 'copperpath survey FOLDER' writes one to start from";
            return new BriefReading(null, [new Diagnostic("BRF000", Severity.Error, SourcePosition.WholeFile(path), refusal.Found, expected)]);
        }

        using StreamReader text = new(new MemoryStream(bytes), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        return BriefReader.Read(path, text.ReadToEnd()) with { Bytes = bytes };
    }

    /// <summary>Path of the board's folder or archive, which the brief gives relative to itself.</summary>
    public static string FolderOf(string briefPath, ReviewBrief brief) =>
        Path.Combine(Path.GetDirectoryName(briefPath) ?? "", brief.Board.Files);
}
