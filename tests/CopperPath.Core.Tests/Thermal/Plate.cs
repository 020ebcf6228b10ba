using CopperPath.Brief;
using CopperPath.Geometry;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>Boards made directly for the heat solve. Lengths in metres, copper as rectangles or rings.</summary>
internal sealed class Plate
{
    public const double CopperM = 35e-6;
    public static readonly ThermalMaterials Materials = new(385, 0.3, 0.8);

    public Plate(HeatGrid grid, params CopperRaster?[] copper)
        : this(new HeatNetwork(grid, CopperRaster.Full(grid.X, grid.Y), copper, Materials))
    {
    }

    public Plate(HeatNetwork network)
    {
        Network = network;
        Sources = new HeatSources(network.Cells.NodeCount);
    }

    public HeatGrid Grid => (HeatGrid)Network.Cells;

    public HeatNetwork Network { get; }

    public HeatSources Sources { get; set; }

    /// <summary>One sheet of copper that fills the grid, without laminate.</summary>
    public static Plate Solid(GridAxis x, GridAxis y) =>
        new(new HeatGrid(x, y, [new HeatPlane(1, CopperM, 0, 0)]), CopperRaster.Full(x, y));

    public static Cooling Films(double topWPerM2K, double bottomWPerM2K) => new(
        298.15, BoardPosture.Horizontal, new FaceCooling(topWPerM2K, 0), new FaceCooling(bottomWPerM2K, 0));

    public ThermalResult Solve(Cooling cooling, params HeatSink[] sinks)
    {
        ThermalResult result = ThermalSolver.Solve(Network, Sources, cooling, sinks);
        result.Status.ShouldBe(ThermalStatus.Solved);
        result.Balance.ErrorRatio.ShouldBeLessThan(1e-8);
        return result;
    }

    /// <summary>Holds all cells whose centre meets a condition.</summary>
    public HeatSink Hold(Func<double, double, bool> where, double riseK, int plane = 0)
    {
        List<int> nodes = [];
        for (int j = 0; j < Grid.Y.Count; j++)
        {
            for (int i = 0; i < Grid.X.Count; i++)
            {
                if (where(Grid.X.CentreM(i), Grid.Y.CentreM(j)))
                {
                    nodes.Add(Grid.Node(i, j, plane));
                    Network.MakeIsothermal(nodes[^1]);
                }
            }
        }

        return new HeatSink(new HeatSpot("held", [.. nodes.Select(node => (node, 1.0 / nodes.Count))]), riseK, 0);
    }

    /// <summary>Spreads a loss evenly over all cells of a level.</summary>
    public Plate Heat(double powerPerM2, int plane = 0, double growthPerK = 0)
    {
        Sources = new HeatSources(Grid.NodeCount) { ResistivityGrowthPerK = growthPerK };
        for (int j = 0; j < Grid.Y.Count; j++)
        {
            for (int i = 0; i < Grid.X.Count; i++)
            {
                Sources.JouleAtAmbientW[Grid.Node(i, j, plane)] = powerPerM2 * Grid.CellAreaM2(i, j);
            }
        }

        return this;
    }

    public static PointNm[] Ring(params (double X, double Y)[] corners) =>
        [.. corners.Select(c => new PointNm((long)Math.Round(c.X * 1e9), (long)Math.Round(c.Y * 1e9)))];
}
