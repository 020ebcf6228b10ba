namespace CopperPath.Reading.Netlist;

/// <summary>The stable codes of remarks on netlists.</summary>
public static class NetlistCode
{
    /// <summary>The file is empty or not text.</summary>
    public const string NotText = "NTL001";

    /// <summary>A unit that is not known: no place can be trusted.</summary>
    public const string UnknownUnit = "NTL002";

    /// <summary>A record that can not be read; dropped.</summary>
    public const string BadRecord = "NTL003";

    /// <summary>A record that is not aligned to its columns; read by its letters.</summary>
    public const string Unaligned = "NTL004";

    /// <summary>Kinds of records that name no point; not read.</summary>
    public const string NotRead = "NTL005";

    /// <summary>No end record.</summary>
    public const string NoEnd = "NTL006";

    /// <summary>An image other than the primary: its records are not read.</summary>
    public const string OtherImage = "NTL007";

    /// <summary>No unit record: 0.0001 inch was taken.</summary>
    public const string DefaultUnit = "NTL008";

    /// <summary>Count of the records dropped.</summary>
    public const string Dropped = "NTL009";

    /// <summary>More than one netlist for a board.</summary>
    public const string Second = "NTL010";
}
