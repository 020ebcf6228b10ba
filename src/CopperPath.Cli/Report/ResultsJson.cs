using System.Text.Json;
using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Cli.Report.Html;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.OutsideText;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>
/// Results for other programs: SI units, the unit in every name, a stable order, no clock. Names are exact; sentences,
/// which a program shows to people, are made visible.
/// </summary>
public static class ResultsJson
{
    public const string FileName = "results.json";

    /// <summary>Version of this layout; a change that can break a reader raises it.</summary>
    public const int FormatVersion = 2;

    internal static byte[] Of(Review review, IReadOnlyList<Stretch> stretches, IReadOnlyList<FieldGrid> grids)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("formatVersion", FormatVersion);
            json.WriteString("tool", Product.NameAndVersion);
            json.WriteString("board", review.Brief!.Board.Name);
            json.WriteString("revision", review.Brief.Board.Revision);
            VerdictWords.Write(json, review);
            json.WriteString("fingerprint", review.Board!.Fingerprint);
            json.WriteString("judgedBy", review.Brief.Limits.JudgeBy.Word());
            json.WriteNumberOrNull("ambientK", review.Brief.AmbientK);
            json.WriteNumberOrNull("copperK", review.Brief.ConductorK);
            json.WriteNumberOrNull("resistivityOhmM", review.Stack!.ResistivityOhmM);
            HeatJson.WriteBoard(json, review);
            LoadJson.Write(json, review);
            WriteNets(json, review, stretches);
            ToleranceJson.Write(json, review.Tolerance);
            ConverterSummary.Write(json, review);
            WriteFindings(json, review);
            json.WriteString("caution", Cautions.Text.ReplaceLineEndings(" "));
            FieldProbe.Write(json, review, grids);
            WriteRemarks(json, review);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    /// <summary>What is left to say when nothing was solved.</summary>
    internal static byte[] OfUndecided(Review review)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("formatVersion", FormatVersion);
            json.WriteString("tool", Product.NameAndVersion);
            json.WriteString("board", review.Brief?.Board.Name ?? "");
            json.WriteString("revision", review.Brief?.Board.Revision);
            VerdictWords.Write(json, review);
            WriteFindings(json, review);
            json.WriteString("caution", Cautions.Text.ReplaceLineEndings(" "));
            WriteRemarks(json, review);
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void WriteRemarks(Utf8JsonWriter json, Review review)
    {
        json.WriteStartArray("messages");
        foreach (Diagnostics.Diagnostic diagnostic in review.Diagnostics)
        {
            json.WriteStringValue(diagnostic.ToString());
        }

        json.WriteEndArray();
        WriteBlanks(json, review.Brief?.Blanks ?? []);
        json.WriteStartArray("assumed");
        foreach (string line in review.StatedDefaults)
        {
            json.WriteStringValue(VisibleText.Of(line, int.MaxValue));
        }

        json.WriteEndArray();
    }

    private static void WriteBlanks(Utf8JsonWriter json, IReadOnlyList<Blank> blanks)
    {
        json.WriteStartArray("blanks");
        foreach (Blank blank in blanks)
        {
            json.WriteStartObject();
            json.WriteString("key", blank.Key);
            json.WriteNumber("line", blank.Position.Line);
            json.WriteNumber("column", blank.Position.Column);
            json.WriteString("guess", VisibleText.Of(blank.Guess, int.MaxValue));
            json.WriteStartArray("candidates");
            foreach (string candidate in blank.Candidates)
            {
                json.WriteStringValue(VisibleText.Of(candidate, int.MaxValue));
            }

            json.WriteEndArray();
            if (blank.Because is { } because)
            {
                json.WriteString("because", VisibleText.Of(because, int.MaxValue));
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    /// <summary>What flows together, where that is more than one entry of the brief.</summary>
    private static void WriteEntries(Utf8JsonWriter json, SolvedNet net)
    {
        if (net.Bound.Entries.Count > 1)
        {
            json.WriteStartArray("entries");
            foreach (BoundNet entry in net.Bound.Entries)
            {
                json.WriteStringValue(entry.Review.Name);
            }

            json.WriteEndArray();
        }

        if (net.Bound.Alternative is { } alternative)
        {
            json.WriteString("alternative", alternative);
        }
    }

    private static void WriteNets(Utf8JsonWriter json, Review review, IReadOnlyList<Stretch> stretches)
    {
        ConductorRating rating = ConductorRating.Shown(review.Brief!.Limits.JudgeBy, review.Stack!);
        json.WriteStartArray("nets");
        foreach (Stretch stretch in stretches)
        {
            SolvedNet net = stretch.Solved;
            ConductionResult result = net.Conduction;
            json.WriteStartObject();
            json.WriteString("name", net.Bound.Review.Name);
            json.WriteString("net", net.Bound.Net.Name);
            WriteEntries(json, net);
            json.WriteString("status", result.Status.Word());
            json.WriteNumberOrNull("areaM2", net.Bound.Net.AreaM2);
            if (result.Explanation is { } explanation)
            {
                json.WriteString("explanation", VisibleText.Of(explanation, int.MaxValue));
            }

            if (result.HasFields)
            {
                if (result is { ResistanceOhm: { } ohm, ResistanceBoundsOhm: { } ohmBounds })
                {
                    json.WriteNumberOrNull("resistanceOhm", ohm);
                    WriteBounds(json, "resistanceBoundsOhm", ohmBounds);
                }

                json.WriteNumberOrNull("dropV", result.DropV);
                WriteBounds(json, "dropBoundsV", result.DropBoundsV);
                json.WriteNumberOrNull("lossW", result.LossW);
                WriteBounds(json, "lossBoundsW", result.LossBoundsW);
                json.WriteNumberOrNull("outlineShare", result.Rounds[^1].OutlineShare);
                json.WriteNumberOrNull("currentBalanceRatio", result.CurrentBalanceRatio);
                json.WriteNumberOrNull("powerBalanceRatio", result.PowerBalanceRatio);
                json.WriteNumberOrNull("relativeResidual", result.RelativeResidual);
                json.WriteNumber("unknowns", result.UnknownCount);
                HeatJson.WriteNet(json, stretch.Own);
                WriteTerminals(json, result.Terminals);
                WriteHottestSections(json, stretch, rating, review.Own);
                JointSectionJson.Write(json, stretch, rating);
                WriteBarrels(json, result.Barrels, rating);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteBounds(Utf8JsonWriter json, string name, Bracket bounds)
    {
        json.WriteStartArray(name);
        json.WriteNumberOrNullValue(bounds.Least);
        json.WriteNumberOrNullValue(bounds.Greatest);
        json.WriteEndArray();
    }

    private static void WriteTerminals(Utf8JsonWriter json, IReadOnlyList<TerminalResult> terminals)
    {
        json.WriteStartArray("terminals");
        foreach (TerminalResult terminal in terminals)
        {
            json.WriteStartObject();
            json.WriteString("name", terminal.Terminal.Name);
            json.WriteNumberOrNull("currentA", terminal.Terminal.CurrentA);
            json.WriteNumberOrNull("potentialV", terminal.PotentialV);
            json.WriteStartArray("contacts");
            for (int c = 0; c < terminal.ContactCurrentsA.Count; c++)
            {
                json.WriteStartObject();
                json.WriteString("name", terminal.Terminal.Contacts[c].Name);
                json.WriteNumberOrNull("currentA", terminal.ContactCurrentsA[c]);
                json.WriteNumberOrNull("accuracyA", terminal.ContactAccuracyA[c]);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteHottestSections(Utf8JsonWriter json, Stretch stretch, ConductorRating rating, OwnRise? heat)
    {
        json.WriteStartArray("hottestSections");
        foreach ((Section section, double riseK) in stretch.HottestSections.Take(10))
        {
            json.WriteStartObject();
            json.WriteNumber("layer", section.Layer);
            json.WriteNumberOrNull("xM", section.AtXM);
            json.WriteNumberOrNull("yM", section.AtYM);
            json.WriteNumberOrNull("widthM", section.WidthM);
            json.WriteNumberOrNull("currentA", section.CurrentA);
            json.WriteNumberOrNull("riseK", riseK);
            json.WriteNumberOrNull("riseByOtherRelationK", rating.Other.TraceRiseK(section));
            json.WriteBoolean("isInRange", rating.CanJudge(section));
            JointSectionJson.WriteNeck(json, NeckFigures.Of(stretch.Solved, section, rating));
            HeatJson.WriteSection(json, section, heat);
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteBarrels(Utf8JsonWriter json, IReadOnlyList<BarrelCurrent> barrels, ConductorRating rating)
    {
        json.WriteStartArray("platedHoles");
        foreach (BarrelCurrent barrel in barrels)
        {
            json.WriteStartObject();
            json.WriteNumberOrNull("xM", barrel.Barrel.Centre.X * 1e-9);
            json.WriteNumberOrNull("yM", barrel.Barrel.Centre.Y * 1e-9);
            json.WriteNumberOrNull("diameterM", barrel.Barrel.Feature.ToolDiameterNm * 1e-9);
            json.WriteNumber("upperLayer", barrel.UpperLayer);
            json.WriteNumber("lowerLayer", barrel.LowerLayer);
            json.WriteNumberOrNull("currentA", barrel.CurrentA);
            json.WriteNumberOrNull("accuracyA", barrel.AccuracyA);
            json.WriteNumberOrNull("riseK", rating.BarrelRiseK(barrel));
            json.WriteNumberOrNull("riseByOtherRelationK", rating.Other.BarrelRiseK(barrel));
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteFindings(Utf8JsonWriter json, Review review)
    {
        json.WriteStartArray("findings");
        foreach (Finding finding in review.Findings)
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("level", finding.Level.Word());
            json.WriteString("subject", finding.Subject);
            FindingJson.WritePlaceAndMeasure(json, finding);
            if (finding.Measure is { } measure)
            {
                json.WriteNumberOrNull("marginRatio", measure.MarginRatio);
            }

            json.WriteString("sentence", VisibleText.Of(finding.Sentence, int.MaxValue));
            json.WriteString("advice", VisibleText.Of(finding.Advice, int.MaxValue));
            json.WriteString("assumption", VisibleText.Of(finding.Assumption, int.MaxValue));
            if (finding.Waiver is { } waiver)
            {
                json.WriteString("waivedBy", waiver.By);
                json.WriteString("waivedBecause", waiver.Reason);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }
}
