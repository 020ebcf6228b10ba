using System.Text;
using CopperPath.Artwork;

namespace CopperPath.Reading.Drill;

/// <summary>
/// Reads drill and rout files: the Excellon command set and its exchange form XNC. Anything that may change a hole
/// and is not understood rejects the file; nothing is skipped in silence and nothing throws.
/// </summary>
public static class DrillReader
{
    /// <summary>Largest file read, in bytes.</summary>
    public const int MaxBytes = 256 * 1024 * 1024;

    /// <summary>Reads one file.</summary>
    /// <param name="file">Name for remarks and positions.</param>
    /// <param name="bytes">The whole file.</param>
    /// <param name="format">
    /// How to read numbers where the file does not say; what the file itself declares stands. Without it a file that
    /// leaves its format open gives no holes (<see cref="DrillReading.NeedsFormat"/>).
    /// </param>
    public static DrillReading Read(string file, ReadOnlyMemory<byte> bytes, DrillFormat? format = null) =>
        Run(file, bytes, format).Reading;

    /// <summary>Reads one file and keeps what it declared, for inference and identification.</summary>
    internal static DrillRun Run(string file, ReadOnlyMemory<byte> bytes, DrillFormat? format)
    {
        DrillLog log = new(file);
        DrillProgram program = new(log, format);
        if (bytes.Length is 0 or > MaxBytes || bytes.Span.Contains((byte)0))
        {
            string found = bytes.Length == 0 ? "an empty file" : bytes.Length > MaxBytes ? "a file above 256 MB" : "bytes that are not text";
            log.Reject(DrillCode.NotText, 0, found, "a drill file in plain text");
        }
        else
        {
            program.Run(Encoding.UTF8.GetString(bytes.Span));
            if (!log.HasErrors && program.Machine.Features.Count == 0)
            {
                log.Line = 0;
                log.Warn(DrillCode.NoHoles, 0, "no hole", "at least one hole in a drill file");
            }

            if (!log.HasErrors)
            {
                program.Tools.ReportIdle();
            }
        }

        DrillFileFunction? function = program.Comments.FileFunction;
        DrillArtwork? artwork = log.HasErrors
            ? null
            : new DrillArtwork(file, program.Machine.Features, function?.FirstLayer ?? 0, function?.LastLayer ?? 0);
        DrillReading reading = new(artwork, program.Rules.Describe(), log.Close())
        {
            NeedsFormat = program.Rules.IsMissingFormat,
            IsFormatAssumed = program.Rules.IsAssumed,
        };
        return new DrillRun(reading, program.Rules, function, program.Tools.Platings);
    }
}

/// <summary>A reading together with what the file declared on the way.</summary>
internal sealed record DrillRun(
    DrillReading Reading,
    DrillNumberRules Rules,
    DrillFileFunction? Function,
    IReadOnlyList<Plating> ToolPlatings);
