using CopperPath.Brief.Yaml;

namespace CopperPath.Brief;

/// <summary>
/// Puts the guess in the place of every blank, <c>{ guess: 20 um, candidates: [18 um, 25 um] }</c>, before the sections are
/// read: any value of a brief may be one, and none of their readers need know.
/// </summary>
internal sealed class BlankReader(DiagnosticSink sink)
{
    private const string WholeBrief = "the brief";
    private const string NameKey = "name";

    private readonly List<Blank> _blanks = [];

    /// <summary>Blanks met so far, in file order.</summary>
    public IReadOnlyList<Blank> Blanks => _blanks;

    /// <summary>The same tree with guesses for values.</summary>
    public YamlNode Fill(YamlNode root) => Fill(root, "");

    private YamlNode Fill(YamlNode node, string key) => node switch
    {
        YamlMap map when BriefKeys.Blank.Keys.Any(word => word != BriefKeys.Because && map.Find(word) is not null) => FillBlank(map, key),
        YamlMap map => map with { Entries = [.. map.Entries.Select(entry => entry with { Value = Fill(entry.Value, Below(key, entry.Key)) })] },
        YamlList list => list with { Items = [.. list.Items.Select((item, i) => Fill(item, Below(key, NameOf(item, i))))] },
        _ => node,
    };

    private YamlNode FillBlank(YamlMap map, string key)
    {
        // A map is what SectionReader opens: it says what is wrong with the keys.
        SectionReader section = SectionReader.Open(map, BriefKeys.Blank, sink)!;
        YamlNode? guess = section.Required("guess", "`guess: 20 um`: what is to be worked with until somebody confirms it?");
        string[] candidates = section.Optional("candidates") switch
        {
            null => [],
            YamlList list => [.. list.Items.Select(TextOf)],
            { } one => [TextOf(one)],
        };
        string? because = section.Optional(BriefKeys.Because) is { } reason ? TextOf(reason) : null;
        if (guess is null)
        {
            return map;
        }

        Blank blank = new(key.Length > 0 ? key : WholeBrief, TextOf(guess), candidates, because, map.Position);
        _blanks.Add(blank);
        sink.Unconfirmed(blank);
        return Fill(guess, key);
    }

    private static string Below(string key, string part) => key.Length > 0 ? $"{key}: {part}" : part;

    /// <summary>What people call an entry of a list: its name where it has one, else its number.</summary>
    private static string NameOf(YamlNode item, int index) => item is YamlMap map && map.Find(NameKey)?.Value is YamlText { Text: { Length: > 0 } name }
        ? $"'{name}'" : FormattableString.Invariant($"{index + 1}");

    private static string TextOf(YamlNode node) => node switch
    {
        YamlText text => text.Text,
        YamlList list => $"[{string.Join(", ", list.Items.Select(TextOf))}]",
        YamlMap map => $"{{ {string.Join(", ", map.Entries.Select(entry => $"{entry.Key}: {TextOf(entry.Value)}"))} }}",
        _ => node.Shape,
    };
}
