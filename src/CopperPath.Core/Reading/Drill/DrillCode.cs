namespace CopperPath.Reading.Drill;

/// <summary>The stable codes of remarks on drill files. A code keeps its meaning for ever; retired ones stay unused.</summary>
public static class DrillCode
{
    /// <summary>The file is empty, too large or not text.</summary>
    public const string NotText = "DRL001";

    /// <summary>A line or code that is not known: it may change the holes.</summary>
    public const string UnknownCode = "DRL002";

    /// <summary>A number that can not be read.</summary>
    public const string BadNumber = "DRL003";

    /// <summary>Numbers before any unit.</summary>
    public const string NoUnit = "DRL004";

    /// <summary>Numbers without decimal point, and no word on digits or zeros.</summary>
    public const string NoFormat = "DRL005";

    /// <summary>A hole made with a tool that was never defined or selected.</summary>
    public const string UndefinedTool = "DRL006";

    /// <summary>A tool diameter that is zero, negative or beyond any drill.</summary>
    public const string BadToolDiameter = "DRL007";

    /// <summary>A tool defined twice.</summary>
    public const string ToolRedefined = "DRL008";

    /// <summary>A tool number that carries a compensation number, or is out of range.</summary>
    public const string OddToolNumber = "DRL009";

    /// <summary>A number with more digits than its format.</summary>
    public const string TooManyDigits = "DRL010";

    /// <summary>A coordinate beyond the limit of the model.</summary>
    public const string TooFar = "DRL011";

    /// <summary>A known code whose effect is not implemented.</summary>
    public const string Unsupported = "DRL012";

    /// <summary>An arc without a usable centre.</summary>
    public const string BadArc = "DRL013";

    /// <summary>A routed line with the tool up.</summary>
    public const string CutWithoutPlunge = "DRL014";

    /// <summary>A pattern command outside its order.</summary>
    public const string BadPattern = "DRL015";

    /// <summary>No end of program.</summary>
    public const string NoEnd = "DRL016";

    /// <summary>Unit word without LZ or TZ: TZ was assumed.</summary>
    public const string ZerosAssumed = "DRL017";

    /// <summary>Digits not written: the usual ones of the unit were taken.</summary>
    public const string DigitsByConvention = "DRL018";

    /// <summary>The unit changes within the file.</summary>
    public const string UnitChanges = "DRL019";

    /// <summary>More holes than the reader accepts.</summary>
    public const string TooManyHoles = "DRL020";

    /// <summary>A zero-set command, read as a shift of later coordinates.</summary>
    public const string ZeroSet = "DRL021";

    /// <summary>A repeat without a hole before it, or with a count out of range.</summary>
    public const string BadRepeat = "DRL022";

    /// <summary>A message for the operator.</summary>
    public const string TextIgnored = "DRL023";

    /// <summary>A routed cut that is still open when another command ends it.</summary>
    public const string CutLeftOpen = "DRL024";

    /// <summary>The format given by the caller contradicts the file.</summary>
    public const string FormatConflict = "DRL025";

    /// <summary>The older command generation.</summary>
    public const string OldGeneration = "DRL026";

    /// <summary>A format or attribute comment that can not be read.</summary>
    public const string BadComment = "DRL027";

    /// <summary>A tool diameter without decimal point, read as a whole number of units.</summary>
    public const string WholeToolDiameter = "DRL028";

    /// <summary>Lines after the end of the program.</summary>
    public const string AfterEnd = "DRL029";

    /// <summary>Too many errors: reading stopped.</summary>
    public const string GaveUp = "DRL030";

    /// <summary>Remarks of one code beyond those listed.</summary>
    public const string MoreOfTheSame = "DRL031";

    /// <summary>Statements on plating that contradict each other.</summary>
    public const string PlatingConflict = "DRL032";

    /// <summary>No hole in the whole file.</summary>
    public const string NoHoles = "DRL033";

    /// <summary>Two statements of digits or zeros that differ.</summary>
    public const string FormatRedeclared = "DRL035";

    /// <summary>Coordinates while the header is still open.</summary>
    public const string HeaderLeftOpen = "DRL034";

    /// <summary>Drill data in Gerber form that draws something no drill can make.</summary>
    public const string NotADrill = "DRL036";

    /// <summary>Text that the machine drills: holes nobody wrote down.</summary>
    public const string DrilledText = "DRL037";

    /// <summary>A tool of a size that no drill or router has, or a file of tools so large that the unit must be wrong.</summary>
    public const string OddToolSize = "DRL038";

    /// <summary>A tool that is defined and makes no hole.</summary>
    public const string UnusedTool = "DRL039";

    /// <summary>Holes that another drill file, or the same one, holds already.</summary>
    public const string SameHoles = "DRL040";

    /// <summary>Two statements about one hole that differ in diameter or plating.</summary>
    public const string HolesDisagree = "DRL041";

    /// <summary>No declared number format; one was inferred from the copper.</summary>
    public const string FormatInferred = "DRL900";

    /// <summary>No declared number format, and no reading that clearly fits the copper.</summary>
    public const string FormatNotInferred = "DRL901";

    /// <summary>A number format tried, and how well it fits.</summary>
    public const string FormatEvidence = "DRL902";

    /// <summary>More holes and cuts in all drill files of a board than may be read.</summary>
    public const string TooManyInAll = "DRL042";
}
