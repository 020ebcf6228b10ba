using CopperPath.Meshing;

namespace CopperPath.Cli.Overlays;

/// <summary>Areas of mesh triangles.</summary>
internal static class TriangleAreas
{
    /// <summary>Area of one triangle, square metres.</summary>
    public static double AreaM2(SheetMesh mesh, int triangle)
    {
        int a = mesh.Triangles[3 * triangle];
        int b = mesh.Triangles[(3 * triangle) + 1];
        int c = mesh.Triangles[(3 * triangle) + 2];
        double cross = ((mesh.XM[b] - mesh.XM[a]) * (mesh.YM[c] - mesh.YM[a]))
            - ((mesh.XM[c] - mesh.XM[a]) * (mesh.YM[b] - mesh.YM[a]));
        return Math.Abs(cross) / 2;
    }
}
