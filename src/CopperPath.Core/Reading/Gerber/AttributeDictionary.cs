using System.Text;
using CopperPath.Artwork;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Gerber;

/// <summary>
/// The X2 attributes in force: TF of the file, TA for apertures being defined, TO for objects being made.
/// </summary>
internal sealed class AttributeDictionary(GerberLog log)
{
    private static readonly string[] FileNames =
    [
        ".FileFunction", ".FilePolarity", ".Part", ".SameCoordinates", ".GenerationSoftware", ".CreationDate",
        ".ProjectId", ".MD5",
    ];

    private static readonly string[] ObjectNames =
    [
        ".N", ".P", ".C", ".CRot", ".CMfr", ".CMPN", ".CPkg", ".CMnt", ".CFtp", ".CPgN", ".CPgD", ".CHgt", ".CLbN",
        ".CLbD", ".CSup", ".CVal",
    ];

    private static readonly string[] ApertureNames = [".AperFunction", ".DrillTolerance", ".FlashText"];

    private readonly Dictionary<string, IReadOnlyList<string>> _file = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string[]> _aperture = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string[]> _object = new(StringComparer.Ordinal);
    private readonly Dictionary<string, ObjectLabels> _labels = new(StringComparer.Ordinal);

    public IReadOnlyDictionary<string, IReadOnlyList<string>> File => _file;

    /// <summary>What TA says the aperture being defined, or the region being drawn, is for.</summary>
    public string? ApertureFunction =>
        _aperture.TryGetValue(".AperFunction", out string[]? fields) ? string.Join(',', fields) : null;

    /// <summary>Labels of an object made now with an aperture of the given function; equal calls share one record.</summary>
    public ObjectLabels LabelsFor(string? apertureFunction)
    {
        if (_object.Count == 0 && apertureFunction is null)
        {
            return ObjectLabels.None;
        }

        string key = apertureFunction ?? "";
        if (!_labels.TryGetValue(key, out ObjectLabels? labels))
        {
            labels = new ObjectLabels(Nets(), Pin(), Component(), apertureFunction);
            _labels.Add(key, labels);
        }

        return labels;
    }

    /// <summary>Takes one TF, TA, TO or TD command.</summary>
    public void Take(ReadOnlySpan<byte> command, SourcePosition position)
    {
        char kind = (char)command[1];
        string[] fields = AttributeText.Fields(command[2..]);
        string name = fields[0].Trim();
        string[] values = fields[1..];
        if (kind == 'D')
        {
            Delete(name);
            return;
        }

        if (name.Length == 0)
        {
            log.Warn(GerberCode.BadAttribute, position, GerberLog.Quote(command), "an attribute name");
            return;
        }

        name = Known(kind, name, position);
        switch (kind)
        {
            case 'F':
                _file[name] = values;
                break;
            case 'A':
                _aperture[name] = values;
                break;
            default:
                _object[name] = values;
                _labels.Clear();
                if (name == ".P" && values.Length < 2)
                {
                    log.Warn(GerberCode.BadAttribute, position, GerberLog.Quote(command), ".P,component,pin");
                }

                break;
        }
    }

    private void Delete(string name)
    {
        if (name.Length == 0)
        {
            _aperture.Clear();
            _object.Clear();
        }
        else
        {
            _aperture.Remove(name);
            _object.Remove(name);
        }

        _labels.Clear();
    }

    /// <summary>The standard spelling of a name; names that are no standard ones stay as they are.</summary>
    private string Known(char kind, string name, SourcePosition position)
    {
        if (name[0] != '.')
        {
            return name;
        }

        string[] known = kind switch
        {
            'F' => FileNames,
            'A' => ApertureNames,
            _ => ObjectNames,
        };
        string? standard = Array.Find(known, k => k.Equals(name, StringComparison.OrdinalIgnoreCase));
        if (standard is null)
        {
            log.NoteOnce(
                kind + name, GerberCode.UnknownAttribute, position, Printable(name), "a standard attribute; it is kept");
        }
        else if (standard != name)
        {
            log.NoteOnce(kind + name, GerberCode.BadAttribute, position, Printable(name), $"the spelling {standard}");
        }

        return standard ?? name;
    }

    private static string Printable(string name) => GerberLog.Quote(Encoding.UTF8.GetBytes(name));

    private string[] Nets() =>
        _object.TryGetValue(".N", out string[]? nets) ? [.. nets.Where(net => net.Length > 0)] : [];

    private PinName? Pin() => _object.TryGetValue(".P", out string[]? p) && p.Length >= 2
        ? new PinName(p[0], p[1], p.Length > 2 && p[2].Length > 0 ? p[2] : null)
        : null;

    private string? Component() => _object.TryGetValue(".C", out string[]? c) && c.Length > 0 ? c[0] : null;
}
