using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Drill;

/// <summary>The tools defined so far and the one in the spindle.</summary>
internal sealed class DrillToolTable(DrillLog log, DrillNumberRules rules)
{
    private readonly Dictionary<int, DrillTool> _tools = [];
    private readonly HashSet<int> _undefinedSaid = [];
    private readonly List<Plating> _platings = [];
    private readonly SortedDictionary<int, SourcePosition> _idle = [];
    private int _selected;
    private DrillTool? _current;

    /// <summary>Plating of every definition, in file order.</summary>
    public IReadOnlyList<Plating> Platings => _platings;

    /// <summary>Number of a T word; null after a remark.</summary>
    public int? NumberOf(DrillWord word)
    {
        if (word.Number.Length == 0 || word.Number.AsSpan().ContainsAnyExceptInRange('0', '9') || word.Number.Length > 8)
        {
            log.Reject(DrillCode.BadNumber, word.Column, $"'{word}'", "a tool number such as T1 or T01");
            return null;
        }

        string digits = word.Number;
        if (digits.Length > 3)
        {
            log.Warn(
                DrillCode.OddToolNumber,
                word.Column,
                $"'{word}'",
                "at most three digits; the first two are taken as the tool, the others as its compensation");
            digits = digits[..2];
        }

        return int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);
    }

    public void Define(int number, DrillWord diameterWord, Plating plating, string? function)
    {
        if (DrillNumber.Parse(diameterWord.Number) is not { } diameter)
        {
            log.Reject(DrillCode.BadNumber, diameterWord.Column, $"'{diameterWord}'", "a tool diameter such as C0.8");
            return;
        }

        if (number == 0)
        {
            log.Reject(DrillCode.OddToolNumber, diameterWord.Column, "a diameter for tool 0", "tool numbers from 1; tool 0 means no tool");
            return;
        }

        if (!diameter.HasPoint)
        {
            log.Warn(
                DrillCode.WholeToolDiameter,
                diameterWord.Column,
                $"'{diameterWord}' without decimal point",
                "a decimal point in tool diameters; read as whole units",
                affectsCopper: true);
        }

        DrillTool tool = new(number, diameter, rules.DeclaredUnit, plating, function);
        if (_tools.TryGetValue(number, out DrillTool? before) && before.Diameter != tool.Diameter)
        {
            log.Warn(
                DrillCode.ToolRedefined,
                diameterWord.Column,
                string.Create(CultureInfo.InvariantCulture, $"a second diameter for tool {number}"),
                "each tool defined once; the later diameter holds from here on",
                affectsCopper: true);
        }

        if (!_tools.ContainsKey(number))
        {
            _idle[number] = log.At(diameterWord.Column);
        }

        _tools[number] = tool;
        _platings.Add(plating);
    }

    /// <summary>
    /// Says which tools made no hole: programs list the tools they use, so their holes may be lost, or made with
    /// another tool because its selection is.
    /// </summary>
    public void ReportIdle()
    {
        foreach ((int number, SourcePosition where) in _idle)
        {
            log.WarnAt(
                where,
                DrillCode.UnusedTool,
                string.Create(CultureInfo.InvariantCulture, $"tool {number}, which makes no hole"),
                "at least one hole for each tool; holes, or the line that selects the tool, may be lost",
                affectsCopper: true);
        }
    }

    public void Select(int number)
    {
        _selected = number;
        _current = _tools.GetValueOrDefault(number);
    }

    /// <summary>The tool in the spindle with its diameter; null after a remark.</summary>
    public (DrillTool Tool, long DiameterNm)? Current(int column)
    {
        if (_current is null)
        {
            if (_undefinedSaid.Add(_selected))
            {
                log.Reject(
                    DrillCode.UndefinedTool,
                    column,
                    _selected == 0
                        ? "a hole while no tool is selected"
                        : string.Create(CultureInfo.InvariantCulture, $"a hole with tool {_selected}, which is not defined"),
                    "a tool definition with diameter before its first hole");
            }

            return null;
        }

        if ((_current.Unit ?? rules.UnitOrRemark(column)) is not { } unit)
        {
            return null;
        }

        long diameterNm = _current.Diameter.PlainNm(unit);
        if (diameterNm is <= 0 or > DrillTool.LargestNm)
        {
            if (_undefinedSaid.Add(_selected))
            {
                log.Reject(
                    DrillCode.BadToolDiameter,
                    column,
                    string.Create(CultureInfo.InvariantCulture, $"a hole with tool {_selected} of diameter {diameterNm / 1e6} mm"),
                    "a diameter above 0 and up to 100 mm");
            }

            return null;
        }

        _idle.Remove(_selected);
        return (_current, diameterNm);
    }
}
