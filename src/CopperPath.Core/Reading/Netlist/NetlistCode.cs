namespace CopperPath.Reading.Netlist;

/// <summary>The stable codes of remarks on netlists.</summary>
public static class NetlistCode
{
    /// <summary>The file is empty or not text.</summary>
    public const string NotText = "NET001";

    /// <summary>A unit that is not known: no place can be trusted.</summary>
    public const string UnknownUnit = "NET002";

    /// <summary>A record that can not be read; dropped.</summary>
    public const string BadRecord = "NET003";

    /// <summary>A record that is not aligned to its columns; read by its letters.</summary>
    public const string Unaligned = "NET004";

    /// <summary>Kinds of records that name no point; not read.</summary>
    public const string NotRead = "NET005";

    /// <summary>No end record.</summary>
    public const string NoEnd = "NET006";

    /// <summary>An image other than the primary: its records are not read.</summary>
    public const string OtherImage = "NET007";

    /// <summary>No unit record: 0.0001 inch was taken.</summary>
    public const string DefaultUnit = "NET008";

    /// <summary>Count of the records dropped.</summary>
    public const string Dropped = "NET009";
}
