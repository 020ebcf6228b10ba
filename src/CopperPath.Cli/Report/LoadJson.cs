using System.Text.Json;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The board through the load profile in <c>results.json</c>.</summary>
internal static class LoadJson
{
    public static void Write(Utf8JsonWriter json, Review review)
    {
        if (review.InTime is not { } heat || review.Brief!.LoadProfile is not { } profile)
        {
            return;
        }

        json.WriteStartObject("loadProfile");
        json.WriteNumber("durationS", profile.DurationS);
        json.WriteBoolean("isPeriodic", profile.IsPeriodic);
        if (heat.Failure is { } failure)
        {
            json.WriteString("failure", failure);
            json.WriteEndObject();
            return;
        }

        json.WriteNumber("cells", heat.NodeCount);
        json.WriteNumber("steps", heat.Steps);
        WritePeak(json, heat.Most.Hottest(), heat.HottestTimeS);
        WriteNumbers(json, "timesS", heat.TimesS);
        WriteNumbers(json, "hottestRisesK", heat.HottestK);
        json.WriteStartArray("stretches");
        foreach ((SolvedNet net, StretchInTime inTime) in LoadText.Stretches(review, heat))
        {
            json.WriteStartObject();
            json.WriteString("name", net.Bound.Review.Name);
            WritePeak(json, inTime.Peak, inTime.PeakTimeS);
            json.WriteNumberOrNull("finalRiseK", inTime.FinalK);
            json.WriteNumberOrNull("meanRiseK", inTime.MeanK);
            json.WriteNumberOrNull("rippleK", inTime.RippleK);
            WriteNumbers(json, "ownRisesK", inTime.RiseK);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WritePeak(Utf8JsonWriter json, HottestPlace peak, double timeS)
    {
        json.WriteStartObject("peak");
        json.WriteNumber("timeS", timeS);
        json.WriteNumberOrNull("riseK", peak.RiseK);
        json.WriteNumberOrNull("estimateK", peak.EstimateK);
        json.WriteNumber("layer", peak.Layer);
        json.WriteNumberOrNull("xM", peak.XM);
        json.WriteNumberOrNull("yM", peak.YM);
        json.WriteEndObject();
    }

    private static void WriteNumbers(Utf8JsonWriter json, string name, IReadOnlyList<double> values)
    {
        json.WriteStartArray(name);
        foreach (double value in values)
        {
            json.WriteNumberValue(value);
        }

        json.WriteEndArray();
    }
}
