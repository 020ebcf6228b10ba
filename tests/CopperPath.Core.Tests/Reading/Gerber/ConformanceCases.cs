namespace CopperPath.Core.Tests.Reading.Gerber;

/// <summary>One small file whose exact image is known.</summary>
/// <param name="Name">Case number.</param>
/// <param name="Tests">What it exercises.</param>
/// <param name="Body">Commands; without FS they stand in 3.4 millimetre format, M02 is added except in K67.</param>
/// <param name="AreaMm2">Area of the exact shape, from closed formulas.</param>
/// <param name="BoundsMm">Smallest x, y and largest x, y, or null where the case does not state them.</param>
public sealed record ConformanceCase(string Name, string Tests, string Body, double AreaMm2, double[]? BoundsMm)
{
    public string Text => (Body.StartsWith("%FS", StringComparison.Ordinal) ? "" : "%FSLAX34Y34*%%MOMM*%")
        + Body + (Name == "K67" ? "" : "M02*");
}

/// <summary>
/// The project's conformance list K01 to K67. Areas and bounds follow from the shapes by elementary geometry
/// (discs, stadiums, annular sectors, polygons) and were computed apart from this reader.
/// </summary>
internal static class ConformanceCases
{
    public static readonly ConformanceCase[] All =
    [
        new(
            "K01",
            "C flash",
            "%ADD10C,2*%D10*X0Y0D03*",
            3.141593,
            [-1, -1, 1, 1]),
        new(
            "K02",
            "C hole",
            "%ADD10C,2X1*%D10*X0Y0D03*",
            2.356194,
            null),
        new(
            "K03",
            "R",
            "%ADD10R,2X1*%D10*X0Y0D03*",
            2.000000,
            [-1, -0.5, 1, 0.5]),
        new(
            "K04",
            "R hole",
            "%ADD10R,2X1X0.5*%D10*X0Y0D03*",
            1.803650,
            null),
        new(
            "K05",
            "O wide",
            "%ADD10O,3X1*%D10*X0Y0D03*",
            2.785398,
            [-1.5, -0.5, 1.5, 0.5]),
        new(
            "K06",
            "O tall",
            "%ADD10O,1X3*%D10*X0Y0D03*",
            2.785398,
            [-0.5, -1.5, 0.5, 1.5]),
        new(
            "K07",
            "P hexagon",
            "%ADD10P,2X6*%D10*X0Y0D03*",
            2.598076,
            [-1, -0.866, 1, 0.866]),
        new(
            "K08",
            "P triangle rot 90",
            "%ADD10P,2X3X90*%D10*X0Y0D03*",
            1.299038,
            [-0.866, -0.5, 0.866, 1]),
        new(
            "K09",
            "P square hole",
            "%ADD10P,2X4X0X0.5*%D10*X0Y0D03*",
            1.803650,
            [-1, -1, 1, 1]),
        new(
            "K10",
            "hole does not erase",
            "%ADD11R,4X4*%D11*X0Y0D03*%ADD10C,2X1*%D10*X0Y0D03*",
            16.000000,
            null),
        new(
            "K11",
            "stroke",
            "%ADD10C,1*%D10*X0Y0D02*G01*X100000D01*",
            10.785398,
            [-0.5, -0.5, 10.5, 0.5]),
        new(
            "K12",
            "zero-length stroke",
            "%ADD10C,1*%D10*X0Y0D02*G01*X0Y0D01*",
            0.785398,
            null),
        new(
            "K13",
            "R pen axis",
            "%ADD10R,1X0.5*%D10*X0Y0D02*G01*X100000D01*",
            5.500000,
            [-0.5, -0.25, 10.5, 0.25]),
        new(
            "K14",
            "R pen diagonal",
            "%ADD10R,1X1*%D10*X0Y0D02*G01*X30000Y40000D01*",
            8.000000,
            null),
        new(
            "K15",
            "zero aperture stroke",
            "%ADD10C,0*%D10*X0Y0D02*G01*X100000D01*",
            0.000000,
            null),
        new(
            "K16",
            "modal D01, corner",
            "%ADD10C,1*%D10*X0Y0D02*G01*X100000D01*Y100000*",
            20.731748,
            null),
        new(
            "K17",
            "modal X after flash",
            "%ADD10C,1*%D10*X50000Y0D03*Y20000D03*",
            1.570796,
            [4.5, -0.5, 5.5, 2.5]),
        new(
            "K18",
            "arc Q1 CCW",
            "%ADD10C,1*%D10*G75*X50000Y0D02*G03*X0Y50000I-50000J0D01*",
            8.639380,
            [-0.5, -0.5, 5.5, 5.5]),
        new(
            "K19",
            "arc Q2 CCW",
            "%ADD10C,1*%D10*G75*X0Y50000D02*G03*X-50000Y0I0J-50000D01*",
            8.639380,
            [-5.5, -0.5, 0.5, 5.5]),
        new(
            "K20",
            "arc Q3 CCW",
            "%ADD10C,1*%D10*G75*X-50000Y0D02*G03*X0Y-50000I50000J0D01*",
            8.639380,
            [-5.5, -5.5, 0.5, 0.5]),
        new(
            "K21",
            "arc Q4 CCW",
            "%ADD10C,1*%D10*G75*X0Y-50000D02*G03*X50000Y0I0J50000D01*",
            8.639380,
            [-0.5, -5.5, 5.5, 0.5]),
        new(
            "K22",
            "arc CW 270 deg",
            "%ADD10C,1*%D10*G75*X50000Y0D02*G02*X0Y50000I-50000J0D01*",
            24.347343,
            [-5.5, -5.5, 5.5, 5.5]),
        new(
            "K23",
            "G75 start=end: ring",
            "%ADD10C,1*%D10*G75*X50000Y0D02*G03*X50000Y0I-50000J0D01*",
            31.415927,
            null),
        new(
            "K24",
            "G74 start=end: dot",
            "%ADD10C,1*%D10*G75*G74*X50000Y0D02*G03*X50000Y0I50000J0D01*",
            0.785398,
            [4.5, -0.5, 5.5, 0.5]),
        new(
            "K25",
            "G74 quarter, unsigned I",
            "%ADD10C,1*%D10*G75*G74*X50000Y0D02*G03*X0Y50000I50000J0D01*",
            8.639380,
            [-0.5, -0.5, 5.5, 5.5]),
        new(
            "K26",
            "region half disc",
            "G75*G36*X50000Y0D02*G03*X-50000Y0I-50000J0D01*G01*X50000D01*G37*",
            39.269908,
            [-5, 0, 5, 5]),
        new(
            "K27",
            "region full circle",
            "G75*G36*X20000Y0D02*G03*X20000Y0I-20000J0D01*G37*",
            12.566371,
            null),
        new(
            "K28",
            "rounded rectangle 10x6 r1",
            "G75*G36*X10000Y0D02*G01*X90000D01*G03*X100000Y10000I0J10000D01*G01*Y50000D01*G03*X90000Y60000I-10000J0D01*G01*X10000D01*G03*X0Y50000I0J-10000D01*G01*Y10000D01*G03*X10000Y0I10000J0D01*G37*",
            59.141593,
            [0, 0, 10, 6]),
        new(
            "K29",
            "region square",
            "G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*Y0D01*G37*",
            100.000000,
            null),
        new(
            "K30",
            "region open, closed by reader (warn)",
            "G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*G37*",
            100.000000,
            null),
        new(
            "K31",
            "two contours overlap: union",
            "G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*Y0D01*X50000Y50000D02*X150000D01*Y150000D01*X50000D01*Y50000D01*G37*",
            175.000000,
            null),
        new(
            "K32",
            "nested contour: no hole",
            "G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*Y0D01*X30000Y30000D02*X70000D01*Y70000D01*X30000D01*Y30000D01*G37*",
            100.000000,
            null),
        new(
            "K33",
            "cut-in hole",
            "G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*Y30000D01*X30000D01*Y70000D01*X70000D01*Y30000D01*X30000D01*X0D01*Y0D01*G37*",
            84.000000,
            null),
        new(
            "K34",
            "LPC hole",
            "G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*Y0D01*G37*%LPC*%%ADD10C,4*%D10*X50000Y50000D03*",
            87.433629,
            null),
        new(
            "K35",
            "dark again in hole",
            "G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*Y0D01*G37*%LPC*%%ADD10C,4*%D10*X50000Y50000D03*%LPD*%%ADD11C,2*%D11*X50000Y50000D03*",
            90.575222,
            null),
        new(
            "K36",
            "clear first has no effect",
            "%LPC*%%ADD10C,4*%D10*X50000Y50000D03*%LPD*%G36*X0Y0D02*G01*X100000D01*Y100000D01*X0D01*Y0D01*G37*",
            100.000000,
            null),
        new(
            "K37",
            "SR 3x2",
            "%ADD10C,1*%D10*%SRX3Y2I5.0J4.0*%X0Y0D03*%SR*%",
            4.712389,
            [-0.5, -0.5, 10.5, 4.5]),
        new(
            "K38",
            "SR copies in order, clear overlap",
            "%ADD10R,4X4*%%ADD11C,2*%%SRX2Y1I2.0J0*%%LPD*%D10*X0Y0D03*%LPC*%D11*X0Y0D03*%SR*%%LPD*%",
            19.287611,
            null),
        new(
            "K39",
            "AB flashed twice",
            "%ABD20*%%ADD10C,1*%D10*X0Y0D03*X20000D03*%AB*%D20*X0Y0D03*X0Y100000D03*",
            3.141593,
            [-0.5, -0.5, 2.5, 10.5]),
        new(
            "K40",
            "AB nested",
            "%ABD21*%%ABD20*%%ADD10C,1*%D10*X0Y0D03*X20000D03*%AB*%D20*X0Y0D03*X0Y30000D03*%AB*%D21*X0Y0D03*X100000D03*",
            6.283185,
            [-0.5, -0.5, 12.5, 3.5]),
        new(
            "K41",
            "AB flashed LPC toggles",
            "G36*X-50000Y-50000D02*G01*X50000D01*Y50000D01*X-50000D01*Y-50000D01*G37*%ADD10R,4X4*%%ADD11R,2X2*%%ABD20*%%LPD*%D10*X0Y0D03*%LPC*%D11*X0Y0D03*%LPD*%%AB*%%LPC*%D20*X0Y0D03*",
            88.000000,
            null),
        new(
            "K42",
            "AB clear member acts on background",
            "G36*X-50000Y-50000D02*G01*X50000D01*Y50000D01*X-50000D01*Y-50000D01*G37*%ADD11R,2X2*%%ABD20*%%LPC*%D11*X0Y0D03*%LPD*%%AB*%D20*X0Y0D03*",
            96.000000,
            null),
        new(
            "K43",
            "LMX",
            "%AMM*4,1,3,0,0,2,0,0,1,0,0,0*%%ADD10M*%D10*%LMX*%X0Y0D03*",
            1.000000,
            [-2, 0, 0, 1]),
        new(
            "K44",
            "LR90",
            "%AMM*4,1,3,0,0,2,0,0,1,0,0,0*%%ADD10M*%D10*%LR90*%X0Y0D03*",
            1.000000,
            [-1, 0, 0, 2]),
        new(
            "K45",
            "LMX+LR90: mirror first",
            "%AMM*4,1,3,0,0,2,0,0,1,0,0,0*%%ADD10M*%D10*%LMX*%%LR90*%X0Y0D03*",
            1.000000,
            [-1, -2, 0, 0]),
        new(
            "K46",
            "LS2 flash; place unscaled",
            "%ADD10C,1*%D10*%LS2*%X50000Y0D03*",
            3.141593,
            [4, -1, 6, 1]),
        new(
            "K47",
            "LS2 stroke",
            "%ADD10C,1*%D10*%LS2*%X0Y0D02*G01*X100000D01*",
            23.141593,
            null),
        new(
            "K48",
            "AM 1 rot about origin",
            "%AMM*1,1,2,2,0,90*%%ADD10M*%D10*X0Y0D03*",
            3.141593,
            [-1, 1, 1, 3]),
        new(
            "K49",
            "AM 20 no caps",
            "%AMM*20,1,1,0,0,4,0,90*%%ADD10M*%D10*X0Y0D03*",
            4.000000,
            [-0.5, 0, 0.5, 4]),
        new(
            "K50",
            "AM 21 rot about origin",
            "%AMM*21,1,3,1,2,0,90*%%ADD10M*%D10*X0Y0D03*",
            3.000000,
            [-0.5, 0.5, 0.5, 3.5]),
        new(
            "K51",
            "AM 22",
            "%AMM*22,1,3,1,0,0,0*%%ADD10M*%D10*X0Y0D03*",
            3.000000,
            [0, 0, 3, 1]),
        new(
            "K52",
            "AM 4",
            "%AMM*4,1,3,0,0,2,0,0,1,0,0,0*%%ADD10M*%D10*X0Y0D03*",
            1.000000,
            [0, 0, 2, 1]),
        new(
            "K53",
            "AM 5 off centre rot 90",
            "%AMM*5,1,4,3,0,2,90*%%ADD10M*%D10*X0Y0D03*",
            2.000000,
            [-1, 2, 1, 4]),
        new(
            "K54",
            "AM 6 rings only",
            "%AMM*6,0,0,10,1,1,2,0,12,0*%%ADD10M*%D10*X0Y0D03*",
            43.982297,
            null),
        new(
            "K55",
            "AM 6 ring + cross",
            "%AMM*6,0,0,10,1,1,1,1,12,0*%%ADD10M*%D10*X0Y0D03*",
            47.265953,
            [-6, -6, 6, 6]),
        new(
            "K56",
            "AM 7",
            "%AMM*7,0,0,8,4,1,0*%%ADD10M*%D10*X0Y0D03*",
            29.656744,
            null),
        new(
            "K57",
            "AM exposure off",
            "%AMM*1,1,4,0,0*21,0,1,1,0,0,0*%%ADD10M*%D10*X0Y0D03*",
            11.566371,
            null),
        new(
            "K58",
            "AM off shows background",
            "G36*X-50000Y-50000D02*G01*X50000D01*Y50000D01*X-50000D01*Y-50000D01*G37*%AMM*1,1,4,0,0*21,0,1,1,0,0,0*%%ADD10M*%D10*X0Y0D03*",
            100.000000,
            null),
        new(
            "K59",
            "AM variables, X multiply",
            "%AMM*\n$3=$1X0.5*\n21,1,$1,$3,0,0,0*%%ADD10M,4*%D10*X0Y0D03*",
            8.000000,
            null),
        new(
            "K60",
            "AM precedence",
            "%AMM*1,1,$1+$2x2,0,0*%%ADD10M,1X1.5*%D10*X0Y0D03*",
            12.566371,
            null),
        new(
            "K61",
            "AM parentheses, minus",
            "%AMM*21,1,($1+$2)x2,1,-$1,0,0*%%ADD10M,1X2*%D10*X0Y0D03*",
            6.000000,
            [-4, -0.5, 2, 0.5]),
        new(
            "K62",
            "FS trailing omitted",
            "%FSTAX24Y24*%%MOMM*%%ADD10C,1*%D10*X05Y0D03*X-05D03*",
            1.570796,
            [-5.5, -0.5, 5.5, 0.5]),
        new(
            "K63",
            "FS leading omitted, sign",
            "%FSLAX24Y24*%%MOMM*%%ADD10C,1*%D10*X-5000Y+5000D03*",
            0.785398,
            [-1, 0, 0, 1]),
        new(
            "K64",
            "inch",
            "%FSLAX25Y25*%%MOIN*%%ADD10C,0.1*%D10*X100000Y0D03*",
            5.067075,
            [24.13, -1.27, 26.67, 1.27]),
        new(
            "K65",
            "G70 for MO",
            "%FSLAX24Y24*%G70*%ADD10R,1X1*%D10*X0Y0D03*",
            645.160000,
            null),
        new(
            "K66",
            "incremental",
            "%FSLIX34Y34*%%MOMM*%%ADD10C,1*%D10*X10000Y0D03*X20000D03*X20000D03*",
            2.356194,
            [0.5, -0.5, 5.5, 0.5]),
        new(
            "K67",
            "several commands in one %, G54, CRLF, no M02",
            "%FSLAX34Y34*MOMM*%\r\n%ADD10C,1*%\r\nG54D10*\r\nX0Y0D03*\r\n",
            0.785398,
            null),
    ];
}
