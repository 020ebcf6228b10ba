using CopperPath.Geometry;

namespace CopperPath.Cli.Overlays;

/// <summary>A plated hole, to be marked by a dot in the shade and of the size that its current gives it.</summary>
/// <param name="CentreNm">Centre of the hole.</param>
/// <param name="CurrentA">Current through the barrel, amperes; its magnitude is shown.</param>
/// <param name="IsOverLimit">True to mark the via as over its limit.</param>
public sealed record ViaMark(PointNm CentreNm, double CurrentA, bool IsOverLimit);
