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
    private readonly HeatScene _scene;
    private readonly HeatConditions _nominal;
    private readonly IReadOnlyList<HeatModel> _models;
    private readonly HeatModel _widest;
    private readonly HeatModel _first;
    private readonly bool _hasOtherHeat;

    private BoardHeat(
        HeatScene scene, HeatConditions nominal, HeatModel widest, IReadOnlyList<HeatModel> models, HeatModel first, OwnRise onFirst, OwnRise own)
    {
        (_scene, _nominal, _widest, _models, _first, OnFirst, Own) = (scene, nominal, widest, models, first, onFirst, own);
        _hasOtherHeat = scene.HasOtherHeat(nominal.AmbientK);
    }

    /// <summary>The board's temperatures with all its heat.</summary>
    public TemperatureField Field => Own.All;

    /// <summary>What the copper's own current adds to them.</summary>
    public OwnRise Own { get; }

    /// <summary>The same on the cells that <see cref="Under"/> uses.</summary>
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
        HeatScene scene = new(nets, profile, bounds, stack, section, stretches);
        (HeatModel widest, IReadOnlyList<HeatModel> models, OwnRise own) = section.CellM is { } cellM
            ? RefinedHeat.SolveEven(scene, nominal, cellM) : RefinedHeat.Solve(scene, nominal);

        // The cells before the last halving are many times fewer.
        return section.CellM is null && own.Coarser is { } coarser
            ? new BoardHeat(scene, nominal, widest, models, models[^2], coarser, own) : new BoardHeat(scene, nominal, widest, models, models[^1], own, own);
    }

    /// <summary>The board through a load profile, by the curves of its stretches.</summary>
    public LoadedHeat Through(LoadProfile profile) => HeatOfProfile.Solve(_scene, new SteadyHeat(_models, Own), _nominal, new LoadCase(
        [.. _scene.Stretches.Select(stretch => stretch.Load)], profile.Whole, profile.PartsExponent, profile.DurationS, profile.IsPeriodic, profile.Start));

    /// <summary>The warm board through a short overload of one stretch, everything else as stated.</summary>
    /// <param name="stretch">The stretch.</param>
    /// <param name="factor">Its current over what is stated.</param>
    /// <param name="timeS">How long, seconds.</param>
    public LoadedHeat Through(HeatingStretch stretch, double factor, double timeS)
    {
        LoadCurve overload = new([new LoadPoint(0, 1), new LoadPoint(0, factor)]);
        return HeatOfProfile.Solve(_scene, new SteadyHeat(_models, Own), _nominal, new LoadCase(
            [.. _scene.Stretches.Select(other => ReferenceEquals(other, stretch) ? overload : null)], null, null, timeS, false, LoadStart.Steady));
    }

    /// <summary>The stretches that heat it.</summary>
    public IReadOnlyList<HeatingStretch> Stretches => _scene.Stretches;

    /// <summary>The board under other conditions, on the cells before the last halving: for what they change, not for the peaks themselves.</summary>
    public OwnRise Under(HeatConditions conditions) => Solve(_first, conditions, OnFirst);

    /// <summary>The same on the cells the refinement began with, a few thousand: for which way a change goes and about how far.</summary>
    /// <param name="conditions">Build, surroundings and load.</param>
    /// <param name="like">A solution to start from, on any cells.</param>
    public OwnRise RoughlyUnder(HeatConditions conditions, OwnRise? like = null) => Solve(_widest, conditions, like ?? OnFirst);

    private OwnRise Solve(HeatModel model, HeatConditions conditions, OwnRise like)
    {
        TemperatureField? all = null;
        TemperatureField? without = null;
        Parallel.Invoke(
            () => all = model.Solve(conditions, like.All, RefinedHeat.Tolerance),
            () => without = _hasOtherHeat ? model.Solve(conditions with { CurrentScale = 0 }, like.WithoutCopperLoss, RefinedHeat.Tolerance) : null);
        return new OwnRise(all!, without);
    }

    /// <summary>Conductivities as the brief states them.</summary>
    public static ThermalMaterials MaterialsOf(LaminateSection laminate) => ThermalMaterials.CopperOnFr4 with
    {
        LaminateThroughWPerMK = laminate.ThroughWPerMK,
        LaminateInPlaneWPerMK = laminate.InPlaneWPerMK,
    };

    /// <summary>Cooling as the brief states it.</summary>
    public static Cooling CoolingOf(ThermalSection section, double ambientK) =>
        new(ambientK, section.Posture, FaceOf(section.Top), FaceOf(section.Bottom));

    private static FaceCooling FaceOf(FaceSection face) => new(face.FilmWPerM2K, face.Emissivity);
}
