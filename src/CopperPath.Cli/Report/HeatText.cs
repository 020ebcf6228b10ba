using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The board's own temperatures in words.</summary>
internal static class HeatText
{
    public static void Write(TextWriter writer, Review review)
    {
        if (review.Heat is not { } heat)
        {
            return;
        }

        if (HottestPlaceOf(review) is { } place)
        {
            writer.WriteLine($"Hottest place of the board, all heat counted: {place.Temperature} ({place.Where}); {place.Judged}.");
        }

        string head = "Own mean and peak: ";
        foreach (string line in Basis(heat))
        {
            writer.WriteLine(head + line);
            head = "";
        }
    }

    /// <summary>The hottest place of the board in words; null where no temperatures were solved.</summary>
    public static (string Temperature, string Where, string Judged)? HottestPlaceOf(Review review)
    {
        if (review.Heat is not { Result.Status: ThermalStatus.Solved } heat)
        {
            return null;
        }

        HottestPlace place = heat.Hottest();
        return (
            $"{QuantityText.Temperature(review.Brief!.AmbientK + place.RiseK)}, give or take {QuantityText.TemperatureDifference(place.EstimateK)}",
            FormattableString.Invariant($"layer {place.Layer}, ") + $"x {QuantityText.Place(place.XM)}, y {QuantityText.Place(place.YM)}",
            review.PartsHeat!.IsKnown ? $"{QuantityText.Temperature(review.Brief.Limits.TemperatureK)} allowed" : "not judged, heat of parts is not known");
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
        return
        [
            "what the copper's own loss adds to its temperature on this board; "
                + $"{QuantityText.Power(result.Balance.JouleW)} of heat from copper at its own temperature, {QuantityText.Power(result.Balance.ComponentW)} from parts;",
            FormattableString.Invariant(
                $"films {QuantityText.Film(result.FilmTopWPerM2K)} top, {QuantityText.Film(result.FilmBottomWPerM2K)} bottom, plus radiation; ")
                + FormattableString.Invariant(
                $"{cells.NodeCount} cells, the narrowest {QuantityText.Length(cells.NarrowestM)}; heat in and out agree to {result.Balance.ErrorRatio:0e+0}."),
            .. StillAirOf(result),
            .. heat.Remarks,
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
