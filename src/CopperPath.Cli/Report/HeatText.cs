using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The board's own temperatures in words.</summary>
internal static class HeatText
{
    public static void Write(TextWriter writer, TemperatureField? heat)
    {
        string head = "Own mean and peak: ";
        foreach (string line in heat is null ? [] : Basis(heat))
        {
            writer.WriteLine(head + line);
            head = "";
        }
    }

    /// <summary>How the temperatures were found and where the heat comes from and goes, in lines; or why there are none.</summary>
    public static IReadOnlyList<string> Basis(TemperatureField heat)
    {
        ThermalResult result = heat.Result;
        if (result.Status != ThermalStatus.Solved)
        {
            return [$"none, {result.Explanation}."];
        }

        HeatGrid grid = heat.Network.Grid;
        return
        [
            "rise of this board's copper, solved with all of it spreading heat: "
                + $"{QuantityText.Power(result.Balance.JouleW)} from copper at its own temperature, {QuantityText.Power(result.Balance.ComponentW)} from components;",
            FormattableString.Invariant(
                $"films {QuantityText.Film(result.FilmTopWPerM2K)} top, {QuantityText.Film(result.FilmBottomWPerM2K)} bottom, plus radiation; ")
                + FormattableString.Invariant(
                $"{grid.NodeCount} cells of {QuantityText.Length(grid.X.NarrowestM)}; heat in and out agree to {result.Balance.ErrorRatio:0e+0}."),
            .. StillAirOf(result),
        ];
    }

    /// <summary>A correlation used beyond the range it is published for is named as such.</summary>
    private static IEnumerable<string> StillAirOf(ThermalResult result)
    {
        foreach ((string face, StillAir? air) in new[] { ("top", result.StillAirTop), ("bottom", result.StillAirBottom) })
        {
            if (air is not null)
            {
                string range = air.LeastRayleigh > 0
                    ? FormattableString.Invariant($"{air.LeastRayleigh:0e+0} to {air.MostRayleigh:0e+0}") : FormattableString.Invariant($"up to {air.MostRayleigh:0e+0}");
                yield return FormattableString.Invariant(
                    $"Still air, {face}: Rayleigh number {air.Rayleigh:0.0e+0} on {QuantityText.Length(air.LengthM)}, ")
                    + (air.IsWithinRange ? "within" : "OUTSIDE") + $" the published range of its correlation ({air.Correlation}: {range}).";
            }
        }
    }
}
