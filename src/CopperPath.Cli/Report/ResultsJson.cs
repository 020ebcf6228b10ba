using System.Text.Json;
using CopperPath.Cli.Report.Html;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>Results for other programs: SI units, the unit in every name, a stable order, no clock.</summary>
public static class ResultsJson
{
    /// <summary>Version of this layout; a change that can break a reader raises it.</summary>
    public const int FormatVersion = 1;

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
            json.WriteString("verdict", review.Verdict.ToString());
            json.WriteString("judgedBy", review.Brief.Limits.JudgeBy.ToString());
            json.WriteNumber("ambientK", review.Brief.AmbientK);
            json.WriteNumber("copperK", review.Brief.ConductorK);
            json.WriteNumber("resistivityOhmM", review.Stack!.ResistivityOhmM);
            HeatJson.WriteBoard(json, review.Heat);
            WriteNets(json, review, stretches);
            ToleranceJson.Write(json, review.Tolerance);
            ConverterSummary.Write(json, review);
            WriteFindings(json, review);
            json.WriteString("caution", Cautions.Text.ReplaceLineEndings(" "));
            FieldProbe.Write(json, review, grids);
            json.WriteStartArray("messages");
            foreach (Diagnostics.Diagnostic diagnostic in review.Diagnostics)
            {
                json.WriteStringValue(diagnostic.ToString());
            }

            json.WriteEndArray();
            json.WriteStartArray("assumed");
            foreach (string line in review.StatedDefaults)
            {
                json.WriteStringValue(line);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void WriteNets(Utf8JsonWriter json, Review review, IReadOnlyList<Stretch> stretches)
    {
        ConductorRating rating = new(review.Brief!.Limits.JudgeBy, review.Stack!);
        json.WriteStartArray("nets");
        foreach (Stretch stretch in stretches)
        {
            SolvedNet net = stretch.Solved;
            ConductionResult result = net.Conduction;
            json.WriteStartObject();
            json.WriteString("name", net.Bound.Review.Name);
            json.WriteString("net", net.Bound.Net.Name);
            json.WriteString("status", result.Status.ToString());
            json.WriteNumber("areaM2", net.Bound.Net.AreaM2);
            if (result.Explanation is { } explanation)
            {
                json.WriteString("explanation", explanation);
            }

            if (result.HasFields)
            {
                if (result is { ResistanceOhm: { } ohm, ResistanceBoundsOhm: { } ohmBounds })
                {
                    json.WriteNumber("resistanceOhm", ohm);
                    WriteBounds(json, "resistanceBoundsOhm", ohmBounds);
                }

                json.WriteNumber("dropV", result.DropV);
                WriteBounds(json, "dropBoundsV", result.DropBoundsV);
                json.WriteNumber("lossW", result.LossW);
                WriteBounds(json, "lossBoundsW", result.LossBoundsW);
                json.WriteNumber("outlineShare", result.Rounds[^1].OutlineShare);
                json.WriteNumber("currentBalanceRatio", result.CurrentBalanceRatio);
                json.WriteNumber("powerBalanceRatio", result.PowerBalanceRatio);
                json.WriteNumber("relativeResidual", result.RelativeResidual);
                json.WriteNumber("unknowns", result.UnknownCount);
                HeatJson.WriteNet(json, stretch.Own);
                WriteTerminals(json, result.Terminals);
                WriteHottestSections(json, stretch, rating, review.Heat);
                WriteBarrels(json, result.Barrels, rating);
            }

            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteBounds(Utf8JsonWriter json, string name, Bracket bounds)
    {
        json.WriteStartArray(name);
        json.WriteNumberValue(bounds.Least);
        json.WriteNumberValue(bounds.Greatest);
        json.WriteEndArray();
    }

    private static void WriteTerminals(Utf8JsonWriter json, IReadOnlyList<TerminalResult> terminals)
    {
        json.WriteStartArray("terminals");
        foreach (TerminalResult terminal in terminals)
        {
            json.WriteStartObject();
            json.WriteString("name", terminal.Terminal.Name);
            json.WriteNumber("currentA", terminal.Terminal.CurrentA);
            json.WriteNumber("potentialV", terminal.PotentialV);
            json.WriteStartArray("contacts");
            for (int c = 0; c < terminal.ContactCurrentsA.Count; c++)
            {
                json.WriteStartObject();
                json.WriteString("name", terminal.Terminal.Contacts[c].Name);
                json.WriteNumber("currentA", terminal.ContactCurrentsA[c]);
                json.WriteNumber("accuracyA", terminal.ContactAccuracyA[c]);
                json.WriteEndObject();
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static void WriteHottestSections(Utf8JsonWriter json, Stretch stretch, ConductorRating rating, TemperatureField? heat)
    {
        json.WriteStartArray("hottestSections");
        foreach ((Section section, double riseK) in stretch.HottestSections.Take(10))
        {
            json.WriteStartObject();
            json.WriteNumber("layer", section.Layer);
            json.WriteNumber("xM", section.AtXM);
            json.WriteNumber("yM", section.AtYM);
            json.WriteNumber("widthM", section.WidthM);
            json.WriteNumber("currentA", section.CurrentA);
            json.WriteNumber("riseK", riseK);
            json.WriteNumber("riseByOtherRelationK", rating.Other.TraceRiseK(section));
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
            json.WriteNumber("xM", barrel.Barrel.Centre.X * 1e-9);
            json.WriteNumber("yM", barrel.Barrel.Centre.Y * 1e-9);
            json.WriteNumber("diameterM", barrel.Barrel.Feature.ToolDiameterNm * 1e-9);
            json.WriteNumber("upperLayer", barrel.UpperLayer);
            json.WriteNumber("lowerLayer", barrel.LowerLayer);
            json.WriteNumber("currentA", barrel.CurrentA);
            json.WriteNumber("accuracyA", barrel.AccuracyA);
            json.WriteNumber("riseK", rating.BarrelRiseK(barrel));
            json.WriteNumber("riseByOtherRelationK", rating.Other.BarrelRiseK(barrel));
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
            json.WriteString("level", finding.Level.ToString());
            json.WriteString("subject", finding.Subject);
            FindingJson.WritePlaceAndMeasure(json, finding);
            if (finding.Measure is { } measure)
            {
                json.WriteNumber("marginRatio", measure.MarginRatio);
            }

            json.WriteString("sentence", finding.Sentence);
            json.WriteString("advice", finding.Advice);
            json.WriteString("assumption", finding.Assumption);
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
