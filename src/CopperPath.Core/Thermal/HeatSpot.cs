namespace CopperPath.Thermal;

/// <summary>Nodes that share something in given parts: a component's loss, a heat sink, the wall of a hole.</summary>
/// <param name="Name">How reports call it.</param>
/// <param name="Parts">Nodes and their shares; the shares add to 1.</param>
public sealed record HeatSpot(string Name, IReadOnlyList<(int Node, double Share)> Parts);

/// <summary>A spot tied to something of a stated temperature.</summary>
/// <param name="Spot">Where.</param>
/// <param name="RiseK">Temperature of the sink above ambient, kelvin.</param>
/// <param name="ResistanceKPerW">From the spot to the sink, kelvin per watt; 0 holds the spot itself at that temperature.</param>
public sealed record HeatSink(HeatSpot Spot, double RiseK, double ResistanceKPerW);
