using CopperPath.Electrical;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>The solved rises as a field on each copper layer.</summary>
/// <param name="Network">Cells and copper.</param>
/// <param name="Result">A solved board.</param>
public sealed record TemperatureField(HeatNetwork Network, ThermalResult Result)
{
    /// <summary>
    /// Rise of the copper of a layer at a point, kelvin: that of the cell, and from its centre on as it changes towards the neighbours on
    /// the point's sides that copper joins it with; in a cell without copper, towards any neighbours.
    /// </summary>
    public double RiseK(int layer, double xM, double yM)
    {
        HeatCells cells = Network.Cells;
        int column = cells.ColumnAt(xM, yM);
        CellBox box = cells.BoxOf(column);
        double own = Result.RiseK[cells.NodeOn(layer, column)];
        bool isCopper = Network.CopperAreaM2(column, layer) > 0;
        double offX = Math.Clamp(xM, box.WestM, box.EastM) - box.CentreXM;
        double offY = Math.Clamp(yM, box.SouthM, box.NorthM) - box.CentreYM;
        return own
            + Change(offX, cells.ColumnAt(box.CentreXM + (Math.Sign(offX) * box.WidthM * JustBeyond), yM), alongX: true)
            + Change(offY, cells.ColumnAt(xM, box.CentreYM + (Math.Sign(offY) * box.HeightM * JustBeyond)), alongX: false);

        double Change(double off, int next, bool alongX)
        {
            if (off == 0 || next == column || (isCopper && !Network.AreJoined(layer, column, next)))
            {
                return 0;
            }

            CellBox other = cells.BoxOf(next);
            double wayM = alongX ? other.CentreXM - box.CentreXM : other.CentreYM - box.CentreYM;
            return off / wayM * (Result.RiseK[cells.NodeOn(layer, next)] - own);
        }
    }

    /// <summary>Just over half of a cell away from its centre lies its neighbour.</summary>
    private const double JustBeyond = 0.5001;

    /// <summary>Largest rise along a plated hole, mean over its wall at each depth, kelvin.</summary>
    public double HottestOfHoleK(Barrel barrel, Stackup stack)
    {
        if (Network.Cells is not TreeCells cells)
        {
            throw new InvalidOperationException("holes are in columns of a tree only");
        }

        IReadOnlyList<(int Column, double Share)> wall = BarrelWall.SharesOf(cells, barrel, stack);
        int first = cells.PlaneOf(barrel.Layers[0]);
        return Enumerable.Range(first, cells.PlaneOf(barrel.Layers[^1]) - first + 1)
            .Max(p => wall.Sum(part => part.Share * Result.RiseK[(part.Column * cells.Planes.Count) + p]));
    }

    /// <summary>The rises of the columns that hold the centres of another grid's columns, kelvin, at like depths.</summary>
    internal double[] At(HeatCells other)
    {
        HeatCells own = Network.Cells;
        int[] planes = NearestPlanes(other.Planes, own.Planes);
        double[] rises = new double[other.NodeCount];
        for (int column = 0; column < other.Count; column++)
        {
            CellBox box = other.BoxOf(column);
            int from = own.ColumnAt(box.CentreXM, box.CentreYM) * own.Planes.Count;
            for (int p = 0; p < planes.Length; p++)
            {
                rises[(column * planes.Length) + p] = Result.RiseK[from + planes[p]];
            }
        }

        return rises;
    }

    /// <summary>For each level the one of others of the same board at its depth, or the next one above it.</summary>
    private static int[] NearestPlanes(IReadOnlyList<HeatPlane> planes, IReadOnlyList<HeatPlane> others)
    {
        const double Rounding = 1e-9;
        int[] nearest = new int[planes.Count];
        double depthM = 0;
        double otherM = 0;
        for (int p = 0, other = 0; p < nearest.Length; depthM += planes[p].GapBelowM, p++)
        {
            while (other + 1 < others.Count && otherM + others[other].GapBelowM <= depthM + Rounding)
            {
                otherM += others[other].GapBelowM;
                other++;
            }

            nearest[p] = other;
        }

        return nearest;
    }

    /// <summary>Mean and largest rise along a cut, kelvin.</summary>
    public (double MeanK, double PeakK) RiseAlong(Section section)
    {
        const int Samples = 9;
        double sum = 0;
        double peak = double.NegativeInfinity;
        for (int k = 0; k < Samples; k++)
        {
            double at = (k + 0.5) / Samples;
            double rise = RiseK(section.Layer,
                section.FromXM + (at * (section.ToXM - section.FromXM)), section.FromYM + (at * (section.ToYM - section.FromYM)));
            sum += rise;
            peak = Math.Max(peak, rise);
        }

        return (sum / Samples, peak);
    }

    /// <summary>What a sentence about a screening value adds: the rise solved for this board; nothing where none was.</summary>
    public string Beside(int layer, double xM, double yM) => Result.Status == ThermalStatus.Solved
        ? $", this board's own temperatures {QuantityText.TemperatureDifference(RiseK(layer, xM, yM))}" : "";

    /// <summary>Rises at the vertices of a mesh.</summary>
    public double[] AtVertices(SheetField sheet) =>
        [.. Enumerable.Range(0, sheet.Mesh.VertexCount).Select(v => RiseK(sheet.Layer, sheet.Mesh.XM[v], sheet.Mesh.YM[v]))];
}
