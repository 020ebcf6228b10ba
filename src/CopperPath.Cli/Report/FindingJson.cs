using System.Text.Json;
using CopperPath.Judging;

namespace CopperPath.Cli.Report;

/// <summary>The numbers of a finding, named alike in all machine output.</summary>
internal static class FindingJson
{
    /// <summary>Writes where a finding is and, where something was measured, value and limit.</summary>
    public static void WritePlaceAndMeasure(Utf8JsonWriter json, Finding finding)
    {
        json.WriteNumber("layer", finding.Layer);
        json.WriteNumberOrNull("xM", finding.XM);
        json.WriteNumberOrNull("yM", finding.YM);
        if (finding.Measure is { } measure)
        {
            json.WriteString("quantity", measure.Name);
            json.WriteString("unit", measure.Unit);
            json.WriteNumberOrNull("value", measure.Value);
            json.WriteNumberOrNull("limit", measure.Limit);
            if (measure.Worst is { } worst)
            {
                json.WriteNumberOrNull("worst", worst);
            }
        }
    }
}
