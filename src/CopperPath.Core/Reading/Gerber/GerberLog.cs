using System.Globalization;
using System.Text;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Gerber;

/// <summary>Collects the remarks of one reading, a bounded number of each code.</summary>
internal sealed class GerberLog(string file)
{
    /// <summary>Remarks of one code that are listed one by one; the rest is counted.</summary>
    private const int ListedPerCode = 50;

    private readonly List<Diagnostic> _diagnostics = [];
    private readonly Dictionary<string, int> _counts = [];
    private readonly HashSet<(string Code, string Key)> _said = [];
    private readonly HashSet<(string Code, int Key)> _saidOfNumbers = [];

    public string File { get; } = file;

    /// <summary>True once an error says that the image can not be trusted.</summary>
    public bool IsRejected { get; private set; }

    public void Reject(string code, SourcePosition position, string found, string expected)
    {
        IsRejected = true;
        Add(new Diagnostic(code, Severity.Error, position, found, expected, AffectsCopper: true));
    }

    /// <summary>True the first time it is asked for a code and a number: saves wording remarks that are made once.</summary>
    public bool IsFirst(string code, int number = 0) => _saidOfNumbers.Add((code, number));

    /// <summary>Rejects, once for each key.</summary>
    public void RejectOnce(string key, string code, SourcePosition position, string found, string expected)
    {
        IsRejected = true;
        if (_said.Add((code, key)))
        {
            Reject(code, position, found, expected);
        }
    }

    public void Warn(string code, SourcePosition position, string found, string expected, bool affectsCopper = false) =>
        Add(new Diagnostic(code, Severity.Warning, position, found, expected, affectsCopper));

    public void WarnOnce(string key, string code, SourcePosition position, string found, string expected)
    {
        if (_said.Add((code, key)))
        {
            Warn(code, position, found, expected);
        }
    }

    public void NoteOnce(string key, string code, SourcePosition position, string found, string expected)
    {
        if (_said.Add((code, key)))
        {
            Note(code, position, found, expected);
        }
    }

    public void Note(string code, SourcePosition position, string found, string expected) =>
        Add(new Diagnostic(code, Severity.Note, position, found, expected));

    public void Add(Diagnostic diagnostic)
    {
        int count = _counts.GetValueOrDefault(diagnostic.Code) + 1;
        _counts[diagnostic.Code] = count;
        if (count <= ListedPerCode)
        {
            _diagnostics.Add(diagnostic);
        }
    }

    /// <summary>All remarks in file order, those on the file as a whole last, and a count where some are not listed.</summary>
    public IReadOnlyList<Diagnostic> Finish()
    {
        List<Diagnostic> ordered =
        [
            .. _diagnostics
                .OrderBy(d => d.Position.Line == 0 ? int.MaxValue : d.Position.Line)
                .ThenBy(d => d.Position.Column),
        ];
        foreach ((string code, int count) in _counts.OrderBy(c => c.Key, StringComparer.Ordinal))
        {
            if (count > ListedPerCode)
            {
                string found = string.Create(
                    CultureInfo.InvariantCulture, $"{count - ListedPerCode} more remarks {code} than are listed");
                ordered.Add(new Diagnostic(
                    GerberCode.MoreOfTheSame,
                    Severity.Note,
                    SourcePosition.WholeFile(File),
                    found,
                    "a file whose remarks can all be listed"));
            }
        }

        return ordered;
    }

    /// <summary>A short quotation of file text that is safe to print.</summary>
    public static string Quote(ReadOnlySpan<byte> text)
    {
        const int longest = 40;
        var quoted = new StringBuilder("'");
        foreach (byte b in text[..Math.Min(longest, text.Length)])
        {
            quoted.Append(b is >= 0x20 and < 0x7F ? (char)b : b is (byte)'\r' or (byte)'\n' ? ' ' : '?');
        }

        return quoted.Append(text.Length > longest ? "...'" : "'").ToString();
    }
}
