using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Reading.JobFiles;

namespace CopperPath.Reading.BoardFiles;

/// <summary>What a role rests on, strongest last but one; an override by the user stands above all.</summary>
public enum Evidence
{
    /// <summary>The file name only.</summary>
    Name,

    /// <summary>The kind of content found in the file.</summary>
    Content,

    /// <summary>The job file beside it.</summary>
    JobFile,

    /// <summary>The file's own <c>.FileFunction</c>.</summary>
    Declared,

    /// <summary>The user's own statement.</summary>
    Override,
}

/// <summary>Copper layers joined by a drill file, 1 = top.</summary>
public sealed record DrillSpan(int FirstLayer, int LastLayer);

/// <summary>A file with its role.</summary>
/// <param name="File">The file.</param>
/// <param name="Content">Kind of content found in it.</param>
/// <param name="Role">What it is for.</param>
/// <param name="CopperLayer">Copper layer from 1 = top; 0 when it is no copper or the number is not known.</param>
/// <param name="Span">Layers a drill file joins; null when it does not say (usually all).</param>
/// <param name="Plating">
/// Plating of all holes of a drill file; unknown for other files, and for drill files that mix or do not say.
/// Marks at single tools are in the drill artwork and come before this.
/// </param>
/// <param name="Evidence">What the role rests on.</param>
/// <param name="Reason">The evidence in words, for the report.</param>
public sealed record IdentifiedFile(
    BoardFile File,
    FileContent Content,
    FileRole Role,
    int CopperLayer,
    DrillSpan? Span,
    Plating Plating,
    Evidence Evidence,
    string Reason);

/// <summary>The user's statement about a file.</summary>
/// <param name="FileName">Name of the file in the folder or archive.</param>
/// <param name="Role">Its role.</param>
/// <param name="CopperLayer">Copper layer from 1 = top, for copper.</param>
/// <param name="Plating">Plating, for drill files; unknown leaves it to the marks in the file.</param>
public sealed record RoleOverride(string FileName, FileRole Role, int CopperLayer = 0, Plating Plating = Plating.Unknown);

/// <summary>All files of a board with their roles.</summary>
/// <param name="Files">One entry for each file, in the order of the source.</param>
/// <param name="CopperLayerCount">Number of copper layers; 0 when none was found.</param>
/// <param name="Job">The job file, or null.</param>
/// <param name="Diagnostics">Remarks: conflicts, gaps, and every guess.</param>
public sealed record BoardIdentification(
    IReadOnlyList<IdentifiedFile> Files,
    int CopperLayerCount,
    JobFile? Job,
    IReadOnlyList<Diagnostic> Diagnostics)
{
    /// <summary>Copper files from top to bottom.</summary>
    public IEnumerable<IdentifiedFile> Copper => OfRole(FileRole.Copper).OrderBy(f => f.CopperLayer);

    /// <summary>Files of one role.</summary>
    public IEnumerable<IdentifiedFile> OfRole(FileRole role) => Files.Where(f => f.Role == role);
}
