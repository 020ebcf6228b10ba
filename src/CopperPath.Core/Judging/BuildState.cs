using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>One value of everything that has a range.</summary>
/// <param name="CopperM">Finished thickness of each layer, metres.</param>
/// <param name="PlatingM">Copper on hole walls, metres.</param>
/// <param name="AmbientK">Air around the board, kelvin.</param>
internal sealed record BuildState(IReadOnlyList<double> CopperM, double PlatingM, double AmbientK)
{
    /// <summary>Factor on films that follow from correlations.</summary>
    public double StillAirScale { get; init; } = 1;

    /// <summary>Factor on stated films.</summary>
    public double StatedFilmScale { get; init; } = 1;

    /// <summary>Factors on the laminate's conductivity.</summary>
    public (double Through, double InPlane) LaminateScale { get; init; } = (1, 1);

    /// <summary>Factor on thicknesses of laminate.</summary>
    public double LaminateThicknessScale { get; init; } = 1;

    /// <summary>Factor on all currents.</summary>
    public double CurrentScale { get; init; } = 1;

    public static BuildState Nominal(ReviewBrief brief, Stackup stack) => new(stack.ThicknessM, stack.PlatingM, brief.AmbientK);

    /// <summary>The stack as built so, at the copper's temperature under this ambient.</summary>
    public Stackup StackOf(ReviewBrief brief, Stackup nominal) => nominal with
    {
        ThicknessM = CopperM,
        DielectricM = [.. nominal.DielectricM.Select(thicknessM => LaminateThicknessScale * thicknessM)],
        PlatingM = PlatingM,
        WallOutsideToolM = nominal.WallOutsideToolM == 0 ? 0 : PlatingM,
        ResistivityOhmM = CopperMaterial.Iacs.ResistivityOhmM(ConductorK(brief)),
    };

    /// <summary>The copper's temperature for resistance, kelvin: it moves with ambient unless it is stated.</summary>
    public double ConductorK(ReviewBrief brief) => brief.ConductorFollowsAmbient ? brief.ConductorK + AmbientK - brief.AmbientK : brief.ConductorK;

    public HeatConditions ConditionsOf(ReviewBrief brief, Stackup nominal)
    {
        LaminateSection laminate = brief.Thermal.Laminate;
        return new HeatConditions(StackOf(brief, nominal), AmbientK)
        {
            StillAirScale = StillAirScale,
            StatedFilmScale = StatedFilmScale,
            CurrentScale = CurrentScale,
            Laminate = laminate with
            {
                ThroughWPerMK = LaminateScale.Through * laminate.ThroughWPerMK,
                InPlaneWPerMK = LaminateScale.InPlane * laminate.InPlaneWPerMK,
                BelowM = LaminateThicknessScale * laminate.BelowM,
            },
        };
    }
}
