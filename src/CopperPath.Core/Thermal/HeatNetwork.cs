namespace CopperPath.Thermal;

/// <summary>
/// Conduction inside the board as conductances between neighbouring nodes, by finite volumes: along a level through
/// the copper that crosses the line between two columns and through the laminate, from level to level through the
/// laminate, and along the walls of plated holes.
/// </summary>
public sealed class HeatNetwork
{
    /// <summary>Of what couples two narrow columns no more is taken off for a wide one beside them; squares of one material lose a third.</summary>
    private const double MostTakenOff = 0.4;

    private readonly CellCover _board;
    private readonly CellCover?[] _copper;

    // Conductance across each line between columns, level by level, and from each node to the next level, watts per kelvin.
    private readonly double[] _sidewaysWPerK;
    private readonly double[] _down;
    private readonly bool[] _isIsothermal;
    private readonly Lazy<HeatMatrix> _matrix;

    /// <param name="grid">Cells and levels.</param>
    /// <param name="board">The board's own outline.</param>
    /// <param name="copper">Copper of each level; null for a level inside the laminate.</param>
    /// <param name="materials">Conductivities.</param>
    public HeatNetwork(HeatGrid grid, CopperRaster board, CopperRaster?[] copper, ThermalMaterials materials)
        : this(grid, grid.Planes, CellCover.Of(board, grid.X, grid.Y), CoversOf(grid, copper), materials)
    {
    }

    /// <param name="cells">Columns and levels.</param>
    /// <param name="planes">Levels of those columns in the build that is solved.</param>
    /// <param name="board">The board's own outline, one owner for all of it.</param>
    /// <param name="copper">Copper by number of layer; null where there is none.</param>
    /// <param name="materials">Conductivities.</param>
    internal HeatNetwork(
        HeatCells cells, IReadOnlyList<HeatPlane> planes, CellCover board, CellCover?[] copper, ThermalMaterials materials)
    {
        (Cells, Materials, Planes, _board, _copper) = (cells, materials, planes, board, copper);
        _matrix = new(Connected);
        _down = new double[cells.NodeCount];
        _isIsothermal = new bool[cells.NodeCount];
        _sidewaysWPerK = new double[cells.Faces.Count * planes.Count];
        for (int column = 0; column < cells.Count; column++)
        {
            for (int p = 0; p + 1 < planes.Count; p++)
            {
                _down[(column * planes.Count) + p] = materials.LaminateThroughWPerMK * board.AreaM2[column]
                    * Math.Min(Through(column, p), Through(column, p + 1)) / planes[p].GapBelowM;
            }
        }

        Parallel.For(0, cells.Faces.Count, Connect);
        foreach (SharedSide side in cells.SharedSides)
        {
            MeetInTheMiddle(side);
        }
    }

    public HeatCells Cells { get; }

    public ThermalMaterials Materials { get; }

    /// <summary>Area of board in a column, square metres: what a face has to give heat away with.</summary>
    public double BoardAreaM2(int column) => _board.AreaM2[column];

    /// <summary>Area of copper of a layer in a column, square metres.</summary>
    public double CopperAreaM2(int column, int layer) => _copper[layer]?.AreaM2[column] ?? 0;

    /// <summary>The levels, top to bottom.</summary>
    public IReadOnlyList<HeatPlane> Planes { get; }

    /// <summary>Adds a conductance between a node and the one below it: the wall of a plated hole.</summary>
    public void AddDown(int node, double conductanceWPerK) => _down[node] += conductanceWPerK;

    /// <summary>Conductance between a node and the one below it, watts per kelvin.</summary>
    public double DownWPerK(int node) => _down[node];

    /// <summary>
    /// Makes a node one temperature up to its edges: what is held there, by a heat sink or a clamp, fills the cell, and
    /// only the neighbour's half of the way between the two centres is left to conduct.
    /// </summary>
    public void MakeIsothermal(int node) => _isIsothermal[node] = true;

    /// <summary>Number of the net a column belongs to on a layer; -1 for none.</summary>
    internal int OwnerOf(int column, int layer) => _copper[layer]?.Owner[column] ?? -1;

    /// <summary>True when copper of one net joins two columns on a layer.</summary>
    internal bool AreJoined(int layer, int column, int other) =>
        _copper[layer] is { } copper && copper.Owner[column] >= 0 && copper.Owner[column] == copper.Owner[other];

    /// <summary>Heat that conduction brings to each node, watts, for given rises.</summary>
    public double[] InflowW(double[] riseK)
    {
        double[] inflowW = new double[riseK.Length];
        _matrix.Value.Inflow(riseK, inflowW);
        return inflowW;
    }

    /// <summary>The equations of conduction between free nodes. A node beyond the board conducts nowhere and is not free either.</summary>
    internal HeatMatrix Matrix(bool[] isHeld) => _matrix.Value.Between(isHeld);

    private static CellCover?[] CoversOf(HeatGrid grid, CopperRaster?[] copper)
    {
        CellCover?[] covers = new CellCover?[grid.Planes.Max(plane => plane.CopperLayer) + 1];
        for (int p = 0; p < copper.Length; p++)
        {
            if (copper[p] is { } raster)
            {
                covers[grid.Planes[p].CopperLayer] = CellCover.Of(raster, grid.X, grid.Y);
            }
        }

        return covers;
    }

    private HeatMatrix Connected()
    {
        double[] conductances = [.. _sidewaysWPerK];
        for (int k = 0; k < conductances.Length; k++)
        {
            CellFace face = Cells.Faces[k / Planes.Count];
            bool isLowHeld = _isIsothermal[(face.Low * Planes.Count) + (k % Planes.Count)];
            bool isHighHeld = _isIsothermal[(face.High * Planes.Count) + (k % Planes.Count)];
            if (isLowHeld != isHighHeld)
            {
                double lowM = WidthM(face.Low, face.IsAcrossX);
                double highM = WidthM(face.High, face.IsAcrossX);
                conductances[k] *= (lowM + highM) / (isLowHeld ? highM : lowM);
            }
        }

        return HeatMatrix.Of(Cells.Count, Planes.Count, [.. Cells.Faces.Select(face => (face.Low, face.High))], conductances, _down);
    }

    private double WidthM(int column, bool alongX) => alongX ? Cells.BoxOf(column).WidthM : Cells.BoxOf(column).HeightM;

    /// <summary>How much farther the edge of the copper in a column is from its sides than its centre, on average, metres.</summary>
    private double BeyondEdgeM(int column, int layer, bool alongX) =>
        _copper[layer] is { } copper && copper.Owner[column] >= 0
            ? (0.5 - Math.Min(1, copper.AreaM2[column] / Cells.BoxOf(column).AreaM2)) * WidthM(column, alongX) : 0;

    private double Through(int column, int p)
    {
        int layer = Planes[p].CopperLayer;
        if (layer == 0 || _copper[layer] is not { } copper || copper.Owner[column] < 0)
        {
            return 1;
        }

        CellBox box = Cells.BoxOf(column);
        double gap = Math.Max(GapM(p, 1), GapM(p, -1));
        return Math.Min(box.WidthM, box.HeightM) > gap ? 1 : Math.Clamp(copper.AreaM2[column] / box.AreaM2, 0.01, 1);

        double GapM(int p, int step)
        {
            double sum = 0;
            int q = p;
            do
            {
                if (q + step < 0 || q + step >= Planes.Count) { return sum; }
                sum += step > 0 ? Planes[q].GapBelowM : Planes[q - 1].GapBelowM;
                q += step;
            }
            while (Planes[q].CopperLayer == 0);
            return sum;
        }
    }

    /// <summary>
    /// Two narrow columns on one side of a wide one lie beside its centre, one to the left and one to the right, so that heat which passes
    /// along the line would find a way through the wide column that is not there. It is to see the mean of the two, weighted as they are
    /// coupled to it: (a + b) (T - (a T1 + b T2)/(a + b))^2 is less than a (T - T1)^2 + b (T - T2)^2 by a b/(a + b) (T1 - T2)^2. With that,
    /// even gradients pass any pattern of cells exactly (F. Losasso, R. Fedkiw, S. Osher, Computers and Fluids 35, 2006, from memory).
    /// </summary>
    private void MeetInTheMiddle(SharedSide side)
    {
        for (int p = 0; p < Planes.Count; p++)
        {
            double a = _sidewaysWPerK[(side.First * Planes.Count) + p];
            double b = _sidewaysWPerK[(side.Second * Planes.Count) + p];
            ref double between = ref _sidewaysWPerK[(side.Between * Planes.Count) + p];
            between -= Math.Min(a + b > 0 ? a * b / (a + b) : 0, MostTakenOff * between);
        }
    }

    private void Connect(int index)
    {
        CellFace face = Cells.Faces[index];
        double distanceM = (WidthM(face.Low, face.IsAcrossX) + WidthM(face.High, face.IsAcrossX)) / 2;
        double boardM = _board.JoinedM(Cells, face);
        for (int p = 0; p < Planes.Count; p++)
        {
            HeatPlane plane = Planes[p];
            double copperM = plane.CopperLayer > 0 && _copper[plane.CopperLayer] is { } copper ? copper.JoinedM(Cells, face) : 0;
            double laminateM = distanceM;
            if (plane.CopperLayer > 0 && copperM == 0)
            {
                laminateM = Math.Max(distanceM / 4, distanceM + BeyondEdgeM(face.Low, plane.CopperLayer, face.IsAcrossX) + BeyondEdgeM(face.High, plane.CopperLayer, face.IsAcrossX));
            }

            _sidewaysWPerK[(index * Planes.Count) + p] = (Materials.CopperWPerMK * plane.CopperM * copperM / distanceM)
                + (Materials.LaminateInPlaneWPerMK * plane.LaminateM * boardM / laminateM);
        }
    }
}
