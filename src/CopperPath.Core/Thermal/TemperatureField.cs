using CopperPath.Electrical;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>The solved rises as a field on each copper layer.</summary>
/// <param name="Network">Grid and copper.</param>
/// <param name="Result">A solved board.</param>
public sealed record TemperatureField(HeatNetwork Network, ThermalResult Result)
{
    /// <summary>
    /// Rise of the copper of a layer at a point, kelvin: linear between the centres of the four nearest cells, of which
    /// those without copper do not count while any has some.
    /// </summary>
    public double RiseK(int layer, double xM, double yM)
    {
        HeatGrid grid = Network.Grid;
        int plane = grid.PlaneOf(layer);
        (int i, double partX) = Between(grid.X, xM);
        (int j, double partY) = Between(grid.Y, yM);
        double weights = 0;
        double weighted = 0;
        double plain = 0;
        for (int corner = 0; corner < 4; corner++)
        {
            int ci = Math.Min(i + (corner & 1), grid.X.Count - 1);
            int cj = Math.Min(j + (corner >> 1), grid.Y.Count - 1);
            double share = ((corner & 1) == 1 ? partX : 1 - partX) * (corner >> 1 == 1 ? partY : 1 - partY);
            double rise = Result.RiseK[grid.Node(ci, cj, plane)];
            double weight = share * Network.CopperAreaM2(ci, cj, plane);
            plain += share * rise;
            weights += weight;
            weighted += weight * rise;
        }

        return weights > 0 ? weighted / weights : plain;
    }

    /// <summary>The rises of the cells that hold the centres of another grid's cells, kelvin; the levels are the same.</summary>
    internal double[] At(HeatGrid other)
    {
        HeatGrid grid = Network.Grid;
        int[] columns = [.. Enumerable.Range(0, other.X.Count).Select(i => grid.X.CellAt(other.X.CentreM(i)))];
        double[] rises = new double[other.NodeCount];
        for (int j = 0; j < other.Y.Count; j++)
        {
            int row = grid.Y.CellAt(other.Y.CentreM(j));
            for (int i = 0; i < columns.Length; i++)
            {
                Result.RiseK.AsSpan(grid.Node(columns[i], row, 0), other.Planes.Count).CopyTo(rises.AsSpan(other.Node(i, j, 0)));
            }
        }

        return rises;
    }

    /// <summary>Largest rise along a plated hole, mean over its cells on each level, kelvin.</summary>
    public double HottestOfHoleK(Barrel barrel)
    {
        HeatGrid grid = Network.Grid;
        return Enumerable.Range(grid.PlaneOf(barrel.Layers[0]), grid.PlaneOf(barrel.Layers[^1]) - grid.PlaneOf(barrel.Layers[0]) + 1)
            .Max(p => CellShares.Of(grid, p, [barrel.Outline]).Sum(part => part.Share * Result.RiseK[part.Node]));
    }

    /// <summary>Rises at the vertices of a mesh.</summary>
    public double[] AtVertices(SheetField sheet) =>
        [.. Enumerable.Range(0, sheet.Mesh.VertexCount).Select(v => RiseK(sheet.Layer, sheet.Mesh.XM[v], sheet.Mesh.YM[v]))];

    /// <summary>The cell below a coordinate by centres, and how far on to the next, 0 to 1.</summary>
    private static (int Cell, double Part) Between(GridAxis axis, double positionM)
    {
        int cell = axis.CellAt(positionM);
        if (positionM < axis.CentreM(cell))
        {
            cell = Math.Max(0, cell - 1);
        }

        return cell + 1 >= axis.Count || positionM <= axis.CentreM(cell) ? (cell, 0)
            : (cell, Math.Min(1, (positionM - axis.CentreM(cell)) / (axis.CentreM(cell + 1) - axis.CentreM(cell))));
    }
}
