using System.Globalization;

namespace CopperPath.Reading.Drill;

/// <summary>Unit of the numbers of a drill file.</summary>
public enum DrillUnit
{
    Millimetre,
    Inch,
}

/// <summary>
/// Which zeros a number without a decimal point may leave out. The header words say the opposite side:
/// <c>TZ</c> keeps trailing zeros, so leading ones are omitted; <c>LZ</c> keeps leading zeros, so trailing ones are.
/// </summary>
public enum OmittedZeros
{
    Leading,
    Trailing,
}

/// <summary>How to read numbers that carry no decimal point.</summary>
/// <param name="Unit">Unit of coordinates and tool diameters.</param>
/// <param name="Zeros">Which zeros are left out.</param>
/// <param name="IntegerDigits">Digits before the imagined point, 1 to 7.</param>
/// <param name="DecimalDigits">Digits after the imagined point, 0 to 7.</param>
public sealed record DrillFormat(DrillUnit Unit, OmittedZeros Zeros, int IntegerDigits, int DecimalDigits)
{
    /// <summary>For example <c>inch, 2.5, leading zeros omitted</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Name(Unit)}, {IntegerDigits}.{DecimalDigits}, {Name(Zeros)}");

    internal static string Name(DrillUnit unit) => unit == DrillUnit.Inch ? "inch" : "millimetre";

    internal static string Name(OmittedZeros zeros) =>
        zeros == OmittedZeros.Leading ? "leading zeros omitted" : "trailing zeros omitted";
}
