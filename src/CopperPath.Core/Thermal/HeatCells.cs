namespace CopperPath.Thermal;

/// <summary>A stretch of line that parts two columns of cells.</summary>
/// <param name="Low">The column west or south of it.</param>
/// <param name="High">The column east or north of it.</param>
/// <param name="IsAcrossX">True where heat crosses it along x.</param>
internal readonly record struct CellFace(int Low, int High, bool IsAcrossX);

/// <summary>A side of a wide column with two narrow ones on it, by the numbers of three stretches of line.</summary>
/// <param name="First">Between the wide column and one of the narrow ones.</param>
/// <param name="Second">Between the wide column and the other.</param>
/// <param name="Between">Between the two narrow ones.</param>
internal readonly record struct SharedSide(int First, int Second, int Between);

/// <summary>
/// The board as columns of cells: a rectangle in the plane each, with the same levels through the thickness in all, one node for each
/// level. A stretch of line between two columns of different width is a whole side of the narrower one.
/// </summary>
public abstract class HeatCells
{
    /// <param name="planes">Levels, top to bottom.</param>
    protected HeatCells(IReadOnlyList<HeatPlane> planes)
    {
        Planes = planes;
        _planeOfLayer = new int[planes.Max(plane => plane.CopperLayer) + 1];
        for (int p = 0; p < planes.Count; p++)
        {
            _planeOfLayer[planes[p].CopperLayer] = p;
        }
    }

    private readonly int[] _planeOfLayer;

    /// <summary>Levels, top to bottom.</summary>
    public IReadOnlyList<HeatPlane> Planes { get; }

    /// <summary>Number of columns.</summary>
    public abstract int Count { get; }

    /// <summary>Number of nodes; those of a column follow one another from the top.</summary>
    public int NodeCount => Count * Planes.Count;

    /// <summary>Narrowest side of a column, metres.</summary>
    public double NarrowestM => Enumerable.Range(0, Count).Min(column => Math.Min(BoxOf(column).WidthM, BoxOf(column).HeightM));

    internal abstract IReadOnlyList<CellFace> Faces { get; }

    /// <summary>The sides of columns that two narrower ones share.</summary>
    internal virtual IReadOnlyList<SharedSide> SharedSides => [];

    /// <summary>Place of a column.</summary>
    public abstract CellBox BoxOf(int column);

    /// <summary>The column a point lies in; beyond the board, one at its edge.</summary>
    public abstract int ColumnAt(double xM, double yM);

    /// <summary>Level of a copper layer.</summary>
    public int PlaneOf(int copperLayer) => _planeOfLayer[copperLayer];

    /// <summary>Node of a column on a copper layer.</summary>
    public int NodeOn(int layer, int column) => (column * Planes.Count) + _planeOfLayer[layer];

    /// <summary>Ways to gather columns into wider ones, the first of these columns, each next one of those before.</summary>
    internal abstract IEnumerable<CellGroups> Coarsenings();
}

/// <summary>A rectangle, metres.</summary>
public readonly record struct CellBox(double WestM, double SouthM, double EastM, double NorthM)
{
    public double WidthM => EastM - WestM;

    public double HeightM => NorthM - SouthM;

    public double AreaM2 => WidthM * HeightM;

    public double CentreXM => (WestM + EastM) / 2;

    public double CentreYM => (SouthM + NorthM) / 2;

    public CellBox Around(CellBox other) => new(
        Math.Min(WestM, other.WestM), Math.Min(SouthM, other.SouthM), Math.Max(EastM, other.EastM), Math.Max(NorthM, other.NorthM));
}

/// <summary>Columns gathered into wider ones.</summary>
/// <param name="GroupOf">Wider column of each.</param>
/// <param name="Boxes">Places of the wider columns.</param>
internal sealed record CellGroups(int[] GroupOf, CellBox[] Boxes);
