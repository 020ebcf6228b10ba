namespace CopperPath.Thermal;

/// <summary>How a thermal solve ended.</summary>
public enum ThermalStatus
{
    Solved,

    /// <summary>The copper's loss grows faster with temperature than the board can shed it: there is no steady state.</summary>
    Runaway,

    /// <summary>A steady state lies above the range in which materials and laws hold.</summary>
    TooHot,

    /// <summary>Nothing takes heat away: no film, no radiation, no sink.</summary>
    NoWayOut,

    /// <summary>The iteration did not settle; a defect, reported as such.</summary>
    NotConverged,
}

/// <summary>Where the heat of a board comes from and goes to, watts.</summary>
/// <param name="JouleW">Made in copper at its own temperature.</param>
/// <param name="ComponentW">Put in by components.</param>
/// <param name="ConvectedW">Given to the air, top and bottom face.</param>
/// <param name="RadiatedW">Radiated, top and bottom face.</param>
/// <param name="SunkW">Taken by heat sinks and held spots.</param>
/// <param name="FedW">Put in by those of them that are warmer than the board.</param>
public sealed record HeatBalance(
    double JouleW, double ComponentW, (double Top, double Bottom) ConvectedW, (double Top, double Bottom) RadiatedW,
    double SunkW, double FedW)
{
    public double InW => JouleW + ComponentW + FedW;

    public double OutW => ConvectedW.Top + ConvectedW.Bottom + RadiatedW.Top + RadiatedW.Bottom + SunkW;

    /// <summary>|in - out| over in: what the solution leaves unbalanced.</summary>
    public double ErrorRatio => InW == 0 ? 0 : Math.Abs(InW - OutW) / InW;
}

/// <summary>Steady temperatures of a board.</summary>
/// <param name="Status">How the solve ended; the rest means nothing unless Solved.</param>
/// <param name="RiseK">Rise above ambient of each node, kelvin.</param>
/// <param name="Balance">Heat in and out.</param>
/// <param name="FilmTopWPerM2K">Film coefficient of the top face in the solution, convection only.</param>
/// <param name="FilmBottomWPerM2K">The same of the bottom face.</param>
/// <param name="Rounds">Newton steps taken.</param>
public sealed record ThermalResult(
    ThermalStatus Status,
    double[] RiseK,
    HeatBalance Balance,
    double FilmTopWPerM2K,
    double FilmBottomWPerM2K,
    int Rounds)
{
    /// <summary>Still air at the top face; null where a film is stated.</summary>
    public StillAir? StillAirTop { get; init; }

    /// <summary>The same at the bottom face.</summary>
    public StillAir? StillAirBottom { get; init; }

    /// <summary>Why there is no solution, in words; empty when there is one.</summary>
    public string Explanation => Status switch
    {
        ThermalStatus.Solved => "",
        ThermalStatus.Runaway => "thermal runaway: the loss of the copper grows faster with temperature than the board sheds heat",
        ThermalStatus.TooHot => "the steady state lies above 300 °C, beyond what the laminate and the laws used here stand",
        ThermalStatus.NoWayOut => "nothing takes heat away: no film, no radiation, and no heat sink that all of it can reach",
        _ => "the thermal iteration did not settle",
    };
}
