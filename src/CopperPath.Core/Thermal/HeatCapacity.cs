namespace CopperPath.Thermal;

/// <summary>
/// Heat that nodes store: each has the laminate that conducts sideways with it, and the copper of its layer. Parts on the board
/// store heat too; theirs is left out, which makes copper warm up a little faster than it does.
/// </summary>
internal static class HeatCapacity
{
    /// <summary>Capacity of each node without the walls of plated holes, joules per kelvin.</summary>
    public static double[] Of(HeatNetwork network)
    {
        double[] capacity = new double[network.Cells.NodeCount];
        int planes = network.Planes.Count;
        for (int column = 0; column < network.Cells.Count; column++)
        {
            for (int p = 0; p < planes; p++)
            {
                HeatPlane plane = network.Planes[p];
                capacity[(column * planes) + p] = (network.Materials.LaminateJPerM3K * plane.LaminateM * network.BoardAreaM2(column))
                    + (plane.CopperLayer > 0 ? network.Materials.CopperJPerM3K * plane.CopperM * network.CopperAreaM2(column, plane.CopperLayer) : 0);
            }
        }

        return capacity;
    }

    /// <summary>Adds the wall of a plated hole: to each level the length nearest to it.</summary>
    /// <param name="capacity">Capacities to add to.</param>
    /// <param name="network">Levels.</param>
    /// <param name="ends">First and last level.</param>
    /// <param name="parts">Columns and their shares of the wall.</param>
    /// <param name="perM">Joules per kelvin and metre of its length.</param>
    public static void AddWall(
        double[] capacity, HeatNetwork network, (int First, int Last) ends, IReadOnlyList<(int Column, double Share)> parts, double perM)
    {
        int planes = network.Planes.Count;
        for (int p = ends.First; p <= ends.Last; p++)
        {
            double lengthM = ((p > ends.First ? network.Planes[p - 1].GapBelowM : 0) + (p < ends.Last ? network.Planes[p].GapBelowM : 0)) / 2;
            foreach ((int column, double share) in parts)
            {
                capacity[(column * planes) + p] += share * perM * lengthM;
            }
        }
    }
}
