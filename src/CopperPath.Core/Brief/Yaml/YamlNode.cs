using CopperPath.Diagnostics;

namespace CopperPath.Brief.Yaml;

/// <summary>A node of the plain YAML a brief is written in: no anchors, aliases or tags.</summary>
internal abstract record YamlNode(SourcePosition Position)
{
    /// <summary>Words that fit after "found".</summary>
    public abstract string Shape { get; }
}

/// <summary>A text; <paramref name="IsQuoted"/> tells an empty string from a value left out.</summary>
internal sealed record YamlText(string Text, bool IsQuoted, SourcePosition Position) : YamlNode(Position)
{
    public bool IsAbsent => !IsQuoted && (Text.Length == 0 || Text is "~" or "null");

    public override string Shape => IsAbsent ? "nothing" : $"`{Text}`";
}

internal sealed record YamlList(IReadOnlyList<YamlNode> Items, SourcePosition Position) : YamlNode(Position)
{
    public override string Shape => "a list";
}

internal sealed record YamlEntry(string Key, SourcePosition KeyPosition, YamlNode Value);

/// <summary>Entries in file order; keys are unique.</summary>
internal sealed record YamlMap(IReadOnlyList<YamlEntry> Entries, SourcePosition Position) : YamlNode(Position)
{
    public override string Shape => "a map of keys";

    public YamlEntry? Find(string key) => Entries.FirstOrDefault(entry => entry.Key == key);
}
