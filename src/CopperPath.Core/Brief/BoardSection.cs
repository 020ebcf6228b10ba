using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>Which board is reviewed and where its fabrication files are.</summary>
/// <param name="Name">Name of the board.</param>
/// <param name="Revision">Its revision, or null.</param>
/// <param name="Files">Folder or zip archive, relative to the brief, as written.</param>
/// <param name="Layers">Answers that override the identification of files; may be empty.</param>
/// <param name="DrillFormats">Number formats of drill files that do not say; may be empty.</param>
/// <param name="Position">Where the section starts.</param>
public sealed record BoardSection(
    string Name,
    string? Revision,
    string Files,
    IReadOnlyList<LayerAnswer> Layers,
    IReadOnlyList<DrillFormatAnswer> DrillFormats,
    SourcePosition Position)
{
    /// <summary>The table of part placements to use; null when the brief names none.</summary>
    public PlacementAnswer? Placement { get; init; }
}

/// <summary>The brief's word on which file holds the placements of parts.</summary>
/// <param name="File">File name inside the folder or archive.</param>
/// <param name="Position">Where the brief says so.</param>
public sealed record PlacementAnswer(string File, SourcePosition Position);

/// <summary>What a fabrication file is for.</summary>
public enum FileRole
{
    Copper,
    DrillPlated,
    DrillNonPlated,
    DrillMixed,
    Profile,
    MaskTop,
    MaskBottom,
    PasteTop,
    PasteBottom,
    LegendTop,
    LegendBottom,
    Ignore,
}

/// <summary>The brief's word on what one file is.</summary>
/// <param name="File">File name inside the folder or archive.</param>
/// <param name="Role">What it is for.</param>
/// <param name="Number">Copper layer number counted from 1 at the top; null for every other role.</param>
/// <param name="Position">Where the brief says so.</param>
public sealed record LayerAnswer(string File, FileRole Role, int? Number, SourcePosition Position)
{
    /// <summary>What the file of a copper layer draws; null when the brief leaves it to the file.</summary>
    public DrawingPolarity? Polarity { get; init; }
}

/// <summary>What the file of a copper layer draws.</summary>
public enum DrawingPolarity
{
    /// <summary>Copper.</summary>
    Positive,

    /// <summary>Where there is none; copper is what it leaves inside the board outline.</summary>
    Negative,
}

/// <summary>Unit of the coordinates in a drill file.</summary>
public enum DrillUnit
{
    Inch,
    Millimetre,
}

/// <summary>Which zeros the numbers of a drill file leave out.</summary>
public enum OmittedZeros
{
    Leading,
    Trailing,
}

/// <summary>The brief's word on how one drill file writes its numbers.</summary>
/// <param name="File">File name inside the folder or archive.</param>
/// <param name="Unit">Unit of the coordinates.</param>
/// <param name="IntegerDigits">Digits before the implied point, 1 to 6.</param>
/// <param name="DecimalDigits">Digits after the implied point, 1 to 6.</param>
/// <param name="Zeros">Which zeros are omitted.</param>
/// <param name="Position">Where the brief says so.</param>
public sealed record DrillFormatAnswer(
    string File, DrillUnit Unit, int IntegerDigits, int DecimalDigits, OmittedZeros Zeros, SourcePosition Position);
