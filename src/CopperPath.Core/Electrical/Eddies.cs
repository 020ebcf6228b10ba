using CopperPath.Meshing;
using CopperPath.Polygons;

namespace CopperPath.Electrical;

/// <summary>
/// Closed currents around the vertices and holes of a sheet. Adding one changes no flux into any contact and none
/// through the edge of the copper. Their strengths are the values of a stream function at the vertices, one value for
/// the whole edge of a hole (J. C. Maxwell, Treatise on Electricity and Magnetism, 1873, art. 294).
/// </summary>
internal sealed class Eddies
{
    private const int Fixed = -1;

    private readonly SheetMesh _mesh;
    private readonly int[] _first;
    private readonly int[] _corners;

    public Eddies(SheetMesh mesh, TriangleLinks links)
    {
        _mesh = mesh;
        int[] eddyOf = Number(mesh, links, out int count);
        _first = new int[count + 1];
        for (int corner = 0; corner < mesh.Triangles.Length; corner++)
        {
            if (IsTurning(eddyOf, corner))
            {
                _first[eddyOf[mesh.Triangles[corner]] + 1]++;
            }
        }

        for (int e = 0; e < count; e++)
        {
            _first[e + 1] += _first[e];
        }

        int[] next = _first[..^1];
        _corners = new int[_first[^1]];
        for (int corner = 0; corner < mesh.Triangles.Length; corner++)
        {
            if (IsTurning(eddyOf, corner))
            {
                _corners[next[eddyOf[mesh.Triangles[corner]]]++] = corner;
            }
        }
    }

    /// <summary>Takes each eddy in turn, there and back again, at the strength that makes the current's heat least.</summary>
    public void Relax(double[] x, double[] y, int rounds)
    {
        for (int round = 0; round < rounds; round++)
        {
            for (int e = 0; e < _first.Length - 1; e++)
            {
                RelaxOne(e, x, y);
            }

            for (int e = _first.Length - 2; e >= 0; e--)
            {
                RelaxOne(e, x, y);
            }
        }
    }

    private void RelaxOne(int eddy, double[] x, double[] y)
    {
        // Times two areas, a unit eddy is a current along the edge opposite the corner.
        double along = 0, square = 0;
        for (int i = _first[eddy]; i < _first[eddy + 1];)
        {
            (int triangle, double dx, double dy, double twiceArea, int after) = Turn(eddy, i);
            along += (x[triangle] * dx) + (y[triangle] * dy);
            square += ((dx * dx) + (dy * dy)) / twiceArea;
            i = after;
        }

        double strength = square > 0 ? -along / square : 0;
        for (int i = _first[eddy]; i < _first[eddy + 1];)
        {
            (int triangle, double dx, double dy, double twiceArea, int after) = Turn(eddy, i);
            x[triangle] += strength * dx / twiceArea;
            y[triangle] += strength * dy / twiceArea;
            i = after;
        }
    }

    /// <summary>The current of an eddy in one triangle; a hole's eddy may have several corners in it.</summary>
    private (int Triangle, double Dx, double Dy, double TwiceArea, int After) Turn(int eddy, int i)
    {
        int triangle = _corners[i] / 3;
        double dx = 0, dy = 0;
        for (; i < _first[eddy + 1] && _corners[i] / 3 == triangle; i++)
        {
            int b = _mesh.Triangles[TriangleLinks.Next(_corners[i])];
            int c = _mesh.Triangles[TriangleLinks.Previous(_corners[i])];
            dx += _mesh.XM[c] - _mesh.XM[b];
            dy += _mesh.YM[c] - _mesh.YM[b];
        }

        int p = _mesh.Triangles[3 * triangle], q = _mesh.Triangles[(3 * triangle) + 1], r = _mesh.Triangles[(3 * triangle) + 2];
        double twiceArea = ((_mesh.XM[q] - _mesh.XM[p]) * (_mesh.YM[r] - _mesh.YM[p]))
            - ((_mesh.XM[r] - _mesh.XM[p]) * (_mesh.YM[q] - _mesh.YM[p]));
        return (triangle, dx, dy, twiceArea, i);
    }

    private bool IsTurning(int[] eddyOf, int corner) =>
        _mesh.TriangleMarkers[corner / 3] == 0 && eddyOf[_mesh.Triangles[corner]] != Fixed;

    /// <summary>
    /// A vertex inside the copper or on a rim has an eddy of its own; a closed edge of the copper that no contact
    /// touches has one for all its vertices; the other vertices on the edge of the copper have none.
    /// </summary>
    private static int[] Number(SheetMesh mesh, TriangleLinks links, out int count)
    {
        int[] nextOnEdge = new int[mesh.VertexCount];
        bool[] isRim = new bool[mesh.VertexCount];
        Array.Fill(nextOnEdge, Fixed);
        for (int edge = 0; edge < mesh.Triangles.Length; edge++)
        {
            int from = mesh.Triangles[edge];
            if (mesh.TriangleMarkers[edge / 3] != 0)
            {
                isRim[from] = true;
            }
            else if (links.Twin(edge) == TriangleLinks.None)
            {
                nextOnEdge[from] = mesh.Triangles[TriangleLinks.Next(edge)];
            }
        }

        // Runs of edges of the copper; one that a rim touches, or that ends, is no closed loop of its own.
        DisjointSets runs = new(mesh.VertexCount);
        bool[] isOnEdge = new bool[mesh.VertexCount];
        for (int v = 0; v < nextOnEdge.Length; v++)
        {
            if (nextOnEdge[v] != Fixed)
            {
                runs.Join(v, nextOnEdge[v]);
                isOnEdge[v] = isOnEdge[nextOnEdge[v]] = true;
            }
        }

        bool[] isHeld = new bool[mesh.VertexCount];
        for (int v = 0; v < isHeld.Length; v++)
        {
            isHeld[runs.Find(v)] |= isOnEdge[v] && (isRim[v] || nextOnEdge[v] == Fixed);
        }

        int[] eddyOf = new int[mesh.VertexCount];
        Array.Fill(eddyOf, Fixed);
        count = 0;
        for (int v = 0; v < eddyOf.Length; v++)
        {
            int run = runs.Find(v);
            if (!isHeld[run] && eddyOf[run] == Fixed)
            {
                eddyOf[run] = count++;
            }
        }

        for (int v = 0; v < eddyOf.Length; v++)
        {
            eddyOf[v] = eddyOf[runs.Find(v)];
        }

        return eddyOf;
    }
}
