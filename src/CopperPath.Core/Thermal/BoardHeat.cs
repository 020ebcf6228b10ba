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
    private readonly bool _hasOtherHeat;

    private BoardHeat(HeatModel first, bool hasOtherHeat, OwnRise onFirst, OwnRise own) =>
        (_first, _hasOtherHeat, OnFirst, Own) = (first, hasOtherHeat, onFirst, own);

    /// <summary>The board's temperatures with all its heat.</summary>
    public TemperatureField Field => Own.All;

    /// <summary>What the copper's own current adds to them.</summary>
    public OwnRise Own { get; }

    /// <summary>The same on the grid that <see cref="Under"/> uses.</summary>
    public OwnRise OnFirst { get; }

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
        bool hasOtherHeat = section.Losses.Any(loss => loss.PowerW > 0) || section.Sinks.Any(sink => sink.TemperatureK is { } sunkK && sunkK != ambientK);
        OwnRise onFirst = OwnOn(first, field);
        if (section.CellM is not null || field.Result.Status != ThermalStatus.Solved)
        {
            return new BoardHeat(first, hasOtherHeat, onFirst, onFirst);
        }

        (GridAxis x, GridAxis y) = GridFitting.Fit(field, CellWithin(bounds, planes, EvenNodes), MostNodes);
        HeatModel fitted = On(x, y);
        return new BoardHeat(first, hasOtherHeat, onFirst, OwnOn(fitted, fitted.Solve(nominal, field)));

        OwnRise OwnOn(HeatModel model, TemperatureField all) =>
            new(all, hasOtherHeat ? model.Solve(nominal with { CurrentScale = 0 }, all) : null);

        HeatModel On(GridAxis x, GridAxis y) => new(x, y, nets, profile, stack, section, stretches);
    }

    /// <summary>The board under other conditions, on the first, even grid: for what they change, not for the peaks themselves.</summary>
    public OwnRise Under(HeatConditions conditions) => new(
        _first.Solve(conditions, OnFirst.All),
        _hasOtherHeat ? _first.Solve(conditions with { CurrentScale = 0 }, OnFirst.WithoutCopperLoss) : null);

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
