using System.Diagnostics;
using CopperPath.Brief.Yaml;
using CopperPath.Diagnostics;
using CopperPath.OutsideText;

namespace CopperPath.Brief;

/// <summary>Gives out the values of one section; unknown keys are reported as it opens.</summary>
internal sealed class SectionReader
{
    private readonly YamlMap _map;
    private readonly SectionKeys _keys;
    private readonly DiagnosticSink _sink;

    private SectionReader(YamlMap map, SectionKeys keys, DiagnosticSink sink)
    {
        _map = map;
        _keys = keys;
        _sink = sink;
    }

    public SourcePosition Position => _map.Position;

    /// <summary>The section in a node, or null after saying that the node is no map.</summary>
    public static SectionReader? Open(YamlNode node, SectionKeys keys, DiagnosticSink sink)
    {
        if (node is not YamlMap map)
        {
            sink.Error(BriefCodes.WrongShape, node.Position, node.Shape,
                $"{keys.Section} with keys such as `{string.Join("`, `", keys.Keys.Take(3))}`");
            return null;
        }

        foreach (YamlEntry entry in map.Entries.Where(entry => !keys.Keys.Contains(entry.Key)))
        {
            sink.Error(BriefCodes.UnknownKey, entry.KeyPosition, () => ($"unknown key `{entry.Key}` in {keys.Section}",
                NearestName.Of(entry.Key, keys.Keys) is { } near
                    ? $"a known key; did you mean `{near}`?"
                    : $"one of {string.Join(", ", keys.Keys)}"));
        }

        return new SectionReader(map, keys, sink);
    }

    /// <summary>Where a key of this section is written; the section itself when it is not.</summary>
    public SourcePosition PositionOf(string key) => _map.Find(key)?.KeyPosition ?? _map.Position;

    public bool Has(string key) => _map.Find(key) is not null;

    /// <summary>The value of a key that may be left out.</summary>
    public YamlNode? Optional(string key)
    {
        Debug.Assert(_keys.Keys.Contains(key), $"{key} is not a key of {_keys.Section}");
        if (_map.Find(key) is not { } entry)
        {
            return null;
        }

        if (entry.Value is YamlText { IsAbsent: true })
        {
            _sink.Error(BriefCodes.Empty, entry.KeyPosition, $"`{key}` without a value", "a value, or the key left out");
            return null;
        }

        return entry.Value;
    }

    /// <summary>The value of a key that must stand, or null after asking for it.</summary>
    /// <param name="key">A key of this section.</param>
    /// <param name="question">What the reader of the review has to decide, with an example.</param>
    public YamlNode? Required(string key, string question)
    {
        if (!Has(key))
        {
            _sink.Error(BriefCodes.MissingKey, Position, $"no `{key}` in {_keys.Section}", question);
        }

        return Optional(key);
    }
}
