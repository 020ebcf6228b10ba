using CopperPath.Brief;

namespace CopperPath.Thermal;

/// <summary>How one face gives heat away.</summary>
/// <param name="FilmWPerM2K">
/// Film coefficient that stands for the stated air flow, watts per square metre and kelvin; null for natural convection.
/// </param>
/// <param name="Emissivity">Share of black-body radiation, 0 to 1; the surroundings are black and as warm as the air.</param>
public sealed record FaceCooling(double? FilmWPerM2K, double Emissivity);

/// <summary>How the board gives heat away.</summary>
/// <param name="AmbientK">Air and surroundings, kelvin.</param>
/// <param name="Posture">How the board is held.</param>
/// <param name="Top">Face of layer 1.</param>
/// <param name="Bottom">The other face.</param>
public sealed record Cooling(double AmbientK, BoardPosture Posture, FaceCooling Top, FaceCooling Bottom)
{
    /// <summary>Scale on films of natural convection, 1 as their correlations say, which are good to some tenths only.</summary>
    public double StillAirScale { get; init; } = 1;

    /// <summary>Scale on stated films.</summary>
    public double StatedFilmScale { get; init; } = 1;

    /// <summary>Size of the board for still air, from its outline; null to go by the extent of the cells.</summary>
    public PlateSize? Plate { get; init; }
}
