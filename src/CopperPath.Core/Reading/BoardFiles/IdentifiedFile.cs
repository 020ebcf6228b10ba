using CopperPath.Artwork;

namespace CopperPath.Reading.BoardFiles;

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
