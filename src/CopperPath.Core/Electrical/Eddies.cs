using System.Runtime.InteropServices;
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

    private readonly int[] _first;

    /// <summary>Of each eddy, the triangles it turns through and its current in them at unit strength, times twice their area.</summary>
    private readonly List<Turn> _turns = [];

    public Eddies(SheetMesh mesh, TriangleLinks links, SheetConductance conductance)
    {
        int[] eddyOf = Number(mesh, links, out int count);
        int[] firstCorner = new int[count + 1];
        for (int corner = 0; corner < mesh.Triangles.Length; corner++)
        {
            if (IsTurning(mesh, eddyOf, corner))
            {
                firstCorner[eddyOf[mesh.Triangles[corner]] + 1]++;
            }
        }

        for (int e = 0; e < count; e++)
        {
            firstCorner[e + 1] += firstCorner[e];
        }

        int[] next = firstCorner[..^1];
        int[] corners = new int[firstCorner[^1]];
        for (int corner = 0; corner < mesh.Triangles.Length; corner++)
        {
            if (IsTurning(mesh, eddyOf, corner))
            {
                corners[next[eddyOf[mesh.Triangles[corner]]]++] = corner;
            }
        }

        _turns.EnsureCapacity(corners.Length);
        _first = new int[count + 1];
        for (int e = 0; e < count; e++)
        {
            AddTurns(mesh, conductance, corners.AsSpan(firstCorner[e]..firstCorner[e + 1]));
            _first[e + 1] = _turns.Count;
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
        ReadOnlySpan<Turn> turns = CollectionsMarshal.AsSpan(_turns)[_first[eddy].._first[eddy + 1]];
        double along = 0, square = 0;
        foreach (ref readonly Turn turn in turns)
        {
            along += ((x[turn.Triangle] * turn.Dx) + (y[turn.Triangle] * turn.Dy)) / turn.SheetS;
            square += ((turn.Dx * turn.Dx) + (turn.Dy * turn.Dy)) / (turn.TwiceAreaM2 * turn.SheetS);
        }

        double strength = square > 0 ? -along / square : 0;
        foreach (ref readonly Turn turn in turns)
        {
            x[turn.Triangle] += strength * turn.Dx / turn.TwiceAreaM2;
            y[turn.Triangle] += strength * turn.Dy / turn.TwiceAreaM2;
        }
    }

    /// <summary>In a triangle an eddy runs along the edge opposite its corner; a hole's eddy may have several corners in one.</summary>
    private void AddTurns(SheetMesh mesh, SheetConductance conductance, ReadOnlySpan<int> corners)
    {
        for (int i = 0; i < corners.Length;)
        {
            int triangle = corners[i] / 3;
            double dx = 0, dy = 0;
            for (; i < corners.Length && corners[i] / 3 == triangle; i++)
            {
                int b = mesh.Triangles[TriangleLinks.Next(corners[i])];
                int c = mesh.Triangles[TriangleLinks.Previous(corners[i])];
                dx += mesh.XM[c] - mesh.XM[b];
                dy += mesh.YM[c] - mesh.YM[b];
            }

            _turns.Add(new Turn(triangle, dx, dy, 2 * new TriangleGradient(mesh, triangle).AreaM2, conductance.Of(mesh, triangle)));
        }
    }

    private static bool IsTurning(SheetMesh mesh, int[] eddyOf, int corner) =>
        !mesh.IsHeld(corner / 3) && eddyOf[mesh.Triangles[corner]] != Fixed;

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
            if (mesh.IsHeld(edge / 3))
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

    private readonly record struct Turn(int Triangle, double Dx, double Dy, double TwiceAreaM2, double SheetS);
}
