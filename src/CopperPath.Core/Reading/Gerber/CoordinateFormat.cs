using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Reading.Gerber;

/// <summary>Which zeros of a coordinate may be left out.</summary>
internal enum ZeroOmission
{
    /// <summary>Digits are aligned to the right: the last is the smallest decimal.</summary>
    Leading,

    /// <summary>Digits are aligned to the left: the first is the highest integer place (deprecated).</summary>
    Trailing,
}

/// <summary>The FS command: how digits become a length.</summary>
/// <param name="Zeros">Which zeros may be missing.</param>
/// <param name="Incremental">Coordinates count from the current point (deprecated).</param>
/// <param name="XIntegers">Digits before the implied point, x.</param>
/// <param name="XDecimals">Digits after the implied point, x.</param>
/// <param name="YIntegers">Digits before the implied point, y.</param>
/// <param name="YDecimals">Digits after the implied point, y.</param>
internal sealed record CoordinateFormat(
    ZeroOmission Zeros,
    bool Incremental,
    int XIntegers,
    int XDecimals,
    int YIntegers,
    int YDecimals);

/// <summary>What became of a coordinate's digits.</summary>
internal enum CoordinateFlaw
{
    None,

    /// <summary>More digits than the format has places; with leading zeros omitted the value is still clear.</summary>
    ExtraDigits,

    /// <summary>More digits than the format has places, and the alignment leaves the value open.</summary>
    Ambiguous,

    /// <summary>Beyond <see cref="PointNm.LimitNm"/>.</summary>
    OutOfRange,
}

/// <summary>Digits of one axis to nanometres: exact integer arithmetic, rounded once, halves away from zero.</summary>
internal readonly struct AxisScale
{
    private readonly bool _padRight;
    private readonly int _places;
    private readonly long _unitNm;
    private readonly long _divisor;

    /// <summary>Up to this many last digits the exact quotient fits 64 bits.</summary>
    private readonly long _fits64;

    /// <summary>Nanometres per last digit when that is a whole number, else 0.</summary>
    private readonly long _stepNm;

    public AxisScale(int integers, int decimals, ZeroOmission zeros, long unitNm)
    {
        _places = integers + decimals;
        _padRight = zeros == ZeroOmission.Trailing;
        _unitNm = unitNm;
        _divisor = PowerOfTen(decimals);
        _stepNm = unitNm % _divisor == 0 ? unitNm / _divisor : 0;
        _fits64 = long.MaxValue / 4 / unitNm;
    }

    /// <summary>The smallest step the format can write, nanometres.</summary>
    public double StepNm => (double)_unitNm / _divisor;

    public CoordinateFlaw ToNm(in DigitString digits, out long nm)
    {
        long value = digits.Value;
        if (_stepNm != 0 && !_padRight && digits.Count <= _places)
        {
            // The usual case. No more than 14 digits, of which 7 are whole millimetres or inches: no overflow.
            nm = value * _stepNm;
            return nm is > PointNm.LimitNm or < -PointNm.LimitNm ? CoordinateFlaw.OutOfRange : CoordinateFlaw.None;
        }

        nm = 0;
        CoordinateFlaw flaw = CoordinateFlaw.None;
        if (digits.Count > _places)
        {
            if (_padRight)
            {
                return CoordinateFlaw.Ambiguous;
            }

            flaw = CoordinateFlaw.ExtraDigits;
        }

        if (digits.Count > 18)
        {
            return CoordinateFlaw.OutOfRange;
        }

        if (_padRight)
        {
            value *= PowerOfTen(_places - digits.Count);
        }

        if (_stepNm != 0 && Math.Abs(value) <= PointNm.LimitNm)
        {
            nm = value * _stepNm;
        }
        else if (value <= _fits64 && value >= -_fits64)
        {
            nm = ((2 * value * _unitNm) + (value < 0 ? -_divisor : _divisor)) / (2 * _divisor);
        }
        else
        {
            Int128 twice = (Int128)value * _unitNm * 2;
            Int128 rounded = (twice + (value < 0 ? -_divisor : _divisor)) / (2 * _divisor);
            nm = (long)Int128.Clamp(rounded, long.MinValue, long.MaxValue);
        }

        return nm is > PointNm.LimitNm or < -PointNm.LimitNm ? CoordinateFlaw.OutOfRange : flaw;
    }

    private static long PowerOfTen(int exponent)
    {
        long power = 1;
        for (int i = 0; i < exponent; i++)
        {
            power *= 10;
        }

        return power;
    }
}

/// <summary>The MO command.</summary>
internal static class LengthUnit
{
    public const long MillimetreNm = Units.NmPerMm;

    public const long InchNm = Units.NmPerInch;
}
