using System.Globalization;
using CopperPath.Geometry;

namespace CopperPath.Reading.Drill;

/// <summary>
/// What the file, its conventions and the caller say about numbers, and lengths read by it. What the file states
/// stands; a format given by the caller fills only what the file leaves open.
/// </summary>
internal sealed class DrillNumberRules(DrillLog log, DrillFormat? given)
{
    private bool _readWithoutPoint;
    private bool _zerosAssumed;
    private bool _digitsByConvention;
    private bool _givenUsed;

    public DrillUnit? DeclaredUnit { get; private set; }

    public OmittedZeros? DeclaredZeros { get; private set; }

    public (int Integer, int Decimal)? DeclaredDigits { get; private set; }

    /// <summary>True after INCH or METRIC: then the digits usual for the unit may be taken.</summary>
    public bool HasUnitWord { get; set; }

    /// <summary>True when a number could not be read for want of unit or format.</summary>
    public bool IsMissingFormat { get; private set; }

    /// <summary>True when positions rest on an assumption, not on a statement of file or caller.</summary>
    public bool IsAssumed => _zerosAssumed;

    public DrillUnit? Unit => DeclaredUnit ?? given?.Unit;

    public void DeclareUnit(DrillUnit unit, int column)
    {
        if (DeclaredUnit is { } before && before != unit)
        {
            log.Warn(
                DrillCode.UnitChanges,
                column,
                $"unit {DrillFormat.Name(unit)} after {DrillFormat.Name(before)}",
                "one unit in a file; each number is read in the unit in force before it");
        }
        else if (DeclaredUnit is null && given is not null && given.Unit != unit)
        {
            Conflict(column, DrillFormat.Name(unit), DrillFormat.Name(given.Unit));
        }

        DeclaredUnit = unit;
    }

    public void DeclareZeros(OmittedZeros zeros, int column)
    {
        if (DeclaredZeros is { } before && before != zeros)
        {
            Redeclared(column, DrillFormat.Name(zeros), DrillFormat.Name(before));
        }
        else if (given is not null && given.Zeros != zeros)
        {
            Conflict(column, DrillFormat.Name(zeros), DrillFormat.Name(given.Zeros));
        }

        DeclaredZeros = zeros;
    }

    public void DeclareDigits(int integer, int decimals, int column)
    {
        if (integer is < 1 or > 7 || decimals is < 0 or > 7)
        {
            log.Reject(DrillCode.BadComment, column, $"digits {Text(integer, decimals)}", "1 to 7 digits before the point and 0 to 7 after");
            return;
        }

        if (DeclaredDigits is { } before && before != (integer, decimals))
        {
            Redeclared(column, Text(integer, decimals), Text(before.Integer, before.Decimal));
        }
        else if (given is not null && (given.IntegerDigits, given.DecimalDigits) != (integer, decimals))
        {
            Conflict(column, Text(integer, decimals), Text(given.IntegerDigits, given.DecimalDigits));
        }

        DeclaredDigits = (integer, decimals);
    }

    /// <summary>Length of a coordinate, radius or step; null after a remark when it can not be known.</summary>
    public long? LengthNm(DrillWord word)
    {
        if (DrillNumber.Parse(word.Number) is not { } number)
        {
            log.Reject(DrillCode.BadNumber, word.Column, $"'{word}'", "a number after the letter, such as X1.5 or X-01500");
            return null;
        }

        if (UnitOrRemark(word.Column) is not { } unit)
        {
            return null;
        }

        long? nm = number.HasPoint ? number.PlainNm(unit) : WithoutPointNm(number, unit, word);
        if (nm is { } value && Math.Abs(value) > PointNm.LimitNm)
        {
            log.Reject(DrillCode.TooFar, word.Column, $"'{word}'", "a length of at most 10 m");
            return null;
        }

        return nm;
    }

    /// <summary>The unit in force, or null after a remark.</summary>
    public DrillUnit? UnitOrRemark(int column)
    {
        if (Unit is null)
        {
            IsMissingFormat = true;
            if (!log.HasSaid(DrillCode.NoUnit))
            {
                log.Reject(DrillCode.NoUnit, column, "a length before any unit", "INCH, METRIC, M71 or M72 before it, or a drill format given for the file");
            }
        }
        else if (DeclaredUnit is null)
        {
            _givenUsed = true;
        }

        return Unit;
    }

    /// <summary>How numbers were read, for the report.</summary>
    public string Describe()
    {
        if (Unit is not { } unit)
        {
            return "unit not declared";
        }

        string unitName = DrillFormat.Name(unit);
        if (!_readWithoutPoint)
        {
            return $"{unitName}, decimal points{(_givenUsed ? " (unit given)" : "")}";
        }

        if (IsMissingFormat || EffectiveFormat(unit) is not { } format)
        {
            return $"{unitName}, number format not declared";
        }

        string origin = _zerosAssumed ? "zeros assumed" : _givenUsed ? "given" : _digitsByConvention ? "usual digits" : "declared";
        return $"{format} ({origin})";
    }

    private long? WithoutPointNm(DrillNumber number, DrillUnit unit, DrillWord word)
    {
        if (number.Digits.AsSpan().IndexOfAnyExcept('0') < 0)
        {
            // Zero is zero in every format.
            return 0;
        }

        _readWithoutPoint = true;
        if (EffectiveFormat(unit) is not { } format)
        {
            IsMissingFormat = true;
            if (!log.HasSaid(DrillCode.NoFormat))
            {
                log.Reject(
                    DrillCode.NoFormat,
                    word.Column,
                    $"'{word}' without decimal point, and no statement of digits and zeros",
                    "LZ or TZ and digits in the header, decimal points, or a drill format given for the file");
            }

            return null;
        }

        RemarkOnAssumptions(format, word.Column);
        if (number.Digits.Length > format.IntegerDigits + format.DecimalDigits)
        {
            string expected = $"at most {format.IntegerDigits + format.DecimalDigits} digits in format {Text(format.IntegerDigits, format.DecimalDigits)}";
            if (format.Zeros == OmittedZeros.Trailing)
            {
                log.Reject(DrillCode.TooManyDigits, word.Column, $"'{word}'", expected + ": with trailing zeros omitted the point is lost");
            }
            else
            {
                log.Warn(DrillCode.TooManyDigits, word.Column, $"'{word}'", expected + "; read from the right");
            }
        }

        return number.FormattedNm(format);
    }

    private DrillFormat? EffectiveFormat(DrillUnit unit)
    {
        OmittedZeros? zeros = DeclaredZeros ?? given?.Zeros ?? (HasUnitWord ? OmittedZeros.Leading : null);
        (int Integer, int Decimal)? digits = DeclaredDigits
            ?? (given is { } g ? (g.IntegerDigits, g.DecimalDigits)
                : HasUnitWord ? UsualDigits(unit)
                : null);
        return zeros is { } z && digits is { } d ? new DrillFormat(unit, z, d.Integer, d.Decimal) : null;
    }

    private void RemarkOnAssumptions(DrillFormat format, int column)
    {
        if (DeclaredZeros is null && given is null && !_zerosAssumed)
        {
            _zerosAssumed = true;
            log.Warn(
                DrillCode.ZerosAssumed,
                column,
                "numbers without decimal point and neither LZ nor TZ",
                $"LZ or TZ after the unit; read as TZ, {format}, until the copper confirms it",
                affectsCopper: true);
        }

        if (DeclaredDigits is null && given is null && !_digitsByConvention)
        {
            _digitsByConvention = true;
            log.Note(
                DrillCode.DigitsByConvention,
                column,
                "no statement of digits",
                $"the usual {Text(format.IntegerDigits, format.DecimalDigits)} of the unit, which was taken");
        }

        _givenUsed |= given is not null && (DeclaredZeros is null || DeclaredDigits is null);
    }

    private static (int Integer, int Decimal) UsualDigits(DrillUnit unit) =>
        unit == DrillUnit.Inch ? (2, 4) : (3, 3);

    private void Redeclared(int column, string now, string before) => log.Warn(
        DrillCode.FormatRedeclared,
        column,
        $"{now} after {before}",
        "one number format in a file; the later statement holds from here on",
        affectsCopper: true);

    private void Conflict(int column, string declared, string givenText) => log.Warn(
        DrillCode.FormatConflict,
        column,
        $"{declared} in the file, {givenText} in the format given",
        "the two to agree; the file's own statement stands");

    private static string Text(int integer, int decimals) =>
        string.Create(CultureInfo.InvariantCulture, $"{integer}.{decimals}");
}
