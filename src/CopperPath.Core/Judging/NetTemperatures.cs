using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>What its own current adds to the temperature of the copper of one reviewed net, in this board's own solution.</summary>
/// <param name="MeanK">Mean rise over its copper, kelvin.</param>
/// <param name="PeakK">Largest rise, kelvin.</param>
/// <param name="Layer">Layer of the largest rise.</param>
/// <param name="XM">Place of the largest rise, metres.</param>
/// <param name="YM">Place of the largest rise, metres.</param>
public sealed record NetTemperatures(double MeanK, double PeakK, int Layer, double XM, double YM)
{
    /// <summary>
    /// Reads a net's temperatures at the vertices of its mesh, the mean weighted by the area around each. Pads that carry
    /// no current have no mesh: the peak is looked for along the net's outlines too.
    /// </summary>
    public static NetTemperatures Of(SolvedNet net, OwnRise field)
    {
        double areaM2 = 0;
        double weighted = 0;
        NetTemperatures peak = new(0, double.NegativeInfinity, 0, 0, 0);
        foreach (SheetField sheet in net.Conduction.Sheets)
        {
            double[] rises = new double[sheet.Mesh.VertexCount];
            for (int v = 0; v < rises.Length; v++)
            {
                rises[v] = field.RiseK(sheet.Layer, sheet.Mesh.XM[v], sheet.Mesh.YM[v]);
                if (rises[v] > peak.PeakK)
                {
                    peak = new NetTemperatures(0, rises[v], sheet.Layer, sheet.Mesh.XM[v], sheet.Mesh.YM[v]);
                }
            }

            for (int t = 0; t < sheet.Mesh.TriangleCount; t++)
            {
                (int a, int b, int c) = (sheet.Mesh.Triangles[3 * t], sheet.Mesh.Triangles[(3 * t) + 1], sheet.Mesh.Triangles[(3 * t) + 2]);
                double area = (((sheet.Mesh.XM[b] - sheet.Mesh.XM[a]) * (sheet.Mesh.YM[c] - sheet.Mesh.YM[a]))
                    - ((sheet.Mesh.XM[c] - sheet.Mesh.XM[a]) * (sheet.Mesh.YM[b] - sheet.Mesh.YM[a]))) / 2;
                areaM2 += area;
                weighted += area * (rises[a] + rises[b] + rises[c]) / 3;
            }
        }

        foreach (NetSheet sheet in net.Bound.Net.Sheets)
        {
            foreach (PointNm corner in sheet.Islands.SelectMany(island => island.Outer))
            {
                (double xM, double yM) = (Units.MetresFromNm(corner.X), Units.MetresFromNm(corner.Y));
                double rise = field.RiseK(sheet.Layer, xM, yM);
                peak = rise > peak.PeakK ? new NetTemperatures(0, rise, sheet.Layer, xM, yM) : peak;
            }
        }

        return peak with { MeanK = weighted / areaM2 };
    }
}
