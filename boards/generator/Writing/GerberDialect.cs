using System.Globalization;

namespace CopperPath.DemoBoards.Writing;

/// <summary>How a Gerber file says things: unit, digits, attributes or none, and how holes in areas are drawn.</summary>
/// <param name="Format">Body of the format command.</param>
/// <param name="Unit">Body of the unit command.</param>
/// <param name="StepMm">Length of one step of a coordinate, in millimetres.</param>
/// <param name="UnitMm">Length of the unit, in millimetres; aperture sizes are in it.</param>
/// <param name="SizeDigits">Decimal digits of aperture sizes.</param>
/// <param name="HasAttributes">Whether file, aperture and object attributes are written.</param>
/// <param name="ClearsHoles">Holes of areas are cleared after the area is drawn, rather than cut in from its edge.</param>
public sealed record GerberDialect(
    string Format, string Unit, double StepMm, double UnitMm, int SizeDigits, bool HasAttributes, bool ClearsHoles)
{
    /// <summary>Millimetres in six digits, with attributes.</summary>
    public static readonly GerberDialect Extended2 = new("FSLAX46Y46", "MOMM", 1e-6, 1, 6, HasAttributes: true, ClearsHoles: false);

    /// <summary>Inches in five digits, without attributes.</summary>
    public static readonly GerberDialect Bare = new("FSLAX25Y25", "MOIN", 25.4e-5, 25.4, 6, HasAttributes: false, ClearsHoles: true);

    /// <summary>A length in steps of this dialect.</summary>
    public long Steps(double mm) => (long)Math.Round(mm / StepMm, MidpointRounding.AwayFromZero);

    /// <summary>A length as aperture definitions write it.</summary>
    public string Size(double mm) =>
        Math.Round(mm / UnitMm, SizeDigits).ToString("0.######", CultureInfo.InvariantCulture);
}
