namespace CopperPath.Thermal;

/// <summary>The board as cells in the plane times levels through its thickness; one node for each.</summary>
/// <param name="X">Columns.</param>
/// <param name="Y">Rows.</param>
/// <param name="Planes">Levels, top to bottom.</param>
public sealed record HeatGrid(GridAxis X, GridAxis Y, IReadOnlyList<HeatPlane> Planes)
{
    public int NodeCount => X.Count * Y.Count * Planes.Count;

    /// <summary>The levels above one another are neighbours: they are coupled most strongly.</summary>
    public int Node(int i, int j, int plane) => (((j * X.Count) + i) * Planes.Count) + plane;

    /// <summary>Level of a copper layer.</summary>
    public int PlaneOf(int copperLayer)
    {
        for (int p = 0; p < Planes.Count; p++)
        {
            if (Planes[p].CopperLayer == copperLayer)
            {
                return p;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(copperLayer));
    }

    /// <summary>Area of a cell, square metres.</summary>
    public double CellAreaM2(int i, int j) => X.WidthM(i) * Y.WidthM(j);
}
