using CopperPath.Meshing;

namespace CopperPath.Cli.Overlays;

/// <summary>The values a sheet has at its vertices.</summary>
internal static class VertexValues
{
    /// <summary>
    /// Values at the vertices: given, or means of the surrounding triangles weighted by area; null for a sheet shaded
    /// triangle by triangle. NaN where no triangle around has a value.
    /// </summary>
    public static double[]? Of(ShadedSheet sheet) => sheet.Shading switch
    {
        FieldShading.PerVertex => sheet.Values,
        FieldShading.PerTriangleSmoothed => Means(sheet.Mesh, sheet.Values),
        _ => null,
    };

    private static double[] Means(SheetMesh mesh, double[] values)
    {
        double[] sums = new double[mesh.VertexCount];
        double[] areas = new double[mesh.VertexCount];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            if (!double.IsFinite(values[t]))
            {
                continue;
            }

            double area = TriangleAreas.AreaM2(mesh, t);
            foreach (int v in mesh.Triangles.AsSpan(3 * t, 3))
            {
                sums[v] += area * values[t];
                areas[v] += area;
            }
        }

        for (int v = 0; v < sums.Length; v++)
        {
            sums[v] /= areas[v];
        }

        return sums;
    }
}
