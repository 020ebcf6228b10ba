namespace CopperPath.Reading.Placement;

/// <summary>The stable codes of remarks on placement files.</summary>
public static class PlacementCode
{
    /// <summary>The file is empty, too large or not text.</summary>
    public const string NotText = "PLC001";

    /// <summary>No line that names the columns.</summary>
    public const string NoHeader = "PLC002";

    /// <summary>A number that can not be read; the row is dropped.</summary>
    public const string BadNumber = "PLC003";

    /// <summary>A row with too few fields; dropped.</summary>
    public const string ShortRow = "PLC004";

    /// <summary>A quoted field that never ends; the row is dropped.</summary>
    public const string OpenQuote = "PLC005";

    /// <summary>A side that is neither top nor bottom; the row is dropped.</summary>
    public const string BadSide = "PLC006";

    /// <summary>A designator in several rows; none of them is used.</summary>
    public const string Repeated = "PLC007";

    /// <summary>No unit stated.</summary>
    public const string NoUnit = "PLC008";

    /// <summary>Remarks of one code beyond those listed.</summary>
    public const string MoreOfTheSame = "PLC009";

    /// <summary>Units that contradict each other.</summary>
    public const string TwoUnits = "PLC010";

    /// <summary>The brief names a placement file that is not there.</summary>
    public const string Missing = "PLC011";

    /// <summary>More than one table of placements.</summary>
    public const string Several = "PLC012";
}
