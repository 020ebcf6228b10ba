using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The board's own temperatures for the person at the terminal.</summary>
internal static class HeatText
{
    public static void Write(TextWriter writer, TemperatureField? heat)
    {
        if (heat is null)
        {
            return;
        }

        ThermalResult result = heat.Result;
        if (result.Status != ThermalStatus.Solved)
        {
            writer.WriteLine($"Own mean and peak: none, {result.Explanation}.");
            return;
        }

        HeatGrid grid = heat.Network.Grid;
        writer.WriteLine("Own mean and peak: rise of this board's copper, solved with all of it spreading heat: "
            + $"{QuantityText.Power(result.Balance.JouleW)} from copper, {QuantityText.Power(result.Balance.ComponentW)} from components;");
        writer.WriteLine(FormattableString.Invariant(
            $"films {QuantityText.Film(result.FilmTopWPerM2K)} top, {QuantityText.Film(result.FilmBottomWPerM2K)} bottom, plus radiation; ")
            + FormattableString.Invariant(
            $"{grid.NodeCount} cells of {QuantityText.Length(grid.X.NarrowestM)}; heat in and out agree to {result.Balance.ErrorRatio:0e+0}."));
    }
}
