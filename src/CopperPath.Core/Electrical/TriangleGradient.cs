using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>Gradients of the three linear shape functions of a triangle, per metre, and its area.</summary>
internal readonly struct TriangleGradient
{
    public TriangleGradient(SheetMesh mesh, int triangle)
    {
        int a = mesh.Triangles[3 * triangle];
        int b = mesh.Triangles[(3 * triangle) + 1];
        int c = mesh.Triangles[(3 * triangle) + 2];
        double twiceArea = ((mesh.XM[b] - mesh.XM[a]) * (mesh.YM[c] - mesh.YM[a]))
            - ((mesh.XM[c] - mesh.XM[a]) * (mesh.YM[b] - mesh.YM[a]));
        AreaM2 = twiceArea / 2;
        (X0, Y0) = ((mesh.YM[b] - mesh.YM[c]) / twiceArea, (mesh.XM[c] - mesh.XM[b]) / twiceArea);
        (X1, Y1) = ((mesh.YM[c] - mesh.YM[a]) / twiceArea, (mesh.XM[a] - mesh.XM[c]) / twiceArea);
        (X2, Y2) = ((mesh.YM[a] - mesh.YM[b]) / twiceArea, (mesh.XM[b] - mesh.XM[a]) / twiceArea);
    }

    public double AreaM2 { get; }

    public double X0 { get; }

    public double Y0 { get; }

    public double X1 { get; }

    public double Y1 { get; }

    public double X2 { get; }

    public double Y2 { get; }
}
