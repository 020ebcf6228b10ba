using CopperPath.Diagnostics;

namespace CopperPath.Reading.Drill;

/// <summary>Collects the remarks of one drill file. The list of codes is in <see cref="DrillCode"/>.</summary>
internal sealed class DrillLog(string file)
{
    /// <summary>Errors after which reading stops: a file this broken is not a drill file.</summary>
    private const int MaxErrors = 50;

    /// <summary>Remarks of one code after which further ones are only counted.</summary>
    private const int MaxRemarksPerCode = 20;

    private readonly List<Diagnostic> _remarks = [];
    private readonly SortedDictionary<string, int> _countByCode = new(StringComparer.Ordinal);
    private int _errors;

    public int Line { get; set; }

    public bool HasErrors => _errors > 0;

    public bool TooManyErrors => _errors >= MaxErrors;

    public SourcePosition At(int column) => new(file, Line, column);

    /// <summary>The file can not be used: what was found may change the holes.</summary>
    public void Reject(string code, int column, string found, string expected)
    {
        _errors++;
        Add(new Diagnostic(code, Severity.Error, At(column), found, expected, AffectsCopper: true));
    }

    /// <summary>The meaning is settled, but a person should know.</summary>
    public void Warn(string code, int column, string found, string expected, bool affectsCopper = false) =>
        WarnAt(At(column), code, found, expected, affectsCopper);

    /// <summary>The same, about an earlier place of the file.</summary>
    public void WarnAt(SourcePosition where, string code, string found, string expected, bool affectsCopper) =>
        Add(new Diagnostic(code, Severity.Warning, where, found, expected, affectsCopper));

    /// <summary>No effect on the holes.</summary>
    public void Note(string code, int column, string found, string expected) =>
        Add(new Diagnostic(code, Severity.Note, At(column), found, expected));

    public bool HasSaid(string code) => _countByCode.ContainsKey(code);

    /// <summary>All remarks in file order, with a last one for those held back.</summary>
    public IReadOnlyList<Diagnostic> Close()
    {
        foreach ((string code, int count) in _countByCode)
        {
            if (count > MaxRemarksPerCode)
            {
                _remarks.Add(new Diagnostic(
                    DrillCode.MoreOfTheSame,
                    Severity.Note,
                    SourcePosition.WholeFile(file),
                    string.Create(
                        System.Globalization.CultureInfo.InvariantCulture,
                        $"{count - MaxRemarksPerCode} more remarks {code}"),
                    "the same correction as for those listed"));
            }
        }

        return _remarks;
    }

    private void Add(Diagnostic remark)
    {
        int count = _countByCode.GetValueOrDefault(remark.Code) + 1;
        _countByCode[remark.Code] = count;
        if (count <= MaxRemarksPerCode)
        {
            _remarks.Add(remark);
        }
    }
}
