namespace CopperPath.Thermal;

/// <summary>Heat put into the nodes of a grid.</summary>
public sealed class HeatSources(int nodeCount)
{
    /// <summary>Loss of the copper in each node if it were at ambient temperature, watts.</summary>
    public double[] JouleAtAmbientW { get; } = new double[nodeCount];

    /// <summary>Loss of components in each node, watts; it does not depend on temperature here.</summary>
    public double[] ComponentW { get; } = new double[nodeCount];

    /// <summary>Growth of the copper's resistivity per kelvin of rise, as a share of its value at ambient.</summary>
    public double ResistivityGrowthPerK { get; init; }

    public void AddComponent(HeatSpot spot, double powerW)
    {
        foreach ((int node, double share) in spot.Parts)
        {
            ComponentW[node] += share * powerW;
        }
    }
}
