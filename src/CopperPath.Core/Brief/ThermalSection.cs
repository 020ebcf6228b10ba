using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>How the board is held.</summary>
public enum BoardPosture
{
    /// <summary>Top face up.</summary>
    Horizontal,

    /// <summary>Upright, the ordinate of the files pointing up.</summary>
    Vertical,
}

/// <summary>How the board gets rid of heat, and what else heats it.</summary>
/// <param name="Posture">How it is held.</param>
/// <param name="Top">Face of layer 1.</param>
/// <param name="Bottom">The other face.</param>
/// <param name="Laminate">The insulating material.</param>
/// <param name="CellM">Side of the cells of the solve, metres; null for as fine as the budget of cells allows.</param>
/// <param name="Losses">Heat of components.</param>
/// <param name="Sinks">Places tied to a temperature.</param>
public sealed record ThermalSection(
    BoardPosture Posture,
    FaceSection Top,
    FaceSection Bottom,
    LaminateSection Laminate,
    double? CellM,
    IReadOnlyList<ComponentLoss> Losses,
    IReadOnlyList<SinkPlace> Sinks)
{
    /// <summary>What holds where the brief says nothing: lying in still air.</summary>
    public static ThermalSection Default { get; } = new(
        BoardPosture.Horizontal, FaceSection.Default, FaceSection.Default, LaminateSection.Default, null, [], []);
}

/// <summary>How a face gives heat away.</summary>
/// <param name="FilmWPerM2K">Film coefficient of the air flow, watts per square metre and kelvin; null for still air.</param>
/// <param name="Emissivity">Share of black-body radiation, 0 to 1.</param>
public sealed record FaceSection(double? FilmWPerM2K, double Emissivity)
{
    /// <summary>Still air; solder mask radiates nearly like a black body (0.9, common practice, no source).</summary>
    public static FaceSection Default { get; } = new(null, 0.9);
}

/// <summary>Conductivity of the laminate.</summary>
/// <param name="ThroughWPerMK">Across the board, watts per metre and kelvin.</param>
/// <param name="InPlaneWPerMK">Along the board.</param>
/// <param name="BelowM">Thickness below the last copper layer, metres: the carrier of a board with copper on one face.</param>
public sealed record LaminateSection(double ThroughWPerMK, double InPlaneWPerMK, double BelowM)
{
    /// <summary>FR-4, in the middle of 0.25 to 0.35 and 0.6 to 1.0 W/mK (from memory).</summary>
    public static LaminateSection Default { get; } = new(0.3, 0.8, 0);

    /// <summary>True where the brief states the conductivity across the board.</summary>
    public bool IsThroughStated { get; init; }

    /// <summary>True where it states the one along the board.</summary>
    public bool IsInPlaneStated { get; init; }
}

/// <summary>Heat a component puts into the board.</summary>
/// <param name="Name">How reports call it.</param>
/// <param name="Place">Its pads, or an area on a layer.</param>
/// <param name="PowerW">Watts, not negative.</param>
/// <param name="ToAirKPerW">From the component straight to the air, past the board, kelvin per watt, positive; null where the board takes all its heat.</param>
public sealed record ComponentLoss(string Name, Contact Place, double PowerW, double? ToAirKPerW = null);

/// <summary>A place tied to something of a stated temperature.</summary>
/// <param name="Name">How reports call it.</param>
/// <param name="Place">Pads, or an area on a layer.</param>
/// <param name="TemperatureK">Kelvin; null for ambient.</param>
/// <param name="ResistanceKPerW">From the board to it, kelvin per watt; 0 holds the place itself at the temperature.</param>
/// <param name="Position">Where the brief says so.</param>
public sealed record SinkPlace(string Name, Contact Place, double? TemperatureK, double ResistanceKPerW, SourcePosition Position);
