namespace CopperPath.Thermal;

/// <summary>Thermal conductivities of the board, watts per metre and kelvin.</summary>
/// <param name="CopperWPerMK">Copper; 385 to 401 in handbooks (from memory).</param>
/// <param name="LaminateThroughWPerMK">Laminate across the board; FR-4 0.25 to 0.35 (from memory).</param>
/// <param name="LaminateInPlaneWPerMK">Laminate along the board, where the glass conducts; FR-4 0.6 to 1.0 (from memory).</param>
public sealed record ThermalMaterials(double CopperWPerMK, double LaminateThroughWPerMK, double LaminateInPlaneWPerMK)
{
    /// <summary>Copper and FR-4 in the middle of their ranges, from memory.</summary>
    public static ThermalMaterials CopperOnFr4 { get; } = new(385, 0.3, 0.8);

    /// <summary>Heat capacity of copper, joules per cubic metre and kelvin: 8960 kg/m3 times 385 J/kgK, handbook values, from memory.</summary>
    public double CopperJPerM3K { get; init; } = 8960 * 385;

    /// <summary>The same of the laminate: 1850 kg/m3 times 1100 J/kgK, FR-4 at the temperatures boards have, from memory.</summary>
    public double LaminateJPerM3K { get; init; } = 1850 * 1100;
}
