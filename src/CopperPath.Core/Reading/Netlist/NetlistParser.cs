using System.Globalization;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Netlist;

/// <summary>State of one netlist while it is read.</summary>
internal sealed class NetlistParser(string file)
{
    /// <summary>0.0001 inch.</summary>
    private const long TenthMilNm = 2_540;

    /// <summary>0.001 mm.</summary>
    private const long MicrometreNm = 1_000;

    private const int MaxRemarks = 50;

    private readonly List<NetlistPoint> _points = [];
    private readonly List<Diagnostic> _remarks = [];
    private readonly Dictionary<string, string> _aliases = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, int> _notRead = new(StringComparer.Ordinal);
    private long _countNm = TenthMilNm;
    private bool _hasUnit;
    private bool _rejected;
    private bool _otherImage;
    private bool _ended;
    private int _dropped;
    private int _line;

    public void Run(string text)
    {
        foreach (ReadOnlySpan<char> line in text.AsSpan().EnumerateLines())
        {
            _line++;
            if (!_ended && !line.IsWhiteSpace())
            {
                ReadRecord(line.TrimStart('\uFEFF').TrimEnd().ToString());
            }
        }

        foreach ((string record, int count) in _notRead)
        {
            Add(Severity.Note, NetlistCode.NotRead, 0, 0, Text($"{count} records {record}"), "records 307, 317, 327 and 367, which name points");
        }

        if (_dropped > 0)
        {
            Add(Severity.Warning, NetlistCode.Dropped, 0, 0, Text($"{_dropped} records that could not be read"), "whole records; these were dropped");
        }

        if (!_ended)
        {
            Add(Severity.Warning, NetlistCode.NoEnd, _line, 1, "end of file without record 999", "999 at the end; the file may be cut short");
        }
    }

    public void Reject(string code, int column, string found, string expected)
    {
        _rejected = true;
        Add(Severity.Error, code, _line, column, found, expected);
    }

    public NetlistReading ToReading() => new(_rejected ? null : new BoardNetlist(file, _points, _countNm), _remarks);

    private void ReadRecord(string line)
    {
        string kind = line.Length >= 3 ? line[..3] : line;
        switch (kind)
        {
            case "999":
                _ended = true;
                break;
            case "317":
                ReadPoint(line, NetlistPointKind.ThroughHole);
                break;
            case "327":
                ReadPoint(line, NetlistPointKind.Surface);
                break;
            case "367":
                ReadPoint(line, NetlistPointKind.Tooling);
                break;
            case "307":
                ReadPoint(line, NetlistPointKind.BlindOrBuried);
                break;
            case ['P', ..]:
                ReadParameter(line);
                break;
            case ['C', ..]:
                break;
            case [>= '0' and <= '9', >= '0' and <= '9', >= '0' and <= '9']:
                _notRead[kind] = _notRead.GetValueOrDefault(kind) + 1;
                break;
            default:
                Drop(1, $"'{Shown(line)}'", "a record number, P or C in column 1");
                break;
        }
    }

    private void ReadParameter(string line)
    {
        string[] words = line[1..].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        switch (words)
        {
            case ["UNITS", ..]:
                ReadUnits(words);
                break;
            case ["IMAGE", var image, ..]:
                _otherImage = image != "PRIMARY";
                if (_otherImage)
                {
                    Add(Severity.Warning, NetlistCode.OtherImage, _line, 1, $"image '{image}'", "the primary image; others are not read");
                }

                break;
            case [['N', 'N', 'A', 'M', 'E', ..] alias, ..]:
                string name = line[(line.IndexOf(alias, StringComparison.Ordinal) + alias.Length)..].Trim();
                if (name.Length > 0)
                {
                    _aliases[alias] = name;
                }

                break;
        }
    }

    private void ReadUnits(string[] words)
    {
        string unit = string.Join(' ', words.AsSpan(1).ToArray());
        long? countNm = unit switch
        {
            "CUST 0" or "CUST" or "CUST 2" => TenthMilNm,
            "CUST 1" or "SI" => MicrometreNm,
            _ => null,
        };
        bool repeated = _hasUnit;
        _hasUnit = true;
        if (countNm is not { } known || (repeated && known != _countNm) || (_points.Count > 0 && known != _countNm))
        {
            Reject(NetlistCode.UnknownUnit, 1, $"units '{unit}'", "one of CUST 0, CUST 1, CUST 2 or SI, once, before the first point");
            return;
        }

        _countNm = known;
    }

    private void ReadPoint(string line, NetlistPointKind kind)
    {
        if (_otherImage)
        {
            return;
        }

        if (!_hasUnit && _points.Count == 0)
        {
            _hasUnit = true;
            Add(Severity.Note, NetlistCode.DefaultUnit, _line, 1, "points before any unit", "P  UNITS; read as CUST 0, the default of the format");
        }

        NetlistColumns? aligned = NetlistColumns.Aligned(line);
        NetlistColumns? columns = aligned ?? NetlistColumns.ByLetters(line);
        if (columns is null)
        {
            Drop(1, $"'{Shown(line)}'", "X and Y with their digits in columns 42 to 57");
            return;
        }

        if (aligned is null)
        {
            Add(Severity.Warning, NetlistCode.Unaligned, _line, 1, "a record off its columns", "the columns of the format; read by its letters");
        }

        string net = columns.Net;
        _points.Add(new NetlistPoint(
            kind,
            net is "" or "N/C" ? null : _aliases.GetValueOrDefault(net, net),
            columns.Component.Length == 0 ? null : columns.Component,
            columns.Pin.Length == 0 ? null : columns.Pin,
            columns.IsMidNet,
            columns.HoleCounts * _countNm,
            columns.IsPlated,
            columns.AccessLayer,
            new Geometry.PointNm(columns.XCounts * _countNm, columns.YCounts * _countNm),
            new SourcePosition(file, _line, 1)));
    }

    private void Drop(int column, string found, string expected)
    {
        _dropped++;
        Add(Severity.Warning, NetlistCode.BadRecord, _line, column, found, expected);
    }

    private void Add(Severity severity, string code, int line, int column, string found, string expected)
    {
        // The count of dropped records is always given at the end, so the list itself may stay short.
        if (_remarks.Count < MaxRemarks || line == 0 || severity == Severity.Error)
        {
            _remarks.Add(new Diagnostic(code, severity, new SourcePosition(file, line, column), found, expected));
        }
    }

    private static string Shown(string line) => line.Length <= 40 ? line : line[..40] + "...";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
