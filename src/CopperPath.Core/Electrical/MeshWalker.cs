using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>Walks straight through a mesh from triangle to triangle.</summary>
internal sealed class MeshWalker
{
    private readonly SheetMesh _mesh;
    private readonly TriangleLinks _links;

    public MeshWalker(SheetMesh mesh)
    {
        _mesh = mesh;
        _links = new TriangleLinks(mesh);
    }

    public static (double X, double Y) Centroid(SheetMesh mesh, int triangle)
    {
        int a = mesh.Triangles[3 * triangle];
        int b = mesh.Triangles[(3 * triangle) + 1];
        int c = mesh.Triangles[(3 * triangle) + 2];
        return ((mesh.XM[a] + mesh.XM[b] + mesh.XM[c]) / 3, (mesh.YM[a] + mesh.YM[b] + mesh.YM[c]) / 3);
    }

    /// <summary>
    /// Goes from a point inside a triangle along a unit vector until the mesh ends, telling each triangle crossed
    /// and the length of path in it.
    /// </summary>
    /// <returns>The point where the path leaves the mesh.</returns>
    public (double X, double Y) Walk(int triangle, double x, double y, double dx, double dy, Action<int, double> crossed)
    {
        int cameThrough = TriangleLinks.None;
        for (int steps = 0; steps <= _mesh.TriangleCount; steps++)
        {
            double exit = double.PositiveInfinity;
            int exitEdge = -1;
            for (int k = 0; k < 3; k++)
            {
                int edge = (3 * triangle) + k;
                if (edge == cameThrough)
                {
                    continue;
                }

                double along = DistanceToEdge(triangle, k, x, y, dx, dy);
                if (along < exit)
                {
                    exit = along;
                    exitEdge = edge;
                }
            }

            if (exitEdge < 0)
            {
                return (x, y);
            }

            exit = Math.Max(0, exit);
            crossed(triangle, exit);
            x += exit * dx;
            y += exit * dy;
            cameThrough = _links.Twin(exitEdge);
            if (cameThrough == TriangleLinks.None)
            {
                return (x, y);
            }

            triangle = cameThrough / 3;
        }

        return (x, y);
    }

    /// <summary>The triangle that holds a point straight across the copper from one inside a triangle, or -1 when the copper ends before it.</summary>
    public int Reach(int triangle, double x, double y, double toX, double toY)
    {
        double length = Math.Sqrt(((toX - x) * (toX - x)) + ((toY - y) * (toY - y)));
        double left = length;
        int reached = -1;
        Walk(triangle, x, y, (toX - x) / length, (toY - y) / length, (crossed, step) =>
        {
            if (left > 0 && step >= left)
            {
                reached = crossed;
            }

            left -= step;
        });
        return reached;
    }

    /// <summary>Distance to the line of an edge the path is running out through; infinite for the others.</summary>
    private double DistanceToEdge(int triangle, int k, double x, double y, double dx, double dy)
    {
        int a = _mesh.Triangles[(3 * triangle) + k];
        int b = _mesh.Triangles[(3 * triangle) + ((k + 1) % 3)];
        double normalX = _mesh.YM[b] - _mesh.YM[a];
        double normalY = _mesh.XM[a] - _mesh.XM[b];
        double approach = (dx * normalX) + (dy * normalY);
        return approach <= 0 ? double.PositiveInfinity
            : (((_mesh.XM[a] - x) * normalX) + ((_mesh.YM[a] - y) * normalY)) / approach;
    }
}
