using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>One state of build, surroundings and load under which a board's temperatures are asked for.</summary>
/// <param name="Stack">Thicknesses; the current keeps the pattern it has in the nominal build.</param>
/// <param name="AmbientK">Air and surroundings, kelvin.</param>
/// <param name="FilmScale">Factor on both film coefficients.</param>
/// <param name="CurrentScale">Factor on all currents.</param>
public sealed record HeatConditions(Stackup Stack, double AmbientK, double FilmScale = 1, double CurrentScale = 1);

/// <summary>A solved stretch of copper as a source of heat.</summary>
/// <param name="Conduction">Its currents.</param>
/// <param name="Share">Share of its loss that no other stretch of the same net makes already, 0 to 1.</param>
public sealed record HeatingStretch(ConductionResult Conduction, double Share = 1)
{
    /// <summary>Its net, all of whose copper is judged with it; null where only the solved copper is.</summary>
    public Net? Net { get; init; }

    /// <summary>Its current against time, as a factor on what was solved; null where that flows for ever.</summary>
    public LoadCurve? Load { get; init; }

    /// <summary>Word of the alternatives of its net of which one flows at a time; null where it always flows.</summary>
    public string? Alternative { get; init; }
}
