using System.Globalization;
using CopperPath.Artwork;

namespace CopperPath.Reading.Drill;

/// <summary>
/// What comments say by agreement: <c>;TYPE=PLATED</c>, <c>;FILE_FORMAT=2:5</c>,
/// <c>; FORMAT={2:4/ absolute / inch / suppress leading zeros}</c> and attributes <c>; #@! TF.Name,field,...</c>.
/// Everything else in a comment is for people.
/// </summary>
internal sealed class DrillComment(DrillLog log, DrillNumberRules rules)
{
    private const string AttributeMark = "#@!";

    private Plating _typePlating;
    private Plating _attributePlating;
    private string? _attributeFunction;

    /// <summary>The <c>.FileFunction</c> attribute, or null.</summary>
    public DrillFileFunction? FileFunction { get; private set; }

    /// <summary>Plating stated for tools defined from here on.</summary>
    public Plating ToolPlating => _attributePlating != Plating.Unknown ? _attributePlating
        : _typePlating != Plating.Unknown ? _typePlating
        : FileFunction?.Plating ?? Plating.Unknown;

    /// <summary>Drill function stated for tools defined from here on, or null.</summary>
    public string? ToolFunction => _attributeFunction;

    public void Read(string text, int column)
    {
        string body = text.TrimStart(';', ' ', '\t').TrimEnd();
        if (body.StartsWith(AttributeMark, StringComparison.Ordinal))
        {
            ReadAttribute(body[AttributeMark.Length..].Trim(), column);
            return;
        }

        int equals = body.IndexOf('=', StringComparison.Ordinal);
        if (equals < 0)
        {
            return;
        }

        string value = body[(equals + 1)..].Trim();
        switch (body[..equals].Trim().ToUpperInvariant())
        {
            case "TYPE":
                ReadType(value, column);
                break;
            case "FILE_FORMAT" or "FORMAT":
                ReadFormat(value, column);
                break;
        }
    }

    private void ReadType(string value, int column)
    {
        switch (value.ToUpperInvariant())
        {
            case "PLATED":
                _typePlating = Plating.Plated;
                break;
            case "NON_PLATED" or "NON-PLATED" or "NONPLATED":
                _typePlating = Plating.NonPlated;
                break;
            default:
                _typePlating = Plating.Unknown;
                log.Warn(DrillCode.BadComment, column, $"TYPE={value}", "TYPE=PLATED or TYPE=NON_PLATED");
                break;
        }

        if (FileFunction is { Plating: not Plating.Unknown } file
            && _typePlating != Plating.Unknown && file.Plating != _typePlating)
        {
            log.Warn(
                DrillCode.PlatingConflict,
                column,
                $"TYPE={value} in a file declared {file.Text}",
                "the two to agree; the comment next to the tool stands",
                affectsCopper: true);
        }
    }

    private void ReadFormat(string value, int column)
    {
        string[] parts = value.Trim('{', '}').Split('/', StringSplitOptions.TrimEntries);
        foreach (string part in parts)
        {
            string lower = part.ToLowerInvariant();
            if (lower is "metric" or "mm" && rules.DeclaredUnit is null)
            {
                rules.DeclareUnit(DrillUnit.Millimetre, column);
            }
            else if (lower == "inch" && rules.DeclaredUnit is null)
            {
                rules.DeclareUnit(DrillUnit.Inch, column);
            }
            else if (lower == "suppress leading zeros")
            {
                rules.DeclareZeros(OmittedZeros.Leading, column);
            }
            else if (lower == "suppress trailing zeros")
            {
                rules.DeclareZeros(OmittedZeros.Trailing, column);
            }
        }

        string[] digits = parts[0].Split(':', '.');
        if (digits is ["-", "-"])
        {
            return;
        }

        if (digits.Length == 2 && Count(digits[0]) is { } integer && Count(digits[1]) is { } decimals)
        {
            rules.DeclareDigits(integer, decimals, column);
        }
        else
        {
            log.Warn(DrillCode.BadComment, column, $"format '{value}'", "digits before and after the point, such as 2:5");
        }
    }

    private void ReadAttribute(string text, int column)
    {
        string[] fields = text.TrimEnd('*').Split(',');
        switch (fields[0])
        {
            case "TF.FileFunction":
                FileFunction = DrillFileFunction.Parse(fields.AsSpan(1));
                if (FileFunction is null)
                {
                    log.Warn(DrillCode.BadComment, column, $"'{text}'", "a drill function such as Plated,1,4,PTH");
                }

                break;
            case "TA.AperFunction":
                ReadToolFunction(fields.AsSpan(1), text, column);
                break;
            case "TD" or "TD.AperFunction":
                _attributePlating = Plating.Unknown;
                _attributeFunction = null;
                break;
        }
    }

    /// <summary>Reads <c>ViaDrill</c> as the attribute defines it, or <c>Plated,PTH,ViaDrill</c> as common writers put it.</summary>
    private void ReadToolFunction(ReadOnlySpan<string> fields, string text, int column)
    {
        _attributePlating = fields is [] ? Plating.Unknown : DrillFileFunction.PlatingOf(fields[0]);
        if (_attributePlating != Plating.Unknown)
        {
            fields = fields[Math.Min(2, fields.Length)..];
        }

        _attributeFunction = fields is [] ? null : string.Join(',', fields.ToArray());
        if (_attributePlating != Plating.Unknown
            && FileFunction is { Plating: not Plating.Unknown } file && file.Plating != _attributePlating)
        {
            log.Warn(
                DrillCode.PlatingConflict,
                column,
                $"'{text}' in a file declared {file.Text}",
                "the two to agree; the attribute next to the tool stands",
                affectsCopper: true);
        }
    }

    private static int? Count(string text) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value) ? value : null;
}
