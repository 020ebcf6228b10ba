namespace CopperPath.Thermal;

/// <summary>What the ends of a thermal solve are called in machine output.</summary>
public static class ThermalStatusWords
{
    public static string Word(this ThermalStatus status) => status switch
    {
        ThermalStatus.Solved => "solved",
        ThermalStatus.Runaway => "runaway",
        ThermalStatus.TooHot => "too hot",
        ThermalStatus.NoWayOut => "no way out",
        ThermalStatus.NotConverged => "not converged",
        _ => throw new ArgumentOutOfRangeException(nameof(status)),
    };
}
