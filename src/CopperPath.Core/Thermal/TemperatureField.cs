using CopperPath.Electrical;
using CopperPath.Nets;

namespace CopperPath.Thermal;

/// <summary>The solved rises as a field on each copper layer.</summary>
/// <param name="Network">Cells and copper.</param>
/// <param name="Result">A solved board.</param>
public sealed record TemperatureField(HeatNetwork Network, ThermalResult Result)
{
    /// <summary>The solution on wider cells that this one is held against; null when there is none.</summary>
    public TemperatureField? Coarser { get; init; }

    /// <summary>What was seen through or taken for granted about the board, in words.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>
    /// How far a value read from the field may be off for the width of its cells (<see cref="CellEstimate"/>). Infinite where there is
    /// nothing to hold it against.
    /// </summary>
    /// <param name="reading">The value, from any solution of the same board.</param>
    public double EstimateK(Func<TemperatureField, double> reading) => Coarser is null ? double.PositiveInfinity
        : CellEstimate.Of(reading(this), reading(Coarser), Coarser.Coarser is { } coarsest ? reading(coarsest) : null);

    /// <summary>The hottest place of the whole board, copper and laminate.</summary>
    public HottestPlace Hottest()
    {
        double[] rises = Result.RiseK;
        int node = 0;
        for (int n = 1; n < rises.Length; n++)
        {
            node = rises[n] > rises[node] ? n : node;
        }

        int planes = Network.Cells.Planes.Count;
        CellBox box = Network.Cells.BoxOf(node / planes);
        int layer = 1;
        for (int p = 0; p <= node % planes; p++)
        {
            layer = Math.Max(layer, Network.Cells.Planes[p].CopperLayer);
        }

        return new HottestPlace(rises[node], EstimateK(at => at.Result.RiseK.Max()), layer, box.CentreXM, box.CentreYM);
    }

    /// <summary>
    /// Rise of the copper of a layer at a point, kelvin: that of the cell, and from its centre on as it changes towards the neighbours on
    /// the point's sides that copper joins it with; in a cell without copper, towards any neighbours.
    /// </summary>
    /// <param name="layer">Layer number, 1 = top.</param>
    /// <param name="xM">Place, metres.</param>
    /// <param name="yM">Place, metres.</param>
    /// <param name="net">
    /// Net whose copper is meant: at its edge, where a cell belongs to another net, the nearest neighbour that belongs to this one is read.
    /// Null for whatever copper there is.
    /// </param>
    public double RiseK(int layer, double xM, double yM, Net? net = null)
    {
        HeatCells cells = Network.Cells;
        int column = net is not null && Owners is not null && Owners.TryGetValue(net, out int owner)
            ? OwnColumnAt(layer, xM, yM, owner) : cells.ColumnAt(xM, yM);
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

    /// <summary>Numbers of the nets as owners of cells; null where cells are not told apart by nets.</summary>
    internal IReadOnlyDictionary<Net, int>? Owners { get; init; }

    private int OwnColumnAt(int layer, double xM, double yM, int owner)
    {
        HeatCells cells = Network.Cells;
        int column = cells.ColumnAt(xM, yM);
        if (Network.OwnerOf(column, layer) == owner)
        {
            return column;
        }

        CellBox box = cells.BoxOf(column);
        int nearest = column;
        double nearestM = double.PositiveInfinity;
        for (int side = 0; side < 9; side++)
        {
            int other = cells.ColumnAt(box.CentreXM + (((side % 3) - 1) * JustBeyond * box.WidthM), box.CentreYM + (((side / 3) - 1) * JustBeyond * box.HeightM));
            CellBox there = cells.BoxOf(other);
            double awayM = Math.Max(Math.Max(there.WestM - xM, xM - there.EastM), Math.Max(there.SouthM - yM, yM - there.NorthM));
            if (awayM < nearestM && Network.OwnerOf(other, layer) == owner)
            {
                (nearest, nearestM) = (other, awayM);
            }
        }

        return nearest;
    }

    /// <summary>Just over half of a cell away from its centre lies its neighbour.</summary>
    private const double JustBeyond = 0.5001;

    /// <summary>Shares of the walls of plated holes that join layers by columns; null where there are none to read.</summary>
    internal IReadOnlyDictionary<Barrel, IReadOnlyList<(int Column, double Share)>>? Walls { get; init; }

    /// <summary>Largest rise along a plated hole that joins layers, mean over its wall at each depth, kelvin.</summary>
    public double HottestOfHoleK(Barrel barrel)
    {
        if (Walls is null || !Walls.TryGetValue(barrel, out IReadOnlyList<(int Column, double Share)>? wall))
        {
            throw new InvalidOperationException("only holes that join layers of the solved board have a wall");
        }

        HeatCells cells = Network.Cells;
        int first = cells.PlaneOf(barrel.Layers[0]);
        return Enumerable.Range(first, cells.PlaneOf(barrel.Layers[^1]) - first + 1)
            .Max(p => wall.Sum(part => part.Share * Result.RiseK[(part.Column * cells.Planes.Count) + p]));
    }

    /// <summary>
    /// The rises at the centres of another grid's columns and at the depths of its levels, kelvin: linear between this one's centres in each
    /// direction, but not across the edge of copper.
    /// </summary>
    internal double[] At(HeatCells other)
    {
        HeatCells own = Network.Cells;
        int levels = own.Planes.Count;
        (int Above, double ShareBelow)[] depths = DepthsOf(other.Planes, own.Planes);
        double[] rises = new double[other.NodeCount];
        Parallel.For(0, (other.Count + ColumnsAtATime - 1) / ColumnsAtATime, part =>
        {
            double[] at = new double[levels];
            for (int column = part * ColumnsAtATime; column < Math.Min(other.Count, (part + 1) * ColumnsAtATime); column++)
            {
                CellBox box = other.BoxOf(column);
                ReadLevels(box.CentreXM, box.CentreYM, at);
                for (int p = 0; p < depths.Length; p++)
                {
                    (int above, double share) = depths[p];
                    rises[(column * depths.Length) + p] = share == 0 ? at[above] : ((1 - share) * at[above]) + (share * at[above + 1]);
                }
            }
        });
        return rises;
    }

    /// <summary>Columns that are read by one thread after the other.</summary>
    private const int ColumnsAtATime = 512;

    /// <summary>The rises of all levels at a point, kelvin.</summary>
    private void ReadLevels(double xM, double yM, double[] rises)
    {
        HeatCells cells = Network.Cells;
        int column = cells.ColumnAt(xM, yM);
        CellBox box = cells.BoxOf(column);
        double offX = Math.Clamp(xM, box.WestM, box.EastM) - box.CentreXM;
        double offY = Math.Clamp(yM, box.SouthM, box.NorthM) - box.CentreYM;
        Array.Copy(Result.RiseK, column * rises.Length, rises, 0, rises.Length);
        AddChange(offX, cells.ColumnAt(box.CentreXM + (Math.Sign(offX) * box.WidthM * JustBeyond), yM), alongX: true);
        AddChange(offY, cells.ColumnAt(xM, box.CentreYM + (Math.Sign(offY) * box.HeightM * JustBeyond)), alongX: false);

        void AddChange(double off, int next, bool alongX)
        {
            if (off == 0 || next == column)
            {
                return;
            }

            CellBox beside = cells.BoxOf(next);
            double share = off / (alongX ? beside.CentreXM - box.CentreXM : beside.CentreYM - box.CentreYM);
            for (int p = 0; p < rises.Length; p++)
            {
                int layer = cells.Planes[p].CopperLayer;
                if (layer == 0 || Network.OwnerOf(column, layer) == Network.OwnerOf(next, layer))
                {
                    rises[p] += share * (Result.RiseK[(next * rises.Length) + p] - Result.RiseK[(column * rises.Length) + p]);
                }
            }
        }
    }

    /// <summary>For each level the one of others of the same board at its depth or above it, and how far it lies on the way to the next.</summary>
    private static (int Above, double ShareBelow)[] DepthsOf(IReadOnlyList<HeatPlane> planes, IReadOnlyList<HeatPlane> others)
    {
        const double Rounding = 1e-9;
        (int, double)[] depths = new (int, double)[planes.Count];
        double depthM = 0;
        double otherM = 0;
        for (int p = 0, other = 0; p < depths.Length; depthM += planes[p].GapBelowM, p++)
        {
            while (other + 1 < others.Count && otherM + others[other].GapBelowM <= depthM + Rounding)
            {
                otherM += others[other].GapBelowM;
                other++;
            }

            depths[p] = (other, other + 1 < others.Count && depthM > otherM + Rounding ? (depthM - otherM) / others[other].GapBelowM : 0);
        }

        return depths;
    }

    /// <summary>Rises at the vertices of a net's mesh.</summary>
    public double[] AtVertices(SheetField sheet, Net? net = null) =>
        [.. Enumerable.Range(0, sheet.Mesh.VertexCount).Select(v => RiseK(sheet.Layer, sheet.Mesh.XM[v], sheet.Mesh.YM[v], net))];
}
