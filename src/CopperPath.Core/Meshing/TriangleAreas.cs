namespace CopperPath.Meshing;

/// <summary>Area of a triangulation in square lattice units, added up without growing rounding errors.</summary>
internal sealed class TriangleAreas
{
    public TriangleAreas(Triangulation mesh)
    {
        // Compensated summation: W. Kahan, Comm. ACM 8, 1965.
        double lost = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            if (mesh.Region[t] == Triangulation.None)
            {
                continue;
            }

            int a = mesh.Origin[3 * t], b = mesh.Origin[(3 * t) + 1], c = mesh.Origin[(3 * t) + 2];
            double area = 0.5 * (((mesh.X[b] - mesh.X[a]) * (mesh.Y[c] - mesh.Y[a]))
                - ((mesh.Y[b] - mesh.Y[a]) * (mesh.X[c] - mesh.X[a])));
            double corrected = area - lost;
            double sum = Sum + corrected;
            lost = sum - Sum - corrected;
            Sum = sum;
        }
    }

    public double Sum { get; }
}
