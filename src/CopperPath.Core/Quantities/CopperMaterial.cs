namespace CopperPath.Quantities;

/// <summary>
/// Copper as a conductor, with resistivity linear in temperature about 20 degC. It stands with the foundations because
/// the fields need it as much as the capacity formulas do.
/// </summary>
/// <param name="Resistivity20OhmM">Resistivity at 20 degC, ohm metres, positive.</param>
/// <param name="AlphaPerK">Temperature coefficient of resistance at 20 degC, per kelvin.</param>
public sealed record CopperMaterial(double Resistivity20OhmM, double AlphaPerK)
{
    /// <summary>The temperature the two parameters hold at, kelvin.</summary>
    public const double ReferenceK = Units.ZeroCelsiusK + 20;

    /// <summary>
    /// Annealed copper of 100 % conductivity in the International Annealed Copper Standard (IEC 60028; recalled, not read
    /// again). Electrodeposited copper is commonly a few per cent more resistive.
    /// </summary>
    public static CopperMaterial Iacs { get; } = new(1.7241e-8, 0.00393);

    /// <summary>Resistivity at a temperature, ohm metres; the linear law is good from about -50 to 200 degC.</summary>
    public double ResistivityOhmM(double temperatureK) =>
        Resistivity20OhmM * (1 + (AlphaPerK * (Checked.Positive(temperatureK) - ReferenceK)));

    /// <summary>Resistance of a square of a layer at a temperature, ohms.</summary>
    public double SheetResistanceOhm(double thicknessM, double temperatureK) =>
        ResistivityOhmM(temperatureK) / Checked.Positive(thicknessM);
}
