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
        _links = mesh.Links;
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
        // Where a vertex lies: how far along the path, and how far to the left of it.
        (double Along, double Left) PlaceOf(int vertex)
        {
            double fromX = _mesh.XM[vertex] - x, fromY = _mesh.YM[vertex] - y;
            return ((fromX * dx) + (fromY * dy), (fromY * dx) - (fromX * dy));
        }

        // Counter-clockwise around a triangle, the edge the path leaves through is the one that goes from right to left of it.
        (double Along, double Left) right = default, left = default;
        int exit = TriangleLinks.None;
        for (int edge = 3 * triangle; edge < (3 * triangle) + 3; edge++)
        {
            (double Along, double Left) from = PlaceOf(_mesh.Triangles[edge]);
            (double Along, double Left) to = PlaceOf(_mesh.Triangles[TriangleLinks.Next(edge)]);
            if (from.Left < 0 && to.Left >= 0)
            {
                (exit, right, left) = (edge, from, to);
            }
        }

        double gone = 0;
        for (int steps = 0; exit != TriangleLinks.None && steps <= _mesh.TriangleCount; steps++)
        {
            double reached = Math.Max(gone, right.Along + ((left.Along - right.Along) * right.Left / (right.Left - left.Left)));
            crossed(exit / 3, reached - gone);
            gone = reached;
            int entry = _links.Twin(exit);
            if (entry == TriangleLinks.None)
            {
                break;
            }

            (double Along, double Left) apex = PlaceOf(_mesh.Triangles[TriangleLinks.Previous(entry)]);
            if (apex.Left >= 0)
            {
                (exit, left) = (TriangleLinks.Next(entry), apex);
            }
            else
            {
                (exit, right) = (TriangleLinks.Previous(entry), apex);
            }
        }

        return (x + (gone * dx), y + (gone * dy));
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
}
