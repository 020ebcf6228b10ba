namespace CopperPath.Reading.BoardFiles;

/// <summary>Kind of content, told from the first lines of a file.</summary>
public enum FileContent
{
    Empty,
    Binary,
    Text,
    Gerber,
    Drill,
    Netlist,
    JobFile,
    Placement,
}
