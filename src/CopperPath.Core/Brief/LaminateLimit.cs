using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>What a laminate stands for years, where the brief does not say.</summary>
internal static class LaminateLimit
{
    /// <summary>
    /// Maximum operating temperature of many FR-4 laminates, kelvin (UL 796 lists it per laminate; the figure is from
    /// memory). A brief should state the laminate's own.
    /// </summary>
    public const double OperatingK = Units.ZeroCelsiusK + 130;
}
