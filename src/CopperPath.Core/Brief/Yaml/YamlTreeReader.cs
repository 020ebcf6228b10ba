using CopperPath.Diagnostics;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace CopperPath.Brief.Yaml;

/// <summary>
/// Builds the node tree from parser events. The events, unlike a ready document model, keep the position of every key,
/// let all duplicate keys be reported instead of the first, and let depth be bounded before recursion begins.
/// </summary>
internal sealed class YamlTreeReader
{
    private const int DepthLimit = 32;
    private const int LengthLimit = 4_000_000;

    /// <summary>Keys, values, lists and maps together; the briefs of the demo boards have some six hundred.</summary>
    private const int NodeLimit = 50_000;

    private readonly string _file;
    private readonly DiagnosticSink _sink;
    private readonly Parser _parser;
    private int _nodes;

    private YamlTreeReader(string file, string text, DiagnosticSink sink)
    {
        _file = file;
        _sink = sink;
        _parser = new Parser(new StringReader(text));
    }

    /// <summary>The one document of the text, or null after an error that leaves no usable tree.</summary>
    public static YamlNode? Read(string file, string text, DiagnosticSink sink)
    {
        if (text.Length > LengthLimit)
        {
            sink.Error(BriefCodes.YamlSyntax, SourcePosition.WholeFile(file),
                $"{text.Length} characters", $"a brief of at most {LengthLimit} characters");
            return null;
        }

        YamlTreeReader reader = new(file, text, sink);
        try
        {
            return reader.ReadOnlyDocument();
        }
        catch (YamlException exception)
        {
            reader.RefuseSyntax(PositionOf(file, exception.Start), Cause(exception));
            return null;
        }
        catch (Exception exception) when (exception is InvalidOperationException or ArgumentException or ArithmeticException)
        {
            // The scanner lets a few damaged texts through to its own sanity checks; then only the last good place is known.
            reader.RefuseSyntax(reader.LastPosition, "after this place");
            return null;
        }
    }

    private SourcePosition LastPosition =>
        _parser.Current is { } current ? PositionOf(_file, current.End) : new SourcePosition(_file, 1, 1);

    private void RefuseSyntax(SourcePosition position, string cause) => _sink.Error(
        BriefCodes.YamlSyntax, position, $"text that is not YAML ({cause})", "YAML: spaces for indentation, `key: value`");

    private YamlNode? ReadOnlyDocument()
    {
        _parser.MoveNext();
        _parser.MoveNext();
        if (_parser.Current is not DocumentStart)
        {
            _sink.Error(BriefCodes.NotOneMap, SourcePosition.WholeFile(_file), "an empty file", "a brief starting with `copperpath: 1`");
            return null;
        }

        YamlNode? root = ReadNextNode(depth: 0);
        _parser.MoveNext();
        if (root is not null && _parser.MoveNext() && _parser.Current is DocumentStart second)
        {
            _sink.Error(BriefCodes.NotOneMap, PositionOf(_file, second.Start), "a second document", "one document in the file");
        }

        return root;
    }

    private YamlNode? ReadNextNode(int depth)
    {
        if (_parser.MoveNext() && _parser.Current is { } next)
        {
            return ReadNode(next, depth);
        }

        RefuseSyntax(LastPosition, "it ends too early");
        return null;
    }

    /// <summary>Reads the node at the current event and leaves its last event current; null after an unusable node.</summary>
    private YamlNode? ReadNode(ParsingEvent current, int depth)
    {
        SourcePosition position = PositionOf(_file, current.Start);
        if (current is AnchorAlias || (current is NodeEvent node && (!node.Anchor.IsEmpty || !node.Tag.IsEmpty)))
        {
            _sink.Error(BriefCodes.YamlFeature, position, "a YAML anchor, alias or tag", "each value written out");
            return null;
        }

        if (depth > DepthLimit)
        {
            _sink.Error(BriefCodes.YamlFeature, position, $"more than {DepthLimit} levels inside each other", "the levels of the format");
            return null;
        }

        if (++_nodes > NodeLimit)
        {
            _sink.Error(BriefCodes.YamlFeature, position, $"more than {NodeLimit} keys and values", "a brief of fewer; check that this is one");
            return null;
        }

        switch (current)
        {
            case Scalar scalar:
                return new YamlText(scalar.Value, scalar.Style is not ScalarStyle.Plain, position);
            case SequenceStart:
                return ReadList(position, depth);
            case MappingStart:
                return ReadMap(position, depth);
            default:
                // The parser gives some damaged maps a key and no value.
                RefuseSyntax(position, "a key without a value");
                return null;
        }
    }

    private YamlList? ReadList(SourcePosition position, int depth)
    {
        List<YamlNode> items = [];
        while (_parser.MoveNext() && _parser.Current is not SequenceEnd)
        {
            if (ReadNode(_parser.Current!, depth + 1) is not { } item)
            {
                return null;
            }

            items.Add(item);
        }

        return new YamlList(items, position);
    }

    private YamlMap? ReadMap(SourcePosition position, int depth)
    {
        List<YamlEntry> entries = [];
        Dictionary<string, SourcePosition> seen = new(StringComparer.Ordinal);
        while (_parser.MoveNext() && _parser.Current is not MappingEnd)
        {
            if (ReadNode(_parser.Current!, depth + 1) is not { } key || ReadNextNode(depth + 1) is not { } value)
            {
                return null;
            }

            if (key is not YamlText { Text: var name })
            {
                _sink.Error(BriefCodes.WrongShape, key.Position, key.Shape + " as a key", "a word as a key");
            }
            else if (!seen.TryAdd(name, key.Position))
            {
                _sink.Error(BriefCodes.DuplicateKey, key.Position, $"key `{name}` again", $"it once; line {seen[name].Line} has it already");
            }
            else
            {
                entries.Add(new YamlEntry(name, key.Position, value));
            }
        }

        return new YamlMap(entries, position);
    }

    private static SourcePosition PositionOf(string file, Mark mark) =>
        new(file, (int)Math.Max(1, mark.Line), (int)Math.Max(1, mark.Column));

    private static string Cause(YamlException exception) =>
        (exception.InnerException ?? exception).Message.ReplaceLineEndings(" ").TrimEnd('.', ' ');
}
