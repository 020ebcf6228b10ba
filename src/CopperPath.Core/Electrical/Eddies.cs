using CopperPath.LinearAlgebra;
using CopperPath.Meshing;
using CopperPath.Polygons;

namespace CopperPath.Electrical;

/// <summary>
/// Closed currents around the vertices, edges and holes of a sheet. Adding one changes no flux into any contact and none
/// through the edge of the copper. Their strengths are the values of a stream function that is quadratic in every
/// triangle (J. C. Maxwell, Treatise on Electricity and Magnetism, 1873, art. 294), one value for the whole edge of a hole.
/// </summary>
internal sealed class Eddies : ISymmetricOperator
{
    private const int Fixed = -1;

    /// <summary>Steps at most; what is left to gain lies in eddies much wider than a triangle, which the solve has found.</summary>
    private const int MostSteps = 20;

    private readonly SheetMesh _mesh;
    private readonly SheetEdges _edges;
    private readonly SheetConductance _conductance;
    private readonly int[] _eddyOf;
    private readonly int _vertexEddies;
    private readonly QuadraticSheet _heat;
    private readonly DiagonalScaling _scaling;

    public Eddies(SheetMesh mesh, SheetEdges edges, SheetConductance conductance)
    {
        (_mesh, _edges, _conductance) = (mesh, edges, conductance);
        _eddyOf = Number(mesh, edges.Links, out _vertexEddies);
        _heat = new QuadraticSheet(mesh, t => 1 / conductance.Of(mesh, t), v => _eddyOf[v], EddyOpposite);
        double[] diagonal = new double[Size];
        _heat.AddDiagonal(diagonal);
        _scaling = new DiagonalScaling(diagonal);
    }

    /// <summary>Number of eddies: around vertices and holes first, then along edges.</summary>
    public int Size => _vertexEddies + _edges.Count;

    /// <summary>Adds the eddies that lower a current's heat.</summary>
    /// <param name="x">Current in each triangle, x, amperes per metre; gets the eddies around vertices and holes.</param>
    /// <param name="y">The same, y.</param>
    /// <param name="leastGainW">Gains of heat below this are left.</param>
    /// <returns>For each corner, the strength of the eddy along the edge opposite: its stream function's bulge, amperes.</returns>
    public double[] Relax(double[] x, double[] y, double leastGainW)
    {
        double[] wanted = new double[Size], strength = new double[Size];
        ForEachCorner((t, corner, turnX, turnY, areaM2) =>
        {
            double along = ((x[t] * turnX) + (y[t] * turnY)) * areaM2 / _conductance.Of(_mesh, t);
            AddTo(wanted, _eddyOf[_mesh.Triangles[corner]], -along);
            AddTo(wanted, EddyOpposite(corner), 4.0 / 3 * along);
        });
        EnergyDescent.Minimise(this, _scaling, wanted, strength, leastGainW, MostSteps);

        double[] bulgeA = new double[_mesh.Triangles.Length];
        ForEachCorner((t, corner, turnX, turnY, _) =>
        {
            double ofVertex = _eddyOf[_mesh.Triangles[corner]] is not Fixed and int eddy ? strength[eddy] : 0;
            x[t] += ofVertex * turnX;
            y[t] += ofVertex * turnY;
            bulgeA[corner] = EddyOpposite(corner) is not Fixed and int along ? strength[along] : 0;
        });
        return bulgeA;
    }

    private int EddyOpposite(int corner) =>
        _edges.Opposite(corner) is int edge && _edges.IsCopperEdge(edge) ? Fixed : _vertexEddies + edge;

    /// <summary>Half the derivative of the heat by the strength of each eddy.</summary>
    public void Multiply(ReadOnlySpan<double> x, Span<double> y)
    {
        y.Clear();
        _heat.AddProduct(x, y);
    }

    /// <summary>Calls back with triangle, corner, the current of a unit eddy around the corner's vertex, and the area.</summary>
    private void ForEachCorner(Action<int, int, double, double, double> use)
    {
        for (int t = 0; t < _mesh.TriangleCount; t++)
        {
            if (!_mesh.IsHeld(t))
            {
                TriangleGradient g = new(_mesh, t);
                use(t, 3 * t, g.Y0, -g.X0, g.AreaM2);
                use(t, (3 * t) + 1, g.Y1, -g.X1, g.AreaM2);
                use(t, (3 * t) + 2, g.Y2, -g.X2, g.AreaM2);
            }
        }
    }

    private static void AddTo(double[] values, int index, double addend)
    {
        if (index != Fixed)
        {
            values[index] += addend;
        }
    }

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
}
