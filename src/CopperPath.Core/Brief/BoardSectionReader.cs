using CopperPath.Brief.Yaml;

namespace CopperPath.Brief;

/// <summary>Reads <c>board</c>.</summary>
internal static class BoardSectionReader
{
    internal static readonly IReadOnlyList<(string Word, FileRole Value)> FileRoles =
    [
        ("copper", FileRole.Copper),
        ("drill plated", FileRole.DrillPlated),
        ("drill non-plated", FileRole.DrillNonPlated),
        ("drill mixed", FileRole.DrillMixed),
        ("profile", FileRole.Profile),
        ("mask top", FileRole.MaskTop),
        ("mask bottom", FileRole.MaskBottom),
        ("paste top", FileRole.PasteTop),
        ("paste bottom", FileRole.PasteBottom),
        ("legend top", FileRole.LegendTop),
        ("legend bottom", FileRole.LegendBottom),
        ("ignore", FileRole.Ignore),
    ];

    internal static readonly IReadOnlyList<(string Word, DrillUnit Value)> DrillUnits =
        [("inch", DrillUnit.Inch), ("mm", DrillUnit.Millimetre)];

    internal static readonly IReadOnlyList<(string Word, OmittedZeros Value)> OmittedZerosWords =
        [("leading omitted", OmittedZeros.Leading), ("trailing omitted", OmittedZeros.Trailing)];

    internal static readonly IReadOnlyList<(string Word, DrawingPolarity Value)> Polarities =
        [("positive", DrawingPolarity.Positive), ("negative", DrawingPolarity.Negative)];

    private const int MostCopperLayers = 64;
    private const int MostDigits = 6;

    public static BoardSection? Read(SectionReader root, BriefContext context)
    {
        if (root.Required("board", "`board:` with `name` and `files`: which board is it, and where are its files?") is not { } node
            || SectionReader.Open(node, BriefKeys.Board, context.Sink) is not { } section)
        {
            return null;
        }

        string? name = section.Required("name", "`name: my board`: what is the board called?") is { } nameNode
            ? context.Values.Text(nameNode, "the board's name") : null;
        string? files = section.Required("files", "`files: gerbers`: which folder or zip holds the fabrication files?") is { } filesNode
            ? context.Values.Text(filesNode, "a folder or zip, relative to the brief") : null;
        string? revision = section.Optional("revision") is { } revisionNode
            ? context.Values.Text(revisionNode, "the board's revision") : null;
        List<LayerAnswer> layers = ReadLayers(section, context);
        List<DrillFormatAnswer> drillFormats = ReadDrillFormats(section, context);
        PlacementAnswer? placement = section.Optional("placement") is { } placementNode
            && context.Values.Text(placementNode, "the name of a file of the board") is { } placementFile
            ? new PlacementAnswer(placementFile, placementNode.Position) : null;
        return name is null || files is null ? null
            : new BoardSection(name, revision, files, layers, drillFormats, section.Position) { Placement = placement };
    }

    private static List<LayerAnswer> ReadLayers(SectionReader board, BriefContext context)
    {
        List<LayerAnswer> answers = [];
        if (board.Optional("layers") is not { } node)
        {
            return answers;
        }

        foreach (YamlNode item in context.Values.OneOrMany(node, "at least one `{ file: ..., role: ... }`"))
        {
            if (SectionReader.Open(item, BriefKeys.LayerAnswer, context.Sink) is { } section
                && ReadLayer(section, context) is { } answer)
            {
                RefuseConflict(answers, answer, context.Sink);
                answers.Add(answer);
            }
        }

        return answers;
    }

    private static LayerAnswer? ReadLayer(SectionReader section, BriefContext context)
    {
        string? file = ReadFile(section, context);
        FileRole? role = section.Required("role", "`role: copper`: what is the file for?") is { } roleNode
            ? context.Values.Choice(roleNode, FileRoles) : null;
        int? number = null;
        if (role == FileRole.Copper)
        {
            number = section.Required("number", "`number: 2`: which copper layer is it, counted from 1 at the top?") is { } numberNode
                ? context.Values.WholeNumber(numberNode, 1, MostCopperLayers) : null;
        }
        else if (role is not null)
        {
            RefuseOutsideCopper(section, "number", context.Sink);
            RefuseOutsideCopper(section, "polarity", context.Sink);
        }

        DrawingPolarity? polarity = section.Optional("polarity") is { } polarityNode
            ? context.Values.Choice(polarityNode, Polarities) : null;
        bool complete = file is not null && role is not null && (role != FileRole.Copper || number is not null);
        return complete ? new LayerAnswer(file!, role!.Value, number, section.Position) { Polarity = polarity } : null;
    }

    private static void RefuseOutsideCopper(SectionReader section, string key, DiagnosticSink sink)
    {
        if (section.Has(key))
        {
            sink.Error(BriefCodes.LayerConflict, section.PositionOf(key),
                $"a {key} for a file that is not copper", $"`{key}` with `role: copper` only");
        }
    }

    private static void RefuseConflict(List<LayerAnswer> earlier, LayerAnswer answer, DiagnosticSink sink)
    {
        if (earlier.Find(other => other.File == answer.File) is { } sameFile)
        {
            sink.Error(BriefCodes.LayerConflict, answer.Position,
                $"file `{answer.File}` again", $"one role for it; line {sameFile.Position.Line} gives one");
        }
        else if (answer.Number is not null && earlier.Find(other => other.Number == answer.Number) is { } sameNumber)
        {
            sink.Error(BriefCodes.LayerConflict, answer.Position,
                $"copper layer {answer.Number} again", $"one file for it; line {sameNumber.Position.Line} gives `{sameNumber.File}`");
        }
    }

    private static List<DrillFormatAnswer> ReadDrillFormats(SectionReader board, BriefContext context)
    {
        List<DrillFormatAnswer> answers = [];
        if (board.Optional("drill format") is not { } node)
        {
            return answers;
        }

        foreach (YamlNode item in context.Values.OneOrMany(node, "at least one drill format"))
        {
            if (SectionReader.Open(item, BriefKeys.DrillFormat, context.Sink) is not { } section
                || ReadDrillFormat(section, context) is not { } answer)
            {
                continue;
            }

            if (answers.Find(other => other.File == answer.File) is { } earlier)
            {
                context.Sink.Error(BriefCodes.LayerConflict, answer.Position,
                    $"a drill format for `{answer.File}` again", $"one; line {earlier.Position.Line} gives it");
            }

            answers.Add(answer);
        }

        return answers;
    }

    private static DrillFormatAnswer? ReadDrillFormat(SectionReader section, BriefContext context)
    {
        string? file = ReadFile(section, context);
        DrillUnit? unit = section.Required("unit", "`unit: inch` or `unit: mm`") is { } unitNode
            ? context.Values.Choice(unitNode, DrillUnits) : null;
        int? integerDigits = section.Required("integer digits", "`integer digits: 2`: how many digits before the point?") is { } integerNode
            ? context.Values.WholeNumber(integerNode, 1, MostDigits) : null;
        int? decimalDigits = section.Required("decimal digits", "`decimal digits: 4`: how many digits after the point?") is { } decimalNode
            ? context.Values.WholeNumber(decimalNode, 1, MostDigits) : null;
        OmittedZeros? zeros = section.Required("zeros", "`zeros: leading omitted` or `zeros: trailing omitted`") is { } zerosNode
            ? context.Values.Choice(zerosNode, OmittedZerosWords) : null;
        return file is null || unit is null || integerDigits is null || decimalDigits is null || zeros is null ? null
            : new DrillFormatAnswer(file, unit.Value, integerDigits.Value, decimalDigits.Value, zeros.Value, section.Position);
    }

    private static string? ReadFile(SectionReader section, BriefContext context) =>
        section.Required("file", "`file: name`: which file is it?") is { } node
            ? context.Values.Text(node, "a file name") : null;
}
