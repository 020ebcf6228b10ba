using CopperPath.Meshing;
using CopperPath.Quantities;
using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>Lines of equal value through a field that is linear within each triangle: exact, one segment per triangle.</summary>
internal static class ContourLines
{
    /// <summary>The line of one level over a sheet, as loose segments in picture pixels.</summary>
    public static SKPath Of(SheetMesh mesh, double[] atVertices, double level, ViewTransform transform)
    {
        using SKPathBuilder builder = new();
        Span<SKPoint> ends = stackalloc SKPoint[3];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            int found = 0;
            for (int k = 0; k < 3; k++)
            {
                int a = mesh.Triangles[(3 * t) + k];
                int b = mesh.Triangles[(3 * t) + ((k + 1) % 3)];
                double va = atVertices[a] - level;
                double vb = atVertices[b] - level;

                // A vertex on the level counts as above it, so a line through vertices is drawn once and without gaps.
                if (va < 0 != vb < 0)
                {
                    double part = va / (va - vb);
                    double xM = mesh.XM[a] + (part * (mesh.XM[b] - mesh.XM[a]));
                    double yM = mesh.YM[a] + (part * (mesh.YM[b] - mesh.YM[a]));
                    ends[found++] = new SKPoint(
                        (float)transform.XPx(Units.NmFromMetres(xM)), (float)transform.YPx(Units.NmFromMetres(yM)));
                }
            }

            if (found == 2)
            {
                builder.MoveTo(ends[0]);
                builder.LineTo(ends[1]);
            }
        }

        return builder.Detach();
    }
}
