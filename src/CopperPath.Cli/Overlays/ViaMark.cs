using CopperPath.Geometry;

namespace CopperPath.Cli.Overlays;

/// <summary>A plated hole to be ringed in the shade of its current.</summary>
/// <param name="CentreNm">Centre of the hole.</param>
/// <param name="DiameterNm">Diameter of the ring to draw (hole or pad), nanometres.</param>
/// <param name="CurrentA">Current through the barrel, amperes; its magnitude is shown.</param>
/// <param name="IsOverLimit">True to mark the via as over its limit.</param>
public sealed record ViaMark(PointNm CentreNm, long DiameterNm, double CurrentA, bool IsOverLimit);
