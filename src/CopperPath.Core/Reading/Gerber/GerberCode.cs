namespace CopperPath.Reading.Gerber;

/// <summary>
/// Codes of the reader's diagnostics. A number, once given, keeps its meaning.
/// </summary>
public static class GerberCode
{
    /// <summary>No Gerber command in the whole file.</summary>
    public const string NotGerber = "GBR001";

    /// <summary>The file ended, or another delimiter came, before a command was closed.</summary>
    public const string Unterminated = "GBR002";

    /// <summary>No M02 at the end: the file may be cut off.</summary>
    public const string NoEnd = "GBR003";

    /// <summary>A command this reader does not know.</summary>
    public const string UnknownCommand = "GBR004";

    /// <summary>A command that must not be passed over: include files, knockouts, image rotation and the like.</summary>
    public const string UnsupportedCommand = "GBR005";

    /// <summary>A deprecated command with no effect on the image, or whose meaning is clear.</summary>
    public const string Deprecated = "GBR006";

    /// <summary>A command that is known, but whose parameters are not as the format asks.</summary>
    public const string BadCommand = "GBR007";

    /// <summary>IPNEG: the image is to be inverted over an area nobody states.</summary>
    public const string NegativeImage = "GBR008";

    /// <summary>File polarity negative on what may be copper: the drawing shows where there is none. It is honoured.</summary>
    public const string NegativeCopper = "GBR009";

    /// <summary>Commands after M02: they are not read.</summary>
    public const string AfterEnd = "GBR017";

    /// <summary>A coordinate before FS.</summary>
    public const string FormatMissing = "GBR010";

    /// <summary>A length before MO (or G70, G71).</summary>
    public const string UnitMissing = "GBR011";

    /// <summary>FS or MO stated again with another meaning, or x and y formats that differ.</summary>
    public const string MixedFormat = "GBR012";

    /// <summary>A number where none could be read.</summary>
    public const string BadNumber = "GBR013";

    /// <summary>A coordinate with more digits than FS allows.</summary>
    public const string ExtraDigits = "GBR014";

    /// <summary>A length or place beyond 10 m.</summary>
    public const string OutOfRange = "GBR015";

    /// <summary>A coordinate left out where the current point is not defined.</summary>
    public const string NoCurrentPoint = "GBR016";

    /// <summary>A D code that no AD or AB defines, or an operation with no aperture selected.</summary>
    public const string UnknownAperture = "GBR020";

    /// <summary>An aperture with impossible parameters.</summary>
    public const string BadAperture = "GBR021";

    /// <summary>An aperture defined twice; the later one counts from there on.</summary>
    public const string ApertureRedefined = "GBR022";

    /// <summary>An aperture of size zero.</summary>
    public const string EmptyAperture = "GBR023";

    /// <summary>A hole as large as its aperture, or a rectangular hole (deprecated).</summary>
    public const string UnusualHole = "GBR024";

    /// <summary>A pen other than a round one; the stroke is the convex hull of its ends.</summary>
    public const string UnusualPen = "GBR025";

    /// <summary>A pen whose stroke has no defined shape.</summary>
    public const string PenNotAllowed = "GBR026";

    /// <summary>An aperture of an unknown macro name.</summary>
    public const string UnknownMacro = "GBR030";

    /// <summary>A macro that does not follow the grammar.</summary>
    public const string MacroSyntax = "GBR031";

    /// <summary>A macro primitive with a wrong number of parameters.</summary>
    public const string MacroArity = "GBR032";

    /// <summary>A macro primitive with a parameter outside its range.</summary>
    public const string MacroParameter = "GBR033";

    /// <summary>A division by zero in a macro.</summary>
    public const string MacroDivision = "GBR034";

    /// <summary>A macro defined twice.</summary>
    public const string MacroRedefined = "GBR035";

    /// <summary>An outline primitive that does not come back to its start.</summary>
    public const string MacroOutlineOpen = "GBR036";

    /// <summary>A macro whose exposure-off parts are too many and too entangled to be taken away.</summary>
    public const string MacroNotComposable = "GBR037";

    /// <summary>An operation code left out; the last one is repeated.</summary>
    public const string ModalOperation = "GBR040";

    /// <summary>A stroke or arc before G01, G02 or G03.</summary>
    public const string InterpolationAssumed = "GBR041";

    /// <summary>G74, or an arc before G74 and G75.</summary>
    public const string QuadrantMode = "GBR042";

    /// <summary>An arc whose two radii differ so little that its shape is clear.</summary>
    public const string ArcRadiusDrift = "GBR043";

    /// <summary>An arc with no centre, or whose two radii differ by more than one percent.</summary>
    public const string BadArc = "GBR044";

    /// <summary>A contour that does not come back to its start; closed by a straight line.</summary>
    public const string OpenContour = "GBR050";

    /// <summary>A contour that encloses no area; dropped.</summary>
    public const string EmptyContour = "GBR051";

    /// <summary>A contour begun by a D01 with no D02 before it.</summary>
    public const string ContourWithoutMove = "GBR052";

    /// <summary>A command that has no place between G36 and G37.</summary>
    public const string NotInRegion = "GBR053";

    /// <summary>G36 or G37 that does not pair.</summary>
    public const string RegionPairing = "GBR054";

    /// <summary>A contour that crosses itself; filled wherever its winding number is not zero.</summary>
    public const string SelfCrossingContour = "GBR055";

    /// <summary>A step-and-repeat left open, or put inside a block.</summary>
    public const string StepAndRepeat = "GBR060";

    /// <summary>A block aperture left open, closed twice or nested too deep.</summary>
    public const string BlockPairing = "GBR061";

    /// <summary>More objects, vertices or nesting than the reader's limits.</summary>
    public const string TooMuch = "GBR062";

    /// <summary>More objects or vertices in all images of a board than may be read.</summary>
    public const string TooMuchInAll = "GBR063";

    /// <summary>An attribute whose fields are not as its name asks.</summary>
    public const string BadAttribute = "GBR070";

    /// <summary>An attribute this reader keeps but does not know.</summary>
    public const string UnknownAttribute = "GBR071";

    /// <summary>More remarks with the same code than are listed.</summary>
    public const string MoreOfTheSame = "GBR090";
}
