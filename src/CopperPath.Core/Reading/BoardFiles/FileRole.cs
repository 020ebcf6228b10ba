namespace CopperPath.Reading.BoardFiles;

/// <summary>What a file of the board is for.</summary>
public enum FileRole
{
    /// <summary>Nothing that bears on the copper: text, lists, pictures, unknown.</summary>
    Other,
    Copper,
    Drill,
    Profile,
    SolderMaskTop,
    SolderMaskBottom,
    PasteTop,
    PasteBottom,
    LegendTop,
    LegendBottom,
    Netlist,
    JobFile,
    Placement,

    /// <summary>Drawings in Gerber form that are no layer of the board: drill maps, notes, comments.</summary>
    Drawing,
}
