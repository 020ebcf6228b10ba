using CopperPath.Electrical;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>What its own current adds to the temperature of the copper of one reviewed net, in this board's own solution.</summary>
/// <param name="MeanK">Mean rise over its copper, kelvin.</param>
/// <param name="PeakK">Largest rise, kelvin.</param>
/// <param name="Layer">Layer of the largest rise.</param>
/// <param name="XM">Place of the largest rise, metres.</param>
/// <param name="YM">Place of the largest rise, metres.</param>
/// <param name="EstimateK">How far the largest rise may be off for the width of cells, kelvin.</param>
public sealed record NetTemperatures(double MeanK, double PeakK, int Layer, double XM, double YM, double EstimateK)
{
    /// <summary>
    /// Reads a net's temperatures at the vertices of its mesh, the mean weighted by the area around each. Pads that carry
    /// no current have no mesh: the peak is looked for along the net's outlines too.
    /// </summary>
    public static NetTemperatures Of(SolvedNet net, OwnRise field)
    {
        double areaM2 = 0;
        double weighted = 0;
        foreach (SheetField sheet in net.Conduction.Sheets)
        {
            double[] rises = field.AtVertices(sheet, net.Bound.Net);
            for (int t = 0; t < sheet.Mesh.TriangleCount; t++)
            {
                (int a, int b, int c) = (sheet.Mesh.Triangles[3 * t], sheet.Mesh.Triangles[(3 * t) + 1], sheet.Mesh.Triangles[(3 * t) + 2]);
                double area = (((sheet.Mesh.XM[b] - sheet.Mesh.XM[a]) * (sheet.Mesh.YM[c] - sheet.Mesh.YM[a]))
                    - ((sheet.Mesh.XM[c] - sheet.Mesh.XM[a]) * (sheet.Mesh.YM[b] - sheet.Mesh.YM[a]))) / 2;
                areaM2 += area;
                weighted += area * (rises[a] + rises[b] + rises[c]) / 3;
            }
        }

        HottestPlace peak = HottestCopper.Of(net.Conduction, net.Bound.Net, field);
        return new NetTemperatures(weighted / areaM2, peak.RiseK, peak.Layer, peak.XM, peak.YM, peak.EstimateK);
    }
}
