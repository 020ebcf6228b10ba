using System.Reflection;
using CopperPath.Diagnostics;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>
/// Malformed and unusual input, and the exact remark it draws. What is refused and what is only remarked on follows
/// the project's error table: a guess that would change copper is never made.
/// </summary>
public sealed class GerberDiagnosticsTests
{
    private const string H = GerberText.Head;
    private const string Disc = H + "%ADD10C,1*%\nG01*\nD10*\n";
    private const string End = "\nM02*";

    /// <summary>
    /// Text, code, severity, line, column, found, expected; an error refuses the file, anything else keeps the image.
    /// </summary>
    private static readonly (string Name, string Text, string Code, Severity Severity, int Line, int Column, string Found, string Expected)[] Cases =
    [
        ("text that is no Gerber", "Hello world", GerberCode.NotGerber, Severity.Error, 0, 0,
            "no Gerber command",
            "a Gerber RS-274X file"),
        ("empty file", "", GerberCode.NotGerber, Severity.Error, 0, 0,
            "no Gerber command",
            "a Gerber RS-274X file"),
        ("word cut off", Disc + "X0Y0D0", GerberCode.Unterminated, Severity.Error, 6, 7,
            "the end of the file after 'X0Y0D0'",
            "'*'"),
        ("percent in a word", Disc + "X0Y0D03%LPC*%" + End, GerberCode.Unterminated, Severity.Error, 6, 8,
            "'%' after 'X0Y0D03'",
            "'*'"),
        ("macro never closed", H + "%AMM*1,1,2,0,0*\nM02*", GerberCode.Unterminated, Severity.Error, 3, 1,
            "'%' that is never closed",
            "'%' after the last '*'"),
        ("percent never closed", Disc + "X0Y0D03*\n%LPD*\n", GerberCode.Unterminated, Severity.Error, 7, 1,
            "'%' that is never closed",
            "'%' after the last '*'"),
        ("star missing before percent", H + "%LPD%" + End, GerberCode.Unterminated, Severity.Warning, 3, 5,
            "'%' after 'LPD'",
            "'*' before '%'"),
        ("M02 without star", Disc + "X0Y0D03*\nM02\n", GerberCode.Unterminated, Severity.Warning, 7, 1,
            "M02 without '*'",
            "M02*"),
        ("a flash after the end", Disc + "X0Y0D03*" + End + "\nX0Y10000D03*\n", GerberCode.AfterEnd, Severity.Warning, 8, 1,
            "'X0Y10000D03' after the end of the file",
            "nothing after M02; the rest is not read"),
        ("no M02", Disc + "X0Y0D03*\n", GerberCode.NoEnd, Severity.Warning, 0, 0,
            "no M02",
            "M02 at the end; the file may be cut off"),
        ("unknown G code", Disc + "X0Y0D03*\nG99*" + End, GerberCode.UnknownCommand, Severity.Error, 7, 1,
            "G99",
            "a Gerber command"),
        ("unknown M code", Disc + "M09*" + End, GerberCode.UnknownCommand, Severity.Error, 6, 1,
            "M09",
            "a Gerber command"),
        ("unknown letter", Disc + "Q5*" + End, GerberCode.UnknownCommand, Severity.Error, 6, 1,
            "'Q5'",
            "a Gerber command"),
        ("unknown extended command", Disc + "%ZZ1*%" + End, GerberCode.UnknownCommand, Severity.Error, 6, 2,
            "'ZZ1'",
            "a Gerber command"),
        ("axes exchanged", Disc + "%ASAYBX*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2,
            "'ASAYBX'",
            "no AS that changes the image"),
        ("image rotated", Disc + "%IR90*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2,
            "'IR90'",
            "no IR that changes the image"),
        ("image mirrored", Disc + "%MIA1B0*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2,
            "'MIA1B0'",
            "no MI that changes the image"),
        ("image moved", Disc + "%OFA1.5B0*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2,
            "'OFA1.5B0'",
            "no OF that changes the image"),
        ("image scaled", Disc + "%SFA1.0B1.01*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2,
            "'SFA1.0B1.01'",
            "no SF that changes the image"),
        ("include file", Disc + "%IFother.gbr*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2,
            "'IFother.gbr'",
            "no IF that changes the image"),
        ("knockout", Disc + "%KOC*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2,
            "'KOC'",
            "no KO that changes the image"),
        ("neutral offset", Disc + "%OFA0.0B0.0*%" + End, GerberCode.Deprecated, Severity.Note, 6, 2,
            "OFA0.0B0.0",
            "no such command"),
        ("neutral scale", Disc + "%SFA1.0B1.0*%" + End, GerberCode.Deprecated, Severity.Note, 6, 2,
            "SFA1.0B1.0",
            "no such command"),
        ("positive image", Disc + "%IPPOS*%" + End, GerberCode.Deprecated, Severity.Note, 6, 2,
            "IPPOS",
            "no such command"),
        ("layer name", Disc + "%LNTOP*%" + End, GerberCode.Deprecated, Severity.Note, 6, 2,
            "an image or layer name",
            "no such command"),
        ("G54 prefix", Disc + "G54D10*" + End, GerberCode.Deprecated, Severity.Note, 6, 1,
            "G54",
            "D and the aperture alone"),
        ("optional stop", Disc + "M01*" + End, GerberCode.Deprecated, Severity.Note, 6, 1,
            "M01",
            "no such command"),
        ("line number", Disc + "N10X0Y0D03*" + End, GerberCode.Deprecated, Severity.Note, 6, 1,
            "a line number",
            "none"),
        ("operation code 5", Disc + "X0Y0D05*" + End, GerberCode.BadCommand, Severity.Error, 6, 5,
            "D05",
            "D01, D02, D03 or an aperture of 10 or more"),
        ("polarity of no kind", Disc + "%LPX*%" + End, GerberCode.BadCommand, Severity.Error, 6, 2,
            "'LPX'",
            "LPD, LPC, LMN, LMX, LMY, LMXY, LR with an angle or LS with a factor above 0"),
        ("scale of zero", Disc + "%LS0*%" + End, GerberCode.BadCommand, Severity.Error, 6, 2,
            "'LS0'",
            "LPD, LPC, LMN, LMX, LMY, LMXY, LR with an angle or LS with a factor above 0"),
        ("format of nine decimals", "%FSLAX39Y39*%\n%MOMM*%" + End, GerberCode.BadCommand, Severity.Error, 1, 2,
            "'FSLAX39Y39'",
            "FSLAXnmYnm with n and m from 0 to 7"),
        ("format of an unknown kind", "%FSQAX34Y34*%\n%MOMM*%" + End, GerberCode.BadCommand, Severity.Error, 1, 2,
            "'FSQAX34Y34'",
            "FSLAXnmYnm with n and m from 0 to 7"),
        ("unit of an unknown kind", "%FSLAX34Y34*%\n%MOFT*%" + End, GerberCode.BadCommand, Severity.Error, 2, 2,
            "'MOFT'",
            "MOMM or MOIN"),
        ("negative image", Disc + "%IPNEG*%" + End, GerberCode.NegativeImage, Severity.Error, 6, 2,
            "IPNEG",
            "a positive image: the area to invert is not stated"),
        ("no format", "%MOMM*%\n%ADD10C,1*%\nD10*\nX0Y0D03*" + End, GerberCode.FormatMissing, Severity.Error, 4, 1,
            "a coordinate before FS",
            "FS before it"),
        ("no unit before aperture", "%FSLAX34Y34*%\n%ADD10C,1*%" + End, GerberCode.UnitMissing, Severity.Error, 2, 2,
            "an aperture before MO",
            "MOMM or MOIN before it"),
        ("no unit before coordinate", "%FSLAX34Y34*%\nX0Y0D02*" + End, GerberCode.UnitMissing, Severity.Error, 2, 1,
            "a length before MO",
            "MOMM or MOIN before it"),
        ("second format", H + "%FSLAX35Y35*%" + End, GerberCode.MixedFormat, Severity.Warning, 3, 2,
            "another FS than before",
            "one FS; it counts from here on"),
        ("unequal formats", "%FSLAX34Y35*%\n%MOMM*%" + End, GerberCode.MixedFormat, Severity.Warning, 1, 2,
            "different formats of x and y",
            "one; each is used as stated"),
        ("second unit", H + "%MOIN*%" + End, GerberCode.MixedFormat, Severity.Warning, 3, 2,
            "another unit than before",
            "one unit; it counts from here on"),
        ("point in a coordinate", Disc + "X1.5Y0D03*" + End, GerberCode.BadNumber, Severity.Error, 6, 3,
            "'X1.5Y0D03'",
            "digits without a decimal point after X"),
        ("coordinate without digits", Disc + "XY0D03*" + End, GerberCode.BadNumber, Severity.Error, 6, 2,
            "'XY0D03'",
            "digits without a decimal point after X"),
        ("two points in a size", H + "%ADD10C,1.2.3*%" + End, GerberCode.BadNumber, Severity.Error, 3, 9,
            "'1.2.3'",
            "decimal numbers with 'X' between them"),
        ("comma as decimal sign", H + "%ADD10C,1,5*%" + End, GerberCode.BadNumber, Severity.Error, 3, 10,
            "',5'",
            "decimal numbers with 'X' between them"),
        ("G without a number", Disc + "G*" + End, GerberCode.BadNumber, Severity.Error, 6, 1,
            "'G'",
            "a code number after G"),
        ("extra leading digits", Disc + "X00000010000Y0D03*" + End, GerberCode.ExtraDigits, Severity.Warning, 6, 1,
            "a coordinate of 11 digits",
            "no more digits than FS states"),
        ("extra digits, trailing zeros omitted", "%FSTAX24Y24*%\n%MOMM*%\n%ADD10C,1*%\nD10*\nX1234567Y0D03*" + End,
            GerberCode.ExtraDigits, Severity.Error, 5, 1,
            "a coordinate of 7 digits",
            "no more digits than FS states"),
        ("coordinate beyond 10 m", Disc + "X100000001Y0D03*" + End, GerberCode.OutOfRange, Severity.Error, 6, 1,
            "a coordinate beyond 10 m",
            "coordinates within 10 m"),
        ("aperture beyond 10 m", H + "%ADD10C,30000*%" + End, GerberCode.OutOfRange, Severity.Error, 3, 2,
            "an aperture larger than 10 m",
            "sizes below 10 m"),
        ("no point after step and repeat", Disc + "%SRX2Y1I5J0*%X0Y0D03*%SR*%\nX0D03*" + End,
            GerberCode.NoCurrentPoint, Severity.Error, 7, 1,
            "'X0D03' where no current point is defined",
            "X and Y after AB or SR"),
        ("no point after a block", Disc + "%ABD20*%X0Y0D03*%AB*%\nX0Y0D01*" + End,
            GerberCode.NoCurrentPoint, Severity.Error, 7, 1,
            "D01 where no current point is defined",
            "D02 first"),
        ("aperture not defined", Disc + "D11*\nX0Y0D03*" + End, GerberCode.UnknownAperture, Severity.Error, 6, 1,
            "aperture D11, not defined",
            "ADD11 before it"),
        ("no aperture selected", H + "%ADD10C,1*%\nX0Y0D03*" + End, GerberCode.UnknownAperture, Severity.Error, 4, 1,
            "an operation with no aperture selected",
            "Dnn before it"),
        ("file without apertures", H + "D10*\nX0Y0D03*" + End, GerberCode.UnknownAperture, Severity.Error, 3, 1,
            "aperture D10, not defined",
            "AD commands (a file without apertures is no RS-274X)"),
        ("rectangle with one size", H + "%ADD10R,1*%" + End, GerberCode.BadAperture, Severity.Error, 3, 2,
            "1 parameter of aperture R",
            "2 to 3"),
        ("negative diameter", H + "%ADD10C,-1*%" + End, GerberCode.BadAperture, Severity.Error, 3, 2,
            "a negative size of aperture C",
            "0 or more"),
        ("polygon of two corners", H + "%ADD10P,1X2*%" + End, GerberCode.BadAperture, Severity.Error, 3, 2,
            "2 vertices of aperture P",
            "a whole number from 3 to 12"),
        ("aperture code 9", H + "%ADD09C,1*%" + End, GerberCode.BadAperture, Severity.Error, 3, 2,
            "'ADD09C,1'",
            "ADD, a number of 10 or more"),
        ("aperture twice", Disc + "%ADD10C,2*%" + End, GerberCode.ApertureRedefined, Severity.Warning, 6, 2,
            "aperture D10 again",
            "one definition; the later one counts from here on"),
        ("rectangle of size zero", H + "%ADD10R,0X1*%" + End, GerberCode.EmptyAperture, Severity.Warning, 3, 2,
            "aperture R of size 0",
            "a size above 0; it draws nothing"),
        ("hole as large as its pad", H + "%ADD10C,1X1*%" + End, GerberCode.UnusualHole, Severity.Warning, 3, 2,
            "an aperture hole that reaches the edge of its aperture",
            "a hole smaller than the aperture"),
        ("rectangular hole", H + "%ADD10C,2X1X0.5*%" + End, GerberCode.UnusualHole, Severity.Warning, 3, 2,
            "a rectangular aperture hole",
            "one hole diameter; the rectangle is cut"),
        ("rectangular pen", H + "%ADD10R,1X1*%\nG01*\nD10*\nX0Y0D02*\nX10000D01*" + End,
            GerberCode.UnusualPen, Severity.Warning, 7, 1,
            "a stroke with D10, which is not a solid circle",
            "a round aperture; the stroke is the hull of its ends"),
        ("pen with a hole", H + "%ADD10C,2X1*%\nG01*\nD10*\nX0Y0D02*\nX10000D01*" + End,
            GerberCode.PenNotAllowed, Severity.Error, 7, 1,
            "a stroke with an aperture that is not convex and solid",
            "a round aperture"),
        ("arc with a rectangular pen", H + "%ADD10R,1X1*%\nG75*\nG03*\nD10*\nX0Y0D02*\nX20000I10000J0D01*" + End,
            GerberCode.PenNotAllowed, Severity.Error, 8, 1,
            "an arc drawn with an aperture that is not round",
            "a round aperture"),
        ("stroke with a block", Disc + "%ABD20*%X0Y0D03*%AB*%\nD20*\nX0Y0D02*\nX1Y0D01*" + End,
            GerberCode.PenNotAllowed, Severity.Error, 9, 1,
            "a stroke with a block aperture",
            "a round aperture"),
        ("macro not defined", H + "%ADD10NOPE,1*%" + End, GerberCode.UnknownMacro, Severity.Error, 3, 2,
            "aperture template 'NOPE'",
            "C, R, O, P or a macro defined above"),
        ("macro expression cut short", H + "%AMM*\n1,1,2+,0,0*%" + End, GerberCode.MacroSyntax, Severity.Error, 4, 7,
            "',0,0'",
            "a number, a variable or a parenthesis"),
        ("macro parenthesis open", H + "%AMM*1,1,(2,0,0*%" + End, GerberCode.MacroSyntax, Severity.Error, 3, 12,
            "',0,0'",
            "a number, a variable or a parenthesis"),
        ("macro block without star", H + "%AMM*1,1,2,0,0%" + End, GerberCode.MacroSyntax, Severity.Error, 3, 6,
            "'1,1,2,0,0' without '*'",
            "'*' after each macro block"),
        ("macro primitive of no kind", H + "%AMM*9,1,2*%\n%ADD10M*%" + End, GerberCode.MacroSyntax, Severity.Error, 4, 2,
            "primitive code 9",
            "1, 4, 5, 6, 7, 20, 21 or 22"),
        ("macro circle without centre", H + "%AMM*1,1,2*%\n%ADD10M*%" + End, GerberCode.MacroArity, Severity.Error, 4, 2,
            "2 parameters after primitive code 1",
            "4 or 5"),
        ("macro outline short of a point", H + "%AMM*4,1,3,0,0,2,0,0,1,0*%\n%ADD10M*%" + End,
            GerberCode.MacroArity, Severity.Error, 4, 2,
            "9 parameters after primitive code 4",
            "11"),
        ("macro polygon of 13 corners", H + "%AMM*5,1,13,0,0,2,0*%\n%ADD10M*%" + End,
            GerberCode.MacroParameter, Severity.Error, 4, 2,
            "13 polygon vertices",
            "a whole number from 3 to 12"),
        ("macro thermal all gap", H + "%AMM*7,0,0,8,4,6,0*%\n%ADD10M*%" + End,
            GerberCode.MacroParameter, Severity.Error, 4, 2,
            "a thermal of outer 8, inner 4 and gap 6",
            "0 <= inner < outer and 0 <= gap < outer / sqrt(2)"),
        ("macro exposure 3", H + "%AMM*1,3,2,0,0*%\n%ADD10M*%" + End, GerberCode.MacroParameter, Severity.Error, 4, 2,
            "exposure 3 in primitive 1",
            "0 or 1"),
        ("macro size that overflows", H + "%AMM*1,1,$1x$1x$1,0,0*%\n%ADD10M,1000000*%" + End,
            GerberCode.MacroParameter, Severity.Error, 4, 2,
            "a parameter beyond 1e9 in primitive 1",
            "lengths below 10 m"),
        ("macro division by an unset variable", H + "%AMM*1,1,2/$1,0,0*%\n%ADD10M*%" + End,
            GerberCode.MacroDivision, Severity.Error, 4, 2,
            "a division by zero in macro M",
            "a divisor other than 0"),
        ("macro twice", H + "%AMM*1,1,2,0,0*%\n%AMM*1,1,3,0,0*%" + End, GerberCode.MacroRedefined, Severity.Warning, 4, 2,
            "macro M again",
            "one definition"),
        ("macro outline open", H + "%AMM*4,1,3,0,0,2,0,0,1,0,0.1,0*%\n%ADD10M*%" + End,
            GerberCode.MacroOutlineOpen, Severity.Warning, 4, 2,
            "a macro outline whose last point differs from its first",
            "the first point repeated at the end; closed by a straight line"),
        ("operation code left out", Disc + "X0Y0D02*\nX10000D01*\nX20000*\nX30000*" + End,
            GerberCode.ModalOperation, Severity.Warning, 8, 1,
            "coordinates without an operation code after D01",
            "D01, D02 or D03; D01 is repeated"),
        ("coordinates before any operation", Disc + "X0Y0*" + End, GerberCode.ModalOperation, Severity.Error, 6, 1,
            "coordinates before any operation",
            "D01, D02 or D03"),
        ("no interpolation mode", H + "%ADD10C,1*%\nD10*\nX0Y0D02*\nX10000D01*" + End,
            GerberCode.InterpolationAssumed, Severity.Warning, 6, 1,
            "D01 before G01, G02 or G03",
            "G01; it is assumed"),
        ("arc under G74", Disc + "G74*\nG03*\nX50000Y0D02*\nX0Y50000I50000J0D01*" + End,
            GerberCode.QuadrantMode, Severity.Warning, 9, 1,
            "an arc under G74",
            "G75; its single quadrants are honoured"),
        ("arc before any quadrant mode", Disc + "G03*\nX50000Y0D02*\nX0Y50000I-50000J0D01*" + End,
            GerberCode.QuadrantMode, Severity.Warning, 8, 1,
            "an arc before G74 or G75",
            "G75; G75 is assumed"),
        ("arc with radii half a percent apart", Disc + "G75*\nG03*\nX50000Y0D02*\nX0Y50250I-50000J0D01*" + End,
            GerberCode.ArcRadiusDrift, Severity.Warning, 9, 1,
            "an arc whose radii differ by 0.025 mm of 5 mm",
            "one radius; it runs from one to the other"),
        ("arc with radii two percent apart", Disc + "G75*\nG03*\nX50000Y0D02*\nX0Y51000I-50000J0D01*" + End,
            GerberCode.BadArc, Severity.Error, 9, 1,
            "an arc whose radii differ by 0.1 mm of 5 mm",
            "radii within one percent"),
        ("arc without a centre", Disc + "G75*\nG03*\nX50000Y0D02*\nX0Y50000D01*" + End,
            GerberCode.BadArc, Severity.Error, 9, 1,
            "an arc whose I and J are 0",
            "the offset to the centre"),
        ("half turn under G74", Disc + "G74*\nG03*\nX50000Y0D02*\nX-50000Y0I50000J0D01*" + End,
            GerberCode.BadArc, Severity.Error, 9, 1,
            "an arc of more than a quarter turn under G74",
            "at most 90 degrees"),
        ("contour open", Disc + "G36*\nX0Y0D02*\nX10000D01*\nY10000D01*\nG37*" + End,
            GerberCode.OpenContour, Severity.Warning, 7, 1,
            "a contour open by 1.414214 mm",
            "its first point at its end; closed by a straight line"),
        ("contour without area", Disc + "G36*\nX0Y0D02*\nX10000D01*\nX0D01*\nG37*" + End,
            GerberCode.EmptyContour, Severity.Warning, 7, 1,
            "a contour that encloses nothing",
            "an area; it is dropped"),
        ("contour without a move", Disc + "X0Y0D02*\nG36*\nX10000D01*\nY10000D01*\nX0Y0D01*\nG37*" + End,
            GerberCode.ContourWithoutMove, Severity.Warning, 8, 1,
            "a contour that begins with D01",
            "D02; the current point is taken"),
        ("flash in a region", Disc + "G36*\nX0Y0D03*\nG37*" + End, GerberCode.NotInRegion, Severity.Error, 7, 1,
            "D03 in a region",
            "G37 before it"),
        ("polarity in a region", Disc + "G36*\n%LPC*%\nG37*" + End, GerberCode.NotInRegion, Severity.Error, 7, 2,
            "'LPC' in a region",
            "G37 before it"),
        ("aperture selected in a region", Disc + "G36*\nD10*\nG37*" + End, GerberCode.NotInRegion, Severity.Warning, 7, 1,
            "D10 in a region",
            "apertures selected outside regions"),
        ("aperture defined in a region", Disc + "G36*\n%ADD11C,1*%\nG37*" + End, GerberCode.NotInRegion, Severity.Warning, 7, 2,
            "'ADD11C,1' in a region",
            "apertures defined outside regions"),
        ("contour that crosses itself", Disc + "G36*\nX0Y0D02*\nX10000Y10000D01*\nX10000Y0D01*\nX0Y20000D01*\nX0Y0D01*\nG37*" + End,
            GerberCode.SelfCrossingContour, Severity.Warning, 7, 1,
            "a contour that crosses itself",
            "a simple outline; it is filled wherever it winds"),
        ("aperture hole wider than its pad", H + "%ADD10R,1X1X3*%" + End, GerberCode.UnusualHole, Severity.Warning, 3, 2,
            "an aperture hole that reaches the edge of its aperture",
            "a hole smaller than the aperture"),
        ("region left open", Disc + "G36*\nX0Y0D02*\nX10000D01*" + End, GerberCode.RegionPairing, Severity.Error, 6, 1,
            "G36 that no G37 closes",
            "G37 before the end"),
        ("G37 alone", Disc + "G37*" + End, GerberCode.RegionPairing, Severity.Warning, 6, 1,
            "G37 outside a region",
            "G36 before it"),
        ("step and repeat left open", Disc + "%SRX2Y1I5J0*%\nX0Y0D03*" + End,
            GerberCode.StepAndRepeat, Severity.Warning, 6, 2,
            "step and repeat left open at the end",
            "%SR*%; it is repeated as if closed there"),
        ("step and repeat in a block", Disc + "%ABD20*%\n%SRX2Y1I5J0*%\n%AB*%" + End,
            GerberCode.StepAndRepeat, Severity.Error, 7, 2,
            "SR inside a block",
            "SR outside AB only"),
        ("block left open", Disc + "%ABD20*%\nX0Y0D03*" + End, GerberCode.BlockPairing, Severity.Error, 6, 2,
            "a block that no AB closes",
            "%AB*% before the end"),
        ("block closed twice", Disc + "%ABD20*%%AB*%\n%AB*%" + End, GerberCode.BlockPairing, Severity.Error, 7, 2,
            "AB with no block open",
            "ABDnn before it"),
        ("a thousand million million copies", Disc + "%SRX1000000000Y1000000I0J0*%\nX0Y0D03*\n%SR*%" + End,
            GerberCode.TooMuch, Severity.Error, 6, 2,
            "1000000000000000 copies of 1 objects",
            "at most 2000000 objects"),
        ("pin without a pin number", Disc + "%TO.P,U1*%" + End, GerberCode.BadAttribute, Severity.Warning, 6, 2,
            "'TO.P,U1'",
            ".P,component,pin"),
        ("attribute in other letters", Disc + "%TF.filefunction,Copper,L1,Top*%" + End,
            GerberCode.BadAttribute, Severity.Note, 6, 2,
            "'.filefunction'",
            "the spelling .FileFunction"),
        ("attribute of an unknown name", Disc + "%TF.Colour,Green*%" + End,
            GerberCode.UnknownAttribute, Severity.Note, 6, 2,
            "'.Colour'",
            "a standard attribute; it is kept"),
    ];

    /// <summary>Codes whose cases stand in other tests, some among the limits, because they need more setting up.</summary>
    private static readonly string[] CodesTestedElsewhere =
        [GerberCode.NegativeCopper, GerberCode.MoreOfTheSame, GerberCode.MacroNotComposable, GerberCode.TooMuchInAll];

    public static TheoryData<string> Names => [.. Cases.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void DrawsTheExactRemark(string name)
    {
        (_, string text, string code, Severity severity, int line, int column, string found, string expected) =
            Cases.Single(c => c.Name == name);
        GerberReading reading = GerberText.Read(text);
        Diagnostic remark = reading.Diagnostics.FirstOrDefault(d => d.Code == code)
            .ShouldNotBeNull(string.Join('\n', reading.Diagnostics));
        remark.Position.ShouldBe(new SourcePosition("layer.gbr", line, column), remark.ToString());
        remark.Severity.ShouldBe(severity);
        remark.Found.ShouldBe(found);
        remark.Expected.ShouldBe(expected);
        remark.AffectsCopper.ShouldBe(severity == Severity.Error || code is GerberCode.NoEnd or GerberCode.AfterEnd);
        (reading.Artwork is null).ShouldBe(severity == Severity.Error, string.Join('\n', reading.Diagnostics));
    }

    [Fact]
    public void EveryCodeHasACase()
    {
        IEnumerable<string> codes = typeof(GerberCode).GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(field => (string)field.GetRawConstantValue()!);
        codes.Except(CodesTestedElsewhere).Except(Cases.Select(c => c.Code)).ShouldBeEmpty();
    }

    [Theory]
    [InlineData("G99*")]
    [InlineData("%ZZ1*%")]
    [InlineData("%IPNEG*%")]
    public void WhatRefusesCopperOnlyWarnsElsewhere(string command)
    {
        GerberReading reading = GerberText.Read(
            Disc + "X0Y0D03*\n" + command + End, new GerberReadOptions { PurposeIsCopper = false });
        reading.Artwork.ShouldNotBeNull().Objects.Count.ShouldBe(1);
        reading.Diagnostics.ShouldHaveSingleItem().Severity.ShouldBe(Severity.Warning);
    }

    [Fact]
    public void NegativeCopperKeepsItsImageAsDrawnAndIsNoted()
    {
        GerberReading reading = GerberText.Read("%TF.FilePolarity,Negative*%\n" + Disc + "X0Y0D03*" + End);
        reading.Artwork.ShouldNotBeNull();
        Diagnostic remark = reading.Diagnostics.ShouldHaveSingleItem();
        remark.Code.ShouldBe(GerberCode.NegativeCopper);
        remark.Severity.ShouldBe(Severity.Note);
        remark.AffectsCopper.ShouldBeFalse();
    }

    [Fact]
    public void NegativeSolderMaskIsNormal() => GerberText.Read(
        "%TF.FileFunction,Soldermask,Top*%%TF.FilePolarity,Negative*%\n" + Disc + "X0Y0D03*" + End)
        .Diagnostics.ShouldBeEmpty();

    [Fact]
    public void ManyRemarksOfOneKindAreCounted()
    {
        string contours = string.Concat(Enumerable.Repeat("X0Y0D02*\nX10000D01*\nY10000D01*\n", 60));
        GerberReading reading = GerberText.Read(Disc + "G36*\n" + contours + "G37*" + End);
        reading.Diagnostics.Count(d => d.Code == GerberCode.OpenContour).ShouldBe(50);
        reading.Diagnostics[^1].Code.ShouldBe(GerberCode.MoreOfTheSame);
        reading.Diagnostics[^1].Found.ShouldStartWith("10 more remarks GBR050");
    }

    [Fact]
    public void AnExampleReadsAsOneLine() => GerberText.Read(Disc + "D11*" + End).Diagnostics[0].ToString().ShouldBe(
        "layer.gbr:6:1: error GBR020: found aperture D11, not defined; expected ADD11 before it");

    [Fact]
    public void PositionsCountLineBreaksInsideCommands()
    {
        GerberReading reading = GerberText.Read(Disc + "X0\r\nY1\r.5D03*" + End);
        reading.Diagnostics[0].Position.ShouldBe(new SourcePosition("layer.gbr", 8, 1));
    }
}
