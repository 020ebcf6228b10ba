using System.Text.Json;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The board's own temperatures in <c>results.json</c>.</summary>
internal static class HeatJson
{
    public static void WriteBoard(Utf8JsonWriter json, Review review)
    {
        if (review.Heat is not { } heat)
        {
            return;
        }

        ThermalResult result = heat.Result;
        json.WriteStartObject("heat");
        json.WriteString("status", result.Status.Word());
        if (heat.Remarks.Count > 0)
        {
            json.WriteStartArray("remarks");
            foreach (string remark in heat.Remarks)
            {
                json.WriteStringValue(remark);
            }

            json.WriteEndArray();
        }

        json.WriteNumberOrNull("cellM", heat.Network.Cells.NarrowestM);
        json.WriteNumber("cells", heat.Network.Cells.NodeCount);
        if (result.Status == ThermalStatus.Solved)
        {
            HottestPlace hottest = heat.Hottest();
            json.WriteStartObject("hottest");
            json.WriteNumberOrNull("riseK", hottest.RiseK);
            json.WriteNumberOrNull("estimateK", hottest.EstimateK);
            json.WriteNumber("layer", hottest.Layer);
            json.WriteNumberOrNull("xM", hottest.XM);
            json.WriteNumberOrNull("yM", hottest.YM);
            json.WriteEndObject();
            json.WriteBoolean("temperatureIsJudged", review.PartsHeat!.IsKnown);
            json.WriteNumberOrNull("copperLossW", result.Balance.JouleW);
            json.WriteNumberOrNull("componentLossW", result.Balance.ComponentW);
            json.WriteNumberOrNull("convectedTopW", result.Balance.ConvectedW.Top);
            json.WriteNumberOrNull("convectedBottomW", result.Balance.ConvectedW.Bottom);
            json.WriteNumberOrNull("radiatedTopW", result.Balance.RadiatedW.Top);
            json.WriteNumberOrNull("radiatedBottomW", result.Balance.RadiatedW.Bottom);
            json.WriteNumberOrNull("sunkW", result.Balance.SunkW);
            json.WriteNumberOrNull("heatBalanceRatio", result.Balance.ErrorRatio);
            json.WriteNumberOrNull("filmTopWPerM2K", result.FilmTopWPerM2K);
            json.WriteNumberOrNull("filmBottomWPerM2K", result.FilmBottomWPerM2K);
            WriteStillAir(json, "stillAirTop", result.StillAirTop);
            WriteStillAir(json, "stillAirBottom", result.StillAirBottom);
        }

        json.WriteEndObject();
    }

    private static void WriteStillAir(Utf8JsonWriter json, string name, StillAir? air)
    {
        if (air is not null)
        {
            json.WriteStartObject(name);
            json.WriteString("correlation", air.Correlation);
            json.WriteNumber("lengthM", air.LengthM);
            json.WriteNumber("rayleigh", air.Rayleigh);
            json.WriteNumber("leastRayleigh", air.LeastRayleigh);
            json.WriteNumber("mostRayleigh", air.MostRayleigh);
            json.WriteBoolean("isWithinRange", air.IsWithinRange);
            json.WriteEndObject();
        }
    }

    public static void WriteNet(Utf8JsonWriter json, NetTemperatures? temperatures)
    {
        if (temperatures is { } own)
        {
            json.WriteNumberOrNull("ownMeanRiseK", own.MeanK);
            json.WriteNumberOrNull("ownPeakRiseK", own.PeakK);
            json.WriteNumberOrNull("ownPeakEstimateK", own.EstimateK);
            json.WriteNumber("ownPeakLayer", own.Layer);
            json.WriteNumberOrNull("ownPeakXM", own.XM);
            json.WriteNumberOrNull("ownPeakYM", own.YM);
        }
    }

    public static void WriteSection(Utf8JsonWriter json, Section section, OwnRise? heat)
    {
        if (heat is { Result.Status: ThermalStatus.Solved })
        {
            (double meanK, double peakK) = heat.RiseAlong(section);
            json.WriteNumberOrNull("ownMeanRiseK", meanK);
            json.WriteNumberOrNull("ownPeakRiseK", peakK);
        }
    }
}
