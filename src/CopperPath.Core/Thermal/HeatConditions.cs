using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>One state of build, surroundings and load under which a board's temperatures are asked for.</summary>
/// <param name="Stack">Thicknesses; the current keeps the pattern it has in the nominal build.</param>
/// <param name="AmbientK">Air and surroundings, kelvin.</param>
public sealed record HeatConditions(Stackup Stack, double AmbientK)
{
    /// <summary>Factor on the films that follow from correlations.</summary>
    public double StillAirScale { get; init; } = 1;

    /// <summary>Factor on the films that are stated.</summary>
    public double StatedFilmScale { get; init; } = 1;

    /// <summary>Factor on all currents.</summary>
    public double CurrentScale { get; init; } = 1;

    /// <summary>The laminate; null for as it is stated for the board.</summary>
    public LaminateSection? Laminate { get; init; }
}

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
