using System.Text.Json;
using CopperPath.Judging;

namespace CopperPath.Cli.Report;

/// <summary>Nominal, worst and shares in <c>results.json</c>, where the brief states ranges.</summary>
internal static class ToleranceJson
{
    public static void Write(Utf8JsonWriter json, ToleranceStudy? study)
    {
        if (study is null)
        {
            return;
        }

        json.WriteStartObject("tolerance");
        if (study.WarmestK is { } warmestK)
        {
            WriteNumber(json, "hottestAtWorstK", warmestK);
        }

        json.WriteStartArray("nets");
        foreach (NetTolerance net in study.Nets)
        {
            json.WriteStartObject();
            json.WriteString("name", net.Name);
            WriteSpread(json, "lossW", net.LossW);
            WriteSpread(json, "dropV", net.DropV);
            WriteSpread(json, "sectionRiseK", net.SectionRiseK);
            WriteSpread(json, "holeRiseK", net.HoleRiseK);
            WriteSpread(json, "ownRiseK", net.OwnRiseK);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteSpread(Utf8JsonWriter json, string name, Spread? spread)
    {
        if (spread is null)
        {
            return;
        }

        json.WriteStartObject(name);
        WriteNumber(json, "nominal", spread.Nominal);
        WriteNumber(json, "worst", spread.Worst);
        if (spread.WorstBounds is { } bounds)
        {
            json.WriteStartArray("worstBounds");
            json.WriteNumberValue(bounds.Least);
            json.WriteNumberValue(bounds.Greatest);
            json.WriteEndArray();
        }

        json.WriteStartArray("shares");
        foreach (ToleranceShare share in spread.Shares)
        {
            json.WriteStartObject();
            json.WriteString("item", share.Item);
            WriteNumber(json, "change", share.Change);
            WriteNumber(json, "share", share.Share);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    /// <summary>Null stands for what has no steady state: JSON knows no infinity.</summary>
    private static void WriteNumber(Utf8JsonWriter json, string name, double value)
    {
        if (double.IsFinite(value))
        {
            json.WriteNumber(name, value);
        }
        else
        {
            json.WriteNull(name);
        }
    }
}
