namespace CopperPath.Quantities;

/// <summary>How each dimension is spoken of in messages.</summary>
internal static class DimensionWords
{
    /// <summary>Words that fit after "expected": the noun and an example of it.</summary>
    public static string Expectation(Dimension dimension) => $"{Noun(dimension)} with its unit, e.g. `{Example(dimension)}`";

    public static string Noun(Dimension dimension) => dimension switch
    {
        Dimension.Length => "a length",
        Dimension.CopperThickness => "a copper thickness",
        Dimension.Current => "a current",
        Dimension.Voltage => "a voltage",
        Dimension.Temperature => "a temperature",
        Dimension.TemperatureDifference => "a temperature difference",
        Dimension.Frequency => "a frequency",
        Dimension.Inductance => "an inductance",
        Dimension.Capacitance => "a capacitance",
        Dimension.Resistance => "a resistance",
        Dimension.Power => "a power",
        Dimension.FilmCoefficient => "a film coefficient",
        Dimension.ThermalConductivity => "a thermal conductivity",
        Dimension.ThermalResistance => "a thermal resistance",
        _ => "a time",
    };

    public static string SiSymbol(Dimension dimension) => dimension switch
    {
        Dimension.Length or Dimension.CopperThickness => "m",
        Dimension.Current => "A",
        Dimension.Voltage => "V",
        Dimension.Temperature or Dimension.TemperatureDifference => "K",
        Dimension.Frequency => "Hz",
        Dimension.Inductance => "H",
        Dimension.Capacitance => "F",
        Dimension.Resistance => "ohm",
        Dimension.Power => "W",
        Dimension.FilmCoefficient => "W/m2K",
        Dimension.ThermalConductivity => "W/mK",
        Dimension.ThermalResistance => "K/W",
        _ => "s",
    };

    private static string Example(Dimension dimension) => dimension switch
    {
        Dimension.Length => "0.2 mm",
        Dimension.CopperThickness => "70 um` or `2 oz",
        Dimension.Current => "25 A",
        Dimension.Voltage => "20 mV",
        Dimension.Temperature => "60 degC",
        Dimension.TemperatureDifference => "30 K",
        Dimension.Frequency => "500 kHz",
        Dimension.Inductance => "0.25 uH",
        Dimension.Capacitance => "100 uF",
        Dimension.Resistance => "1.5 mohm",
        Dimension.Power => "2 W",
        Dimension.FilmCoefficient => "12 W/m2K",
        Dimension.ThermalConductivity => "0.3 W/mK",
        Dimension.ThermalResistance => "5 K/W",
        _ => "5 ms",
    };
}
