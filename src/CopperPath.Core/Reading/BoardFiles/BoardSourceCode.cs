namespace CopperPath.Reading.BoardFiles;

/// <summary>The stable codes of remarks on the folder or archive of a board and on the roles of its files.</summary>
public static class BoardSourceCode
{
    /// <summary>Neither a folder nor a file stands at the path.</summary>
    public const string Missing = "BRD001";

    /// <summary>No file in the folder or archive.</summary>
    public const string Empty = "BRD002";

    /// <summary>The archive, or an entry of it, is damaged.</summary>
    public const string Corrupt = "BRD003";

    /// <summary>More files, or more bytes, than the reader accepts.</summary>
    public const string TooLarge = "BRD004";

    /// <summary>An archive entry whose path leads outside, or can not be a file name.</summary>
    public const string UnsafePath = "BRD005";

    /// <summary>Two files of the same name.</summary>
    public const string DuplicateName = "BRD006";

    /// <summary>The files stand in a folder below the one given.</summary>
    public const string OneLevelDown = "BRD007";

    /// <summary>Several folders, each of which may be the board.</summary>
    public const string SeveralFolders = "BRD008";

    /// <summary>A file that the operating system does not let be read.</summary>
    public const string Unreadable = "BRD009";

    /// <summary>A pipe, socket or device, or a link that leads to one or nowhere, where a file should stand.</summary>
    public const string NotAFile = "BRD010";

    /// <summary>Fabrication files in a folder below the one that is read.</summary>
    public const string LeftBelow = "BRD011";

    /// <summary>No file was found to be copper.</summary>
    public const string NoCopper = "BRD020";

    /// <summary>Two files for one copper layer, or a copper layer without file.</summary>
    public const string LayerNumbers = "BRD021";

    /// <summary>The order of the inner layers comes from file names.</summary>
    public const string InnerOrderFromNames = "BRD022";

    /// <summary>The order of the inner layers is a guess that nothing in the files supports.</summary>
    public const string InnerOrderGuessed = "BRD023";

    /// <summary>Declaration, job file, content or name disagree about a file.</summary>
    public const string RoleConflict = "BRD024";

    /// <summary>Plating or span of a drill file was inferred.</summary>
    public const string PlatingInferred = "BRD025";

    /// <summary>Two copper layers with the same bytes.</summary>
    public const string IdenticalLayers = "BRD026";

    /// <summary>An override that names no file of the board.</summary>
    public const string UnknownOverride = "BRD027";

    /// <summary>A Gerber or drill file whose role is not known.</summary>
    public const string UnknownRole = "BRD028";

    /// <summary>A file named as copper, drill or outline, or made of coordinates, that is in no form which is read.</summary>
    public const string UnreadData = "BRD029";

    /// <summary>A file function that the format does not have.</summary>
    public const string UnknownFunction = "BRD030";
}
