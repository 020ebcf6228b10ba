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

    /// <summary>Text, code, severity, line, column; an error refuses the file, anything else keeps the image.</summary>
    private static readonly (string Name, string Text, string Code, Severity Severity, int Line, int Column)[] Cases =
    [
        ("text that is no Gerber", "Hello world", GerberCode.NotGerber, Severity.Error, 0, 0),
        ("empty file", "", GerberCode.NotGerber, Severity.Error, 0, 0),
        ("word cut off", Disc + "X0Y0D0", GerberCode.Unterminated, Severity.Error, 6, 7),
        ("percent in a word", Disc + "X0Y0D03%LPC*%" + End, GerberCode.Unterminated, Severity.Error, 6, 8),
        ("macro never closed", H + "%AMM*1,1,2,0,0*\nM02*", GerberCode.Unterminated, Severity.Error, 3, 1),
        ("percent never closed", Disc + "X0Y0D03*\n%LPD*\n", GerberCode.Unterminated, Severity.Error, 7, 1),
        ("star missing before percent", H + "%LPD%" + End, GerberCode.Unterminated, Severity.Warning, 3, 5),
        ("M02 without star", Disc + "X0Y0D03*\nM02\n", GerberCode.Unterminated, Severity.Warning, 7, 1),
        ("no M02", Disc + "X0Y0D03*\n", GerberCode.NoEnd, Severity.Warning, 0, 0),
        ("unknown G code", Disc + "X0Y0D03*\nG99*" + End, GerberCode.UnknownCommand, Severity.Error, 7, 1),
        ("unknown M code", Disc + "M09*" + End, GerberCode.UnknownCommand, Severity.Error, 6, 1),
        ("unknown letter", Disc + "Q5*" + End, GerberCode.UnknownCommand, Severity.Error, 6, 1),
        ("unknown extended command", Disc + "%ZZ1*%" + End, GerberCode.UnknownCommand, Severity.Error, 6, 2),
        ("axes exchanged", Disc + "%ASAYBX*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2),
        ("image rotated", Disc + "%IR90*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2),
        ("image mirrored", Disc + "%MIA1B0*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2),
        ("image moved", Disc + "%OFA1.5B0*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2),
        ("image scaled", Disc + "%SFA1.0B1.01*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2),
        ("include file", Disc + "%IFother.gbr*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2),
        ("knockout", Disc + "%KOC*%" + End, GerberCode.UnsupportedCommand, Severity.Error, 6, 2),
        ("neutral offset", Disc + "%OFA0.0B0.0*%" + End, GerberCode.Deprecated, Severity.Note, 6, 2),
        ("neutral scale", Disc + "%SFA1.0B1.0*%" + End, GerberCode.Deprecated, Severity.Note, 6, 2),
        ("positive image", Disc + "%IPPOS*%" + End, GerberCode.Deprecated, Severity.Note, 6, 2),
        ("layer name", Disc + "%LNTOP*%" + End, GerberCode.Deprecated, Severity.Note, 6, 2),
        ("G54 prefix", Disc + "G54D10*" + End, GerberCode.Deprecated, Severity.Note, 6, 1),
        ("optional stop", Disc + "M01*" + End, GerberCode.Deprecated, Severity.Note, 6, 1),
        ("line number", Disc + "N10X0Y0D03*" + End, GerberCode.Deprecated, Severity.Note, 6, 1),
        ("operation code 5", Disc + "X0Y0D05*" + End, GerberCode.BadCommand, Severity.Error, 6, 5),
        ("polarity of no kind", Disc + "%LPX*%" + End, GerberCode.BadCommand, Severity.Error, 6, 2),
        ("scale of zero", Disc + "%LS0*%" + End, GerberCode.BadCommand, Severity.Error, 6, 2),
        ("format of nine decimals", "%FSLAX39Y39*%\n%MOMM*%" + End, GerberCode.BadCommand, Severity.Error, 1, 2),
        ("format of an unknown kind", "%FSQAX34Y34*%\n%MOMM*%" + End, GerberCode.BadCommand, Severity.Error, 1, 2),
        ("unit of an unknown kind", "%FSLAX34Y34*%\n%MOFT*%" + End, GerberCode.BadCommand, Severity.Error, 2, 2),
        ("negative image", Disc + "%IPNEG*%" + End, GerberCode.NegativeImage, Severity.Error, 6, 2),
        ("no format", "%MOMM*%\n%ADD10C,1*%\nD10*\nX0Y0D03*" + End, GerberCode.FormatMissing, Severity.Error, 4, 1),
        ("no unit before aperture", "%FSLAX34Y34*%\n%ADD10C,1*%" + End, GerberCode.UnitMissing, Severity.Error, 2, 2),
        ("no unit before coordinate", "%FSLAX34Y34*%\nX0Y0D02*" + End, GerberCode.UnitMissing, Severity.Error, 2, 1),
        ("second format", H + "%FSLAX35Y35*%" + End, GerberCode.MixedFormat, Severity.Warning, 3, 2),
        ("unequal formats", "%FSLAX34Y35*%\n%MOMM*%" + End, GerberCode.MixedFormat, Severity.Warning, 1, 2),
        ("second unit", H + "%MOIN*%" + End, GerberCode.MixedFormat, Severity.Warning, 3, 2),
        ("point in a coordinate", Disc + "X1.5Y0D03*" + End, GerberCode.BadNumber, Severity.Error, 6, 3),
        ("coordinate without digits", Disc + "XY0D03*" + End, GerberCode.BadNumber, Severity.Error, 6, 2),
        ("two points in a size", H + "%ADD10C,1.2.3*%" + End, GerberCode.BadNumber, Severity.Error, 3, 9),
        ("comma as decimal sign", H + "%ADD10C,1,5*%" + End, GerberCode.BadNumber, Severity.Error, 3, 10),
        ("G without a number", Disc + "G*" + End, GerberCode.BadNumber, Severity.Error, 6, 1),
        ("extra leading digits", Disc + "X00000010000Y0D03*" + End, GerberCode.ExtraDigits, Severity.Warning, 6, 1),
        ("extra digits, trailing zeros omitted", "%FSTAX24Y24*%\n%MOMM*%\n%ADD10C,1*%\nD10*\nX1234567Y0D03*" + End,
            GerberCode.ExtraDigits, Severity.Error, 5, 1),
        ("coordinate beyond 10 m", Disc + "X100000001Y0D03*" + End, GerberCode.OutOfRange, Severity.Error, 6, 1),
        ("aperture beyond 10 m", H + "%ADD10C,30000*%" + End, GerberCode.OutOfRange, Severity.Error, 3, 2),
        ("no point after step and repeat", Disc + "%SRX2Y1I5J0*%X0Y0D03*%SR*%\nX0D03*" + End,
            GerberCode.NoCurrentPoint, Severity.Error, 7, 1),
        ("no point after a block", Disc + "%ABD20*%X0Y0D03*%AB*%\nX0Y0D01*" + End,
            GerberCode.NoCurrentPoint, Severity.Error, 7, 1),
        ("aperture not defined", Disc + "D11*\nX0Y0D03*" + End, GerberCode.UnknownAperture, Severity.Error, 6, 1),
        ("no aperture selected", H + "%ADD10C,1*%\nX0Y0D03*" + End, GerberCode.UnknownAperture, Severity.Error, 4, 1),
        ("file without apertures", H + "D10*\nX0Y0D03*" + End, GerberCode.UnknownAperture, Severity.Error, 3, 1),
        ("rectangle with one size", H + "%ADD10R,1*%" + End, GerberCode.BadAperture, Severity.Error, 3, 2),
        ("negative diameter", H + "%ADD10C,-1*%" + End, GerberCode.BadAperture, Severity.Error, 3, 2),
        ("polygon of two corners", H + "%ADD10P,1X2*%" + End, GerberCode.BadAperture, Severity.Error, 3, 2),
        ("aperture code 9", H + "%ADD09C,1*%" + End, GerberCode.BadAperture, Severity.Error, 3, 2),
        ("aperture twice", Disc + "%ADD10C,2*%" + End, GerberCode.ApertureRedefined, Severity.Warning, 6, 2),
        ("rectangle of size zero", H + "%ADD10R,0X1*%" + End, GerberCode.EmptyAperture, Severity.Warning, 3, 2),
        ("hole as large as its pad", H + "%ADD10C,1X1*%" + End, GerberCode.UnusualHole, Severity.Warning, 3, 2),
        ("rectangular hole", H + "%ADD10C,2X1X0.5*%" + End, GerberCode.UnusualHole, Severity.Warning, 3, 2),
        ("rectangular pen", H + "%ADD10R,1X1*%\nG01*\nD10*\nX0Y0D02*\nX10000D01*" + End,
            GerberCode.UnusualPen, Severity.Warning, 7, 1),
        ("pen with a hole", H + "%ADD10C,2X1*%\nG01*\nD10*\nX0Y0D02*\nX10000D01*" + End,
            GerberCode.PenNotAllowed, Severity.Error, 7, 1),
        ("arc with a rectangular pen", H + "%ADD10R,1X1*%\nG75*\nG03*\nD10*\nX0Y0D02*\nX20000I10000J0D01*" + End,
            GerberCode.PenNotAllowed, Severity.Error, 8, 1),
        ("stroke with a block", Disc + "%ABD20*%X0Y0D03*%AB*%\nD20*\nX0Y0D02*\nX1Y0D01*" + End,
            GerberCode.PenNotAllowed, Severity.Error, 9, 1),
        ("macro not defined", H + "%ADD10NOPE,1*%" + End, GerberCode.UnknownMacro, Severity.Error, 3, 2),
        ("macro expression cut short", H + "%AMM*\n1,1,2+,0,0*%" + End, GerberCode.MacroSyntax, Severity.Error, 4, 7),
        ("macro parenthesis open", H + "%AMM*1,1,(2,0,0*%" + End, GerberCode.MacroSyntax, Severity.Error, 3, 12),
        ("macro block without star", H + "%AMM*1,1,2,0,0%" + End, GerberCode.MacroSyntax, Severity.Error, 3, 6),
        ("macro primitive of no kind", H + "%AMM*9,1,2*%\n%ADD10M*%" + End, GerberCode.MacroSyntax, Severity.Error, 4, 2),
        ("macro circle without centre", H + "%AMM*1,1,2*%\n%ADD10M*%" + End, GerberCode.MacroArity, Severity.Error, 4, 2),
        ("macro outline short of a point", H + "%AMM*4,1,3,0,0,2,0,0,1,0*%\n%ADD10M*%" + End,
            GerberCode.MacroArity, Severity.Error, 4, 2),
        ("macro polygon of 13 corners", H + "%AMM*5,1,13,0,0,2,0*%\n%ADD10M*%" + End,
            GerberCode.MacroParameter, Severity.Error, 4, 2),
        ("macro thermal all gap", H + "%AMM*7,0,0,8,4,6,0*%\n%ADD10M*%" + End,
            GerberCode.MacroParameter, Severity.Error, 4, 2),
        ("macro exposure 3", H + "%AMM*1,3,2,0,0*%\n%ADD10M*%" + End, GerberCode.MacroParameter, Severity.Error, 4, 2),
        ("macro size that overflows", H + "%AMM*1,1,$1x$1x$1,0,0*%\n%ADD10M,1000000*%" + End,
            GerberCode.MacroParameter, Severity.Error, 4, 2),
        ("macro division by an unset variable", H + "%AMM*1,1,2/$1,0,0*%\n%ADD10M*%" + End,
            GerberCode.MacroDivision, Severity.Error, 4, 2),
        ("macro twice", H + "%AMM*1,1,2,0,0*%\n%AMM*1,1,3,0,0*%" + End, GerberCode.MacroRedefined, Severity.Warning, 4, 2),
        ("macro outline open", H + "%AMM*4,1,3,0,0,2,0,0,1,0,0.1,0*%\n%ADD10M*%" + End,
            GerberCode.MacroOutlineOpen, Severity.Warning, 4, 2),
        ("operation code left out", Disc + "X0Y0D02*\nX10000D01*\nX20000*\nX30000*" + End,
            GerberCode.ModalOperation, Severity.Warning, 8, 1),
        ("coordinates before any operation", Disc + "X0Y0*" + End, GerberCode.ModalOperation, Severity.Error, 6, 1),
        ("no interpolation mode", H + "%ADD10C,1*%\nD10*\nX0Y0D02*\nX10000D01*" + End,
            GerberCode.InterpolationAssumed, Severity.Warning, 6, 1),
        ("arc under G74", Disc + "G74*\nG03*\nX50000Y0D02*\nX0Y50000I50000J0D01*" + End,
            GerberCode.QuadrantMode, Severity.Warning, 9, 1),
        ("arc before any quadrant mode", Disc + "G03*\nX50000Y0D02*\nX0Y50000I-50000J0D01*" + End,
            GerberCode.QuadrantMode, Severity.Warning, 8, 1),
        ("arc with radii half a percent apart", Disc + "G75*\nG03*\nX50000Y0D02*\nX0Y50250I-50000J0D01*" + End,
            GerberCode.ArcRadiusDrift, Severity.Warning, 9, 1),
        ("arc with radii two percent apart", Disc + "G75*\nG03*\nX50000Y0D02*\nX0Y51000I-50000J0D01*" + End,
            GerberCode.BadArc, Severity.Error, 9, 1),
        ("arc without a centre", Disc + "G75*\nG03*\nX50000Y0D02*\nX0Y50000D01*" + End,
            GerberCode.BadArc, Severity.Error, 9, 1),
        ("half turn under G74", Disc + "G74*\nG03*\nX50000Y0D02*\nX-50000Y0I50000J0D01*" + End,
            GerberCode.BadArc, Severity.Error, 9, 1),
        ("contour open", Disc + "G36*\nX0Y0D02*\nX10000D01*\nY10000D01*\nG37*" + End,
            GerberCode.OpenContour, Severity.Warning, 7, 1),
        ("contour without area", Disc + "G36*\nX0Y0D02*\nX10000D01*\nX0D01*\nG37*" + End,
            GerberCode.EmptyContour, Severity.Warning, 7, 1),
        ("contour without a move", Disc + "X0Y0D02*\nG36*\nX10000D01*\nY10000D01*\nX0Y0D01*\nG37*" + End,
            GerberCode.ContourWithoutMove, Severity.Warning, 8, 1),
        ("flash in a region", Disc + "G36*\nX0Y0D03*\nG37*" + End, GerberCode.NotInRegion, Severity.Error, 7, 1),
        ("polarity in a region", Disc + "G36*\n%LPC*%\nG37*" + End, GerberCode.NotInRegion, Severity.Error, 7, 2),
        ("aperture selected in a region", Disc + "G36*\nD10*\nG37*" + End, GerberCode.NotInRegion, Severity.Warning, 7, 1),
        ("region left open", Disc + "G36*\nX0Y0D02*\nX10000D01*" + End, GerberCode.RegionPairing, Severity.Error, 6, 1),
        ("G37 alone", Disc + "G37*" + End, GerberCode.RegionPairing, Severity.Warning, 6, 1),
        ("step and repeat left open", Disc + "%SRX2Y1I5J0*%\nX0Y0D03*" + End,
            GerberCode.StepAndRepeat, Severity.Warning, 6, 2),
        ("step and repeat in a block", Disc + "%ABD20*%\n%SRX2Y1I5J0*%\n%AB*%" + End,
            GerberCode.StepAndRepeat, Severity.Error, 7, 2),
        ("block left open", Disc + "%ABD20*%\nX0Y0D03*" + End, GerberCode.BlockPairing, Severity.Error, 6, 2),
        ("block closed twice", Disc + "%ABD20*%%AB*%\n%AB*%" + End, GerberCode.BlockPairing, Severity.Error, 7, 2),
        ("a thousand million million copies", Disc + "%SRX1000000000Y1000000I0J0*%\nX0Y0D03*\n%SR*%" + End,
            GerberCode.TooMuch, Severity.Error, 6, 2),
        ("pin without a pin number", Disc + "%TO.P,U1*%" + End, GerberCode.BadAttribute, Severity.Warning, 6, 2),
        ("attribute in other letters", Disc + "%TF.filefunction,Copper,L1,Top*%" + End,
            GerberCode.BadAttribute, Severity.Note, 6, 2),
        ("attribute of an unknown name", Disc + "%TF.Colour,Green*%" + End,
            GerberCode.UnknownAttribute, Severity.Note, 6, 2),
    ];

    /// <summary>Codes whose cases stand in other tests because they need more than one line of setting up.</summary>
    private static readonly string[] CodesTestedElsewhere =
        [GerberCode.NegativeCopper, GerberCode.MoreOfTheSame, GerberCode.MacroNotComposable];

    public static TheoryData<string> Names => [.. Cases.Select(c => c.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void DrawsTheExactRemark(string name)
    {
        (_, string text, string code, Severity severity, int line, int column) = Cases.Single(c => c.Name == name);
        GerberReading reading = GerberText.Read(text);
        Diagnostic remark = reading.Diagnostics.FirstOrDefault(d => d.Code == code)
            .ShouldNotBeNull(string.Join('\n', reading.Diagnostics));
        remark.Position.ShouldBe(new SourcePosition("layer.gbr", line, column), remark.ToString());
        remark.Severity.ShouldBe(severity);
        remark.AffectsCopper.ShouldBe(severity == Severity.Error);
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
