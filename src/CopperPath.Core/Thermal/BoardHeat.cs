using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>
/// A reviewed board -> its temperatures: all copper of all nets spreads heat, the copper that was solved makes it.
/// </summary>
public sealed class BoardHeat
{
    private readonly HeatModel _first;

    private BoardHeat(HeatModel first, TemperatureField firstField, TemperatureField field) =>
        (_first, FirstField, Field) = (first, firstField, field);

    /// <summary>The board's temperatures.</summary>
    public TemperatureField Field { get; }

    /// <summary>Those on the grid that <see cref="Under"/> uses.</summary>
    public TemperatureField FirstField { get; }

    /// <param name="nets">Copper and plated holes.</param>
    /// <param name="profile">Board outline; empty where none was read, and the board then fills the extent of its copper.</param>
    /// <param name="bounds">Extent of the board.</param>
    /// <param name="stack">Thicknesses and the resistivity of the electrical solve.</param>
    /// <param name="section">Cooling, materials, components.</param>
    /// <param name="ambientK">Air and surroundings.</param>
    /// <param name="stretches">Solved stretches.</param>
    public static BoardHeat Solve(
        NetList nets, IReadOnlyList<PolygonNm> profile, BoxNm bounds, Stackup stack, ThermalSection section, double ambientK,
        IReadOnlyList<HeatingStretch> stretches)
    {
        HeatConditions nominal = new(stack, ambientK);
        HeatScene scene = new(nets, profile, bounds, stack, section, stretches);
        (HeatModel model, TemperatureField field) = section.CellM is { } cellM
            ? RefinedHeat.SolveEven(scene, nominal, cellM) : RefinedHeat.Solve(scene, nominal);

        // The cells before the last halving are many times fewer.
        return new BoardHeat(model, section.CellM is null ? field.Coarser ?? field : field, field);
    }

    /// <summary>The board under other conditions, on the first, even grid: for what they change, not for the peaks themselves.</summary>
    public TemperatureField Under(HeatConditions conditions) => _first.Solve(conditions, FirstField);

    /// <summary>Conductivities as the brief states them.</summary>
    public static ThermalMaterials MaterialsOf(ThermalSection section) => ThermalMaterials.CopperOnFr4 with
    {
        LaminateThroughWPerMK = section.Laminate.ThroughWPerMK,
        LaminateInPlaneWPerMK = section.Laminate.InPlaneWPerMK,
    };

    /// <summary>Cooling as the brief states it.</summary>
    public static Cooling CoolingOf(ThermalSection section, double ambientK) =>
        new(ambientK, section.Posture, FaceOf(section.Top), FaceOf(section.Bottom));

    private static FaceCooling FaceOf(FaceSection face) => new(face.FilmWPerM2K, face.Emissivity);
}
