using System.Text.Json;

namespace CopperPath.Cli.Report;

/// <summary>Numbers in JSON, which knows neither infinity nor "not a number": a value that does not exist is null.</summary>
internal static class JsonNumbers
{
    public static void WriteNumberOrNull(this Utf8JsonWriter json, string name, double? value)
    {
        json.WritePropertyName(name);
        json.WriteNumberOrNullValue(value);
    }

    public static void WriteNumberOrNullValue(this Utf8JsonWriter json, double? value)
    {
        if (value is { } number && double.IsFinite(number))
        {
            json.WriteNumberValue(number);
        }
        else
        {
            json.WriteNullValue();
        }
    }
}
