using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>A hottest place.</summary>
/// <param name="RiseK">Rise above ambient, kelvin.</param>
/// <param name="EstimateK">How far the rise may be off for the width of cells, kelvin.</param>
/// <param name="Layer">Copper layer, 1 = top; inside laminate, the layer above it.</param>
/// <param name="XM">Place, metres.</param>
/// <param name="YM">Place, metres.</param>
public sealed record HottestPlace(double RiseK, double EstimateK, int Layer, double XM, double YM);

/// <summary>The hottest copper of a stretch.</summary>
public static class HottestCopper
{
    /// <summary>
    /// Looked for at the vertices of its mesh and, for pads that carry no current and have no mesh, along the outlines of its net.
    /// </summary>
    /// <param name="conduction">Solved stretch.</param>
    /// <param name="net">Its net; null to look at its mesh only.</param>
    /// <param name="heat">Temperatures: what the copper's own loss adds.</param>
    public static HottestPlace Of(ConductionResult conduction, Net? net, OwnRise heat)
    {
        HottestPlace hottest = new(double.NegativeInfinity, 0, 0, 0, 0);
        foreach (SheetField sheet in conduction.Sheets)
        {
            for (int v = 0; v < sheet.Mesh.VertexCount; v++)
            {
                Look(sheet.Layer, sheet.Mesh.XM[v], sheet.Mesh.YM[v]);
            }
        }

        foreach (NetSheet sheet in net?.Sheets ?? [])
        {
            foreach (PointNm corner in sheet.Islands.SelectMany(island => island.Outer))
            {
                Look(sheet.Layer, Units.MetresFromNm(corner.X), Units.MetresFromNm(corner.Y));
            }
        }

        return hottest with { EstimateK = heat.EstimateK(at => at.RiseK(hottest.Layer, hottest.XM, hottest.YM, net)) };

        void Look(int layer, double xM, double yM)
        {
            double riseK = heat.RiseK(layer, xM, yM, net);
            hottest = riseK > hottest.RiseK ? new HottestPlace(riseK, 0, layer, xM, yM) : hottest;
        }
    }
}
