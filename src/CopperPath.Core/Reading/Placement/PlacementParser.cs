using System.Globalization;
using System.Text.RegularExpressions;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Reading.Placement;

/// <summary>State of one placement file while it is read.</summary>
internal sealed partial class PlacementParser(string file)
{
    /// <summary>Remarks of one code after which further ones are only counted.</summary>
    private const int MaxRemarksPerCode = 10;

    private readonly List<PlacedPart> _parts = [];
    private readonly List<Diagnostic> _remarks = [];
    private readonly SortedDictionary<string, int> _countByCode = new(StringComparer.Ordinal);
    private PlacementColumns? _columns;
    private char _delimiter;
    private int _headingCount;
    private long? _countNm;
    private int _line;

    public void Run(string text)
    {
        foreach (ReadOnlySpan<char> span in text.AsSpan().EnumerateLines())
        {
            _line++;
            string line = span.TrimStart('\uFEFF').TrimEnd().ToString();
            if (line.Length == 0 || string.IsNullOrWhiteSpace(line))
            {
                continue;
            }

            if (_columns is null)
            {
                ReadHead(line);
            }
            else if (!line.StartsWith('#'))
            {
                ReadRow(_columns, line);
            }
        }

        if (_columns is null)
        {
            _line = 0;
            Refuse(PlacementCode.NoHeader, "no line that names the columns", "headings for designator, x and y, such as Designator,Mid X,Mid Y");
            return;
        }

        DropRepeated();
        if (_countNm is null && _parts.Count > 0)
        {
            Add(Severity.Note, PlacementCode.NoUnit, 0, 0, "no unit", "mm, mil or inch in the headings or behind the numbers; found from the copper, or not used");
        }

        foreach ((string code, int count) in _countByCode.Where(entry => entry.Value > MaxRemarksPerCode))
        {
            _remarks.Add(new Diagnostic(PlacementCode.MoreOfTheSame, Severity.Note, SourcePosition.WholeFile(file),
                string.Create(CultureInfo.InvariantCulture, $"{count - MaxRemarksPerCode} more remarks {code}"), "the same correction as for those listed"));
        }
    }

    public void Refuse(string code, string found, string expected)
    {
        _columns = null;
        Add(Severity.Warning, code, _line, 0, found, expected);
    }

    public PlacementReading ToReading() =>
        new(_columns is null ? null : new PlacementTable(file, _parts, _countNm is not null), _remarks);

    /// <summary>Headings may stand in a comment; so may the unit, before them.</summary>
    private void ReadHead(string line)
    {
        if (UnitStatement().Match(line) is { Success: true } unit && PlacementColumns.UnitNm(unit.Groups["unit"].Value) is { } countNm)
        {
            StateUnit(countNm, unit.Groups["unit"].Index + 1, unit.Groups["unit"].Value);
        }

        string heading = PlacementColumns.HeadingOf(line);
        char delimiter = TableLine.DelimiterOf(heading);
        List<TableField> headings = TableLine.Split(heading, delimiter, out _);
        if (PlacementColumns.Of(headings) is { } columns)
        {
            _headingCount = headings.Count;
            _columns = columns;
            _delimiter = delimiter;
            if (columns.CountNm is { } stated)
            {
                StateUnit(stated, 1, "of the headings");
            }
        }
    }

    private void ReadRow(PlacementColumns columns, string line)
    {
        List<TableField> fields = TableLine.Split(line, _delimiter, out int openQuote);
        if (openQuote > 0)
        {
            Add(Severity.Warning, PlacementCode.OpenQuote, _line, openQuote, "a quote that never ends", "a quote at the end of the field; the row is dropped");
            return;
        }

        if (_delimiter == TableLine.Blanks && fields.Count > _headingCount)
        {
            columns = columns.MovedBy(fields.Count - _headingCount);
        }

        int needed = 1 + Math.Max(columns.Designator, Math.Max(columns.X, columns.Y));
        if (fields.Count < needed)
        {
            Add(Severity.Warning, PlacementCode.ShortRow, _line, 1, Text($"{fields.Count} fields"), Text($"at least {needed}; the row is dropped"));
            return;
        }

        // Rows of blanks separate blocks in some tables.
        string designator = fields[columns.Designator].Text;
        if (designator.Length == 0)
        {
            return;
        }

        if (LengthNm(fields[columns.X]) is not { } x || LengthNm(fields[columns.Y]) is not { } y
            || SideOf(columns, fields) is not { } side || !TryRotation(columns, fields, out double? rotationDeg))
        {
            return;
        }

        _parts.Add(new PlacedPart(designator, new PointNm(x, y), rotationDeg, side,
            TextOf(fields, columns.Value), TextOf(fields, columns.Package), new SourcePosition(file, _line, 1)));
    }

    private long? LengthNm(TableField field)
    {
        Match match = LengthText().Match(field.Text);
        string unit = match.Groups["unit"].Value;
        long? ownNm = unit.Length == 0 ? null : PlacementColumns.UnitNm(unit);
        if (match.Success && (unit.Length == 0 || ownNm is not null)
            && decimal.TryParse(match.Groups["number"].ValueSpan, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value)
            && Math.Abs(value) * (ownNm ?? _countNm ?? Units.NmPerMm) <= PointNm.LimitNm)
        {
            _countNm ??= ownNm;
            return (long)Math.Round(value * (ownNm ?? _countNm ?? Units.NmPerMm));
        }

        Add(Severity.Warning, PlacementCode.BadNumber, _line, field.Column, $"'{Shown(field.Text)}'",
            "a length up to 10 m with a decimal point, such as 12.5 or 12.5mm; the row is dropped");
        return null;
    }

    private BoardSide? SideOf(PlacementColumns columns, List<TableField> fields)
    {
        if (columns.Side < 0 || columns.Side >= fields.Count)
        {
            return BoardSide.Unknown;
        }

        TableField field = fields[columns.Side];
        switch (string.Concat(field.Text.Where(char.IsAsciiLetter)).ToLowerInvariant())
        {
            case "top" or "t" or "toplayer" or "front" or "f" or "fcu" or "topside":
                return BoardSide.Top;
            case "bottom" or "bot" or "b" or "bottomlayer" or "back" or "bcu" or "bottomside":
                return BoardSide.Bottom;
            default:
                Add(Severity.Warning, PlacementCode.BadSide, _line, field.Column, $"the side '{Shown(field.Text)}'", "top or bottom; the row is dropped");
                return null;
        }
    }

    private bool TryRotation(PlacementColumns columns, List<TableField> fields, out double? rotationDeg)
    {
        rotationDeg = null;
        if (columns.Rotation < 0 || columns.Rotation >= fields.Count || fields[columns.Rotation].Text.Length == 0)
        {
            return true;
        }

        TableField field = fields[columns.Rotation];
        if (double.TryParse(field.Text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double degrees)
            && Math.Abs(degrees) <= 3600)
        {
            rotationDeg = degrees;
            return true;
        }

        Add(Severity.Warning, PlacementCode.BadNumber, _line, field.Column, $"the rotation '{Shown(field.Text)}'", "an angle in degrees, such as 90; the row is dropped");
        return false;
    }

    private void StateUnit(long countNm, int column, string text)
    {
        if (_countNm is { } before && before != countNm)
        {
            Add(Severity.Warning, PlacementCode.TwoUnits, _line, column, $"the unit {text} after another", "one unit; the later one holds");
        }

        _countNm = countNm;
    }

    private void DropRepeated()
    {
        IGrouping<string, PlacedPart>[] repeated = [.. _parts.GroupBy(part => part.Designator).Where(same => same.Count() > 1)];
        foreach (IGrouping<string, PlacedPart> same in repeated)
        {
            Add(Severity.Warning, PlacementCode.Repeated, same.ElementAt(1).Position.Line, 1,
                Text($"the designator {Shown(same.Key)} in {same.Count()} rows"), "each part once; none of them is used");
        }

        HashSet<string> names = [.. repeated.Select(same => same.Key)];
        _parts.RemoveAll(part => names.Contains(part.Designator));
    }

    private void Add(Severity severity, string code, int line, int column, string found, string expected)
    {
        int count = _countByCode[code] = _countByCode.GetValueOrDefault(code) + 1;
        if (count <= MaxRemarksPerCode)
        {
            _remarks.Add(new Diagnostic(code, severity, new SourcePosition(file, line, column), found, expected));
        }
    }

    private static string? TextOf(List<TableField> fields, int index) =>
        index >= 0 && index < fields.Count && fields[index].Text.Length > 0 ? fields[index].Text : null;

    private static string Shown(string text) => text.Length <= 40 ? text : text[..40] + "...";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    [GeneratedRegex(@"\bunits?\b\s*[=:]?\s*(?<unit>[A-Za-z]+)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex UnitStatement();

    [GeneratedRegex(@"^(?<number>[+-]?[0-9]{0,12}\.?[0-9]{0,12})\s*(?<unit>[A-Za-z]*)$", RegexOptions.CultureInvariant)]
    private static partial Regex LengthText();
}
