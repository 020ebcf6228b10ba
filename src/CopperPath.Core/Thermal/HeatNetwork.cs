namespace CopperPath.Thermal;

/// <summary>
/// Conduction inside the board as conductances between neighbouring nodes, by finite volumes: along a level through
/// the copper that crosses the line between two cells and through the laminate, from level to level through the
/// laminate, and along the walls of plated holes.
/// </summary>
public sealed class HeatNetwork
{
    /// <summary>Cells less filled than this are rounding, not copper.</summary>
    private const double LeastShare = 1e-9;

    private readonly CopperRaster _board;
    private readonly CopperRaster?[] _copper;

    // Conductance from each node to the next column, the next row and the next level, watts per kelvin.
    private readonly double[] _east;
    private readonly double[] _north;
    private readonly double[] _down;
    private readonly bool[] _isIsothermal;

    /// <param name="grid">Cells and levels.</param>
    /// <param name="board">The board's own outline.</param>
    /// <param name="copper">Copper of each level; null for a level inside the laminate.</param>
    /// <param name="materials">Conductivities.</param>
    public HeatNetwork(HeatGrid grid, CopperRaster board, CopperRaster?[] copper, ThermalMaterials materials)
    {
        Grid = grid;
        Materials = materials;
        (_board, _copper) = (board, copper);
        (_east, _north, _down) = (new double[grid.NodeCount], new double[grid.NodeCount], new double[grid.NodeCount]);
        _isIsothermal = new bool[grid.NodeCount];
        Parallel.For(0, grid.Y.Count, ConnectRow);
    }

    public HeatGrid Grid { get; }

    public ThermalMaterials Materials { get; }

    /// <summary>Area of board in a cell, square metres: what a face has to give heat away with.</summary>
    public double BoardAreaM2(int i, int j) => _board.AreaM2(i, j);

    /// <summary>Area of copper in a cell of a level, square metres.</summary>
    public double CopperAreaM2(int i, int j, int plane) => _copper[plane]?.AreaM2(i, j) ?? 0;

    /// <summary>Adds a conductance between a node and the one below it: the wall of a plated hole.</summary>
    public void AddDown(int node, double conductanceWPerK) => _down[node] += conductanceWPerK;

    /// <summary>
    /// Makes a cell one temperature up to its edges: what is held there, by a heat sink or a clamp, fills the cell, and
    /// only the neighbour's half of the way between the two centres is left to conduct.
    /// </summary>
    public void MakeIsothermal(int node)
    {
        if (_isIsothermal[node])
        {
            return;
        }

        _isIsothermal[node] = true;
        int cell = node / Grid.Planes.Count;
        (int i, int j) = (cell % Grid.X.Count, cell / Grid.X.Count);
        Shorten(_east, Grid.X, i, i - 1, node, -Grid.Planes.Count);
        Shorten(_east, Grid.X, i, i + 1, node, Grid.Planes.Count);
        Shorten(_north, Grid.Y, j, j - 1, node, -Grid.Planes.Count * Grid.X.Count);
        Shorten(_north, Grid.Y, j, j + 1, node, Grid.Planes.Count * Grid.X.Count);
    }

    /// <summary>Heat that conduction brings to each node, watts, for given rises.</summary>
    public double[] InflowW(double[] riseK)
    {
        double[] inflow = new double[riseK.Length];
        (int toEast, int toNorth) = (Grid.Planes.Count, Grid.Planes.Count * Grid.X.Count);
        for (int n = 0; n < riseK.Length; n++)
        {
            Pass(n, n + toEast, _east[n]);
            Pass(n, n + toNorth, _north[n]);
            Pass(n, n + 1, _down[n]);
        }

        return inflow;

        void Pass(int from, int to, double conductance)
        {
            if (conductance > 0)
            {
                double heatW = conductance * (riseK[from] - riseK[to]);
                inflow[to] += heatW;
                inflow[from] -= heatW;
            }
        }
    }

    /// <summary>The equations of conduction between free nodes. A cell beyond the board conducts nowhere and is not free either.</summary>
    internal ColumnMatrix Matrix(bool[] isHeld)
    {
        ColumnMatrix matrix = new(Grid.X.Count, Grid.Y.Count, Grid.Planes.Count);
        Span<(double[] Conductances, double[] Couplings, int Step)> ways =
            [(_down, matrix.Down, 1), (_east, matrix.East, matrix.Planes), (_north, matrix.North, matrix.RowStride)];
        foreach ((double[] conductances, double[] couplings, int step) in ways)
        {
            for (int n = 0; n < isHeld.Length; n++)
            {
                if (conductances[n] > 0)
                {
                    int other = n + step;
                    matrix.Diagonal[n] += conductances[n];
                    matrix.Diagonal[other] += conductances[n];
                    couplings[n] = isHeld[n] || isHeld[other] ? 0 : conductances[n];
                }
            }
        }

        for (int n = 0; n < isHeld.Length; n++)
        {
            matrix.IsFree[n] = !isHeld[n] && matrix.Diagonal[n] > 0;
            matrix.Diagonal[n] = matrix.IsFree[n] ? matrix.Diagonal[n] : 1;
        }

        return matrix;
    }

    private void Shorten(double[] conductances, GridAxis axis, int own, int next, int node, int toNext)
    {
        if (next >= 0 && next < axis.Count && !_isIsothermal[node + toNext])
        {
            conductances[Math.Min(node, node + toNext)] *= (axis.WidthM(own) + axis.WidthM(next)) / axis.WidthM(next);
        }
    }

    private void ConnectRow(int j)
    {
        for (int i = 0; i < Grid.X.Count; i++)
        {
            for (int p = 0; p < Grid.Planes.Count; p++)
            {
                int node = Grid.Node(i, j, p);
                if (i + 1 < Grid.X.Count)
                {
                    double distanceM = Grid.X.CentreM(i + 1) - Grid.X.CentreM(i);
                    double copperM = AreJoined(p, (i, j), (i + 1, j)) ? _copper[p]!.AcrossXM(i + 1, j) : 0;
                    _east[node] = SheetConductance(p, copperM, _board.AcrossXM(i + 1, j), distanceM);
                }

                if (j + 1 < Grid.Y.Count)
                {
                    double distanceM = Grid.Y.CentreM(j + 1) - Grid.Y.CentreM(j);
                    double copperM = AreJoined(p, (i, j), (i, j + 1)) ? _copper[p]!.AcrossYM(i, j + 1) : 0;
                    _north[node] = SheetConductance(p, copperM, _board.AcrossYM(i, j + 1), distanceM);
                }

                if (p + 1 < Grid.Planes.Count)
                {
                    _down[node] = Materials.LaminateThroughWPerMK * BoardAreaM2(i, j) / Grid.Planes[p].GapBelowM;
                }
            }
        }
    }

    private double SheetConductance(int p, double copperM, double boardM, double distanceM) =>
        ((Materials.CopperWPerMK * Grid.Planes[p].CopperM * copperM)
            + (Materials.LaminateInPlaneWPerMK * Grid.Planes[p].LaminateM * boardM)) / distanceM;

    /// <summary>Copper that ends on a grid line covers the line and still leads nowhere.</summary>
    private bool AreJoined(int p, (int I, int J) a, (int I, int J) b) => _copper[p] is { } copper
        && copper.Share(a.I, a.J) > LeastShare && copper.Share(b.I, b.J) > LeastShare;
}
