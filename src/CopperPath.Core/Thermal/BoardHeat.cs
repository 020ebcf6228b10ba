using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// A reviewed board -> its temperatures: all copper of all nets spreads heat, the copper that was solved makes it.
/// </summary>
public sealed class BoardHeat
{
    // Nodes of a board without a stated cell: of the even grid that shows where temperature changes, of the even grid
    // that is fine enough where it does not, and of the grid fitted to both.
    private const int FirstNodes = 30_000;
    private const int EvenNodes = 60_000;
    private const int MostNodes = 130_000;

    private const double FinestM = 0.25e-3;
    private const double CoarsestM = 2e-3;

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
        int planes = HeatModel.PlanesOf(stack, section).Count;
        double firstM = section.CellM ?? CellWithin(bounds, planes, FirstNodes);
        HeatModel first = On(
            GridAxis.Uniform(Units.MetresFromNm(bounds.MinX), Units.MetresFromNm(bounds.MaxX), firstM),
            GridAxis.Uniform(Units.MetresFromNm(bounds.MinY), Units.MetresFromNm(bounds.MaxY), firstM));
        TemperatureField field = first.Solve(nominal);
        if (section.CellM is not null || field.Result.Status != ThermalStatus.Solved)
        {
            return new BoardHeat(first, field, field);
        }

        (GridAxis x, GridAxis y) = GridFitting.Fit(field, CellWithin(bounds, planes, EvenNodes), MostNodes);
        return new BoardHeat(first, field, On(x, y).Solve(nominal, field));

        HeatModel On(GridAxis x, GridAxis y) => new(x, y, nets, profile, stack, section, stretches);
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

    private static double CellWithin(BoxNm bounds, int planes, int nodes)
    {
        double areaM2 = Units.MetresFromNm(bounds.WidthNm) * Units.MetresFromNm(bounds.HeightNm);
        return Math.Clamp(Math.Sqrt(areaM2 * planes / nodes), FinestM, CoarsestM);
    }
}
