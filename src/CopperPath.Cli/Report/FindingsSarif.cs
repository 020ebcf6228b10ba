using System.Text.Json;
using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Judging;
using CopperPath.OutsideText;

namespace CopperPath.Cli.Report;

/// <summary>
/// Findings and remarks in the Static Analysis Results Interchange Format, SARIF 2.1.0 (OASIS standard, 2020), for code
/// hosts that show them beside a change. A finding points at the net's entry in the brief, the one text file of a
/// review that people edit; its place on the board is among its properties.
/// </summary>
public static class FindingsSarif
{
    public const string FileName = "findings.sarif";

    private const string SchemaUri = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

    public static byte[] Of(Review review)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteString("$schema", SchemaUri);
            json.WriteString("version", "2.1.0");
            json.WriteStartArray("runs");
            json.WriteStartObject();
            WriteTool(json, review.Diagnostics);
            json.WriteString("columnKind", "utf16CodeUnits");
            json.WriteStartArray("results");
            foreach (Finding finding in review.Findings)
            {
                WriteFinding(json, finding, PositionOf(finding, review));
            }

            foreach (Diagnostic diagnostic in review.Diagnostics)
            {
                WriteDiagnostic(json, diagnostic);
            }

            json.WriteEndArray();
            json.WriteStartObject("properties");
            VerdictWords.Write(json, review);
            json.WriteEndObject();
            json.WriteEndObject();
            json.WriteEndArray();
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }

    private static void WriteTool(Utf8JsonWriter json, IReadOnlyList<Diagnostic> diagnostics)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", Product.Name);
        json.WriteString("version", Product.Version);
        json.WriteStartArray("rules");
        foreach (Rule rule in RuleCatalogue.All)
        {
            json.WriteStartObject();
            json.WriteString("id", rule.Id);
            WriteText(json, "shortDescription", rule.Question);
            WriteText(json, "fullDescription", $"{rule.Question} Limit: {rule.LimitSource}.");
            json.WriteEndObject();
        }

        foreach (string code in diagnostics.Select(diagnostic => diagnostic.Code).Distinct().Order(StringComparer.Ordinal))
        {
            json.WriteStartObject();
            json.WriteString("id", code);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteFinding(Utf8JsonWriter json, Finding finding, SourcePosition position)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", finding.Rule);
        json.WriteString("level", finding.Level switch
        {
            FindingLevel.BeyondLimit => "error",
            FindingLevel.Undecided or FindingLevel.WithinAsStated => "warning",
            _ => "note",
        });
        WriteText(json, "message", $"{finding.Subject}: {finding.Sentence} {finding.Advice}");
        WriteLocation(json, position, finding.Subject);
        json.WriteStartObject("properties");
        json.WriteString("level", finding.Level.Word());
        FindingJson.WritePlaceAndMeasure(json, finding);
        json.WriteEndObject();
        WriteSuppression(json, finding.Waiver);
        json.WriteEndObject();
    }

    /// <summary>A waiver is what the standard calls a suppression kept outside the thing reviewed (section 3.35; from memory).</summary>
    private static void WriteSuppression(Utf8JsonWriter json, Waiver? waiver)
    {
        if (waiver is not null)
        {
            json.WriteStartArray("suppressions");
            json.WriteStartObject();
            json.WriteString("kind", "external");
            json.WriteString("status", "accepted");
            json.WriteString("justification", $"{waiver.By}: {waiver.Reason}");
            json.WriteEndObject();
            json.WriteEndArray();
        }
    }

    private static void WriteDiagnostic(Utf8JsonWriter json, Diagnostic diagnostic)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", diagnostic.Code);
        json.WriteString("level", diagnostic.Severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "note",
        });
        WriteText(json, "message", $"Found {diagnostic.Found}; expected {diagnostic.Expected}.");
        WriteLocation(json, diagnostic.Position, null);
        json.WriteEndObject();
    }

    private static void WriteLocation(Utf8JsonWriter json, SourcePosition position, string? subject)
    {
        json.WriteStartArray("locations");
        json.WriteStartObject();
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", Uri.EscapeDataString(position.File.Replace('\\', '/')).Replace("%2F", "/", StringComparison.Ordinal));
        json.WriteEndObject();
        if (position.Line > 0)
        {
            json.WriteStartObject("region");
            json.WriteNumber("startLine", position.Line);
            json.WriteNumber("startColumn", Math.Max(1, position.Column));
            json.WriteEndObject();
        }

        json.WriteEndObject();
        if (subject is not null)
        {
            json.WriteStartArray("logicalLocations");
            json.WriteStartObject();
            json.WriteString("name", VisibleText.Of(subject));
            json.WriteEndObject();
            json.WriteEndArray();
        }

        json.WriteEndObject();
        json.WriteEndArray();
    }

    private static void WriteText(Utf8JsonWriter json, string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", VisibleText.Of(text, VisibleText.MostOfSentence));
        json.WriteEndObject();
    }

    private static SourcePosition PositionOf(Finding finding, Review review) =>
        review.Brief!.Nets.FirstOrDefault(net => net.Name == finding.Subject)?.Position ?? review.Brief.Board.Position;
}
