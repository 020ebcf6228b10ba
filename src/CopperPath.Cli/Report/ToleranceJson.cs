using System.Text.Json;
using CopperPath.Judging;

namespace CopperPath.Cli.Report;

/// <summary>Nominal, worst and shares in <c>results.json</c>; null is what has no steady state.</summary>
internal static class ToleranceJson
{
    public static void Write(Utf8JsonWriter json, ToleranceStudy? study)
    {
        if (study is null)
        {
            return;
        }

        json.WriteStartObject("tolerance");
        if (study.TemperatureK is { } temperature)
        {
            WriteSpread(json, "temperatureK", temperature);
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
        json.WriteNumberOrNull("nominal", spread.Nominal);
        json.WriteNumberOrNull("worst", spread.Worst);
        if (spread.WorstBounds is { } bounds)
        {
            json.WriteStartArray("worstBounds");
            json.WriteNumberOrNullValue(bounds.Least);
            json.WriteNumberOrNullValue(bounds.Greatest);
            json.WriteEndArray();
        }

        json.WriteStartArray("shares");
        foreach (ToleranceShare share in spread.Shares)
        {
            json.WriteStartObject();
            json.WriteString("item", share.Item);
            json.WriteNumberOrNull("change", share.Change);
            json.WriteNumberOrNull("share", share.Share);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
