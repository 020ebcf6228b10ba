using System.Text.Json;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The board's own temperatures in <c>results.json</c>.</summary>
internal static class HeatJson
{
    public static void WriteBoard(Utf8JsonWriter json, TemperatureField? heat)
    {
        if (heat is null)
        {
            return;
        }

        ThermalResult result = heat.Result;
        json.WriteStartObject("heat");
        json.WriteString("status", result.Status.ToString());
        if (heat.Remarks.Count > 0)
        {
            json.WriteStartArray("remarks");
            foreach (string remark in heat.Remarks)
            {
                json.WriteStringValue(remark);
            }

            json.WriteEndArray();
        }

        json.WriteNumber("cellM", heat.Network.Cells.NarrowestM);
        json.WriteNumber("cells", heat.Network.Cells.NodeCount);
        if (result.Status == ThermalStatus.Solved)
        {
            HottestPlace hottest = heat.Hottest();
            json.WriteStartObject("hottest");
            json.WriteNumber("riseK", hottest.RiseK);
            json.WriteNumber("estimateK", hottest.EstimateK);
            json.WriteNumber("layer", hottest.Layer);
            json.WriteNumber("xM", hottest.XM);
            json.WriteNumber("yM", hottest.YM);
            json.WriteEndObject();
            json.WriteNumber("peakRiseK", hottest.RiseK);
            json.WriteNumber("copperLossW", result.Balance.JouleW);
            json.WriteNumber("componentLossW", result.Balance.ComponentW);
            json.WriteNumber("convectedTopW", result.Balance.ConvectedW.Top);
            json.WriteNumber("convectedBottomW", result.Balance.ConvectedW.Bottom);
            json.WriteNumber("radiatedTopW", result.Balance.RadiatedW.Top);
            json.WriteNumber("radiatedBottomW", result.Balance.RadiatedW.Bottom);
            json.WriteNumber("sunkW", result.Balance.SunkW);
            json.WriteNumber("heatBalanceRatio", result.Balance.ErrorRatio);
            json.WriteNumber("filmTopWPerM2K", result.FilmTopWPerM2K);
            json.WriteNumber("filmBottomWPerM2K", result.FilmBottomWPerM2K);
        }

        json.WriteEndObject();
    }

    public static void WriteNet(Utf8JsonWriter json, NetTemperatures? temperatures)
    {
        if (temperatures is { } own)
        {
            json.WriteNumber("ownMeanRiseK", own.MeanK);
            json.WriteNumber("ownPeakRiseK", own.PeakK);
            json.WriteNumber("ownPeakEstimateK", own.EstimateK);
            json.WriteNumber("ownPeakLayer", own.Layer);
            json.WriteNumber("ownPeakXM", own.XM);
            json.WriteNumber("ownPeakYM", own.YM);
        }
    }

    public static void WriteSection(Utf8JsonWriter json, Section section, TemperatureField? heat)
    {
        if (heat is { Result.Status: ThermalStatus.Solved })
        {
            (double meanK, double peakK) = heat.RiseAlong(section);
            json.WriteNumber("ownMeanRiseK", meanK);
            json.WriteNumber("ownPeakRiseK", peakK);
        }
    }
}
