using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The board's own temperatures in words.</summary>
internal static class HeatText
{
    public static void Write(TextWriter writer, TemperatureField? heat)
    {
        if (heat is not null)
        {
            writer.WriteLine($"Own mean and peak: {string.Join(writer.NewLine, Basis(heat))}");
        }
    }

    /// <summary>How the temperatures were found and where the heat comes from and goes, in lines; or why there are none.</summary>
    public static IReadOnlyList<string> Basis(TemperatureField heat)
    {
        ThermalResult result = heat.Result;
        if (result.Status != ThermalStatus.Solved)
        {
            return [$"none, {result.Explanation}.", .. heat.Remarks];
        }

        HeatCells cells = heat.Network.Cells;
        HottestPlace hottest = heat.Hottest();
        return
        [
            FormattableString.Invariant(
                $"hottest place of the whole board, copper and laminate: {QuantityText.TemperatureDifference(hottest.RiseK)} above ambient, ")
                + FormattableString.Invariant(
                $"give or take {QuantityText.TemperatureDifference(hottest.EstimateK)}, layer {hottest.Layer} at ({hottest.XM * 1e3:0.00}, {hottest.YM * 1e3:0.00}) mm;"),
            "rise of this board's copper, solved with all of it spreading heat: "
                + $"{QuantityText.Power(result.Balance.JouleW)} from copper at its own temperature, {QuantityText.Power(result.Balance.ComponentW)} from components;",
            FormattableString.Invariant(
                $"films {QuantityText.Film(result.FilmTopWPerM2K)} top, {QuantityText.Film(result.FilmBottomWPerM2K)} bottom, plus radiation; ")
                + FormattableString.Invariant(
                $"{cells.NodeCount} cells of {QuantityText.Length(cells.NarrowestM)}; heat in and out agree to {result.Balance.ErrorRatio:0e+0}."),
            .. heat.Remarks,
        ];
    }
}
