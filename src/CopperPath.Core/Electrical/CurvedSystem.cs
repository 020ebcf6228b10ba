using CopperPath.LinearAlgebra;
using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>
/// The equations of a potential that is quadratic in every triangle. The factor of the linear ones, with the diagonal
/// for the bulges, preconditions them so well that a few steps do (H. Yserentant, Numer. Math. 49, 1986: the angle
/// between linear functions and bulges does not depend on the mesh). The linear equations are met to rounding in the
/// end, so that the currents of the potential can be balanced; the bulges need not be: any of them give valid bounds.
/// </summary>
internal sealed class CurvedSystem : ISymmetricOperator, IPreconditioner
{
    private const int MostSteps = 30;

    /// <summary>A residual no solve betters.</summary>
    private const double RoundingResidual = 1e-14;

    private readonly ConductanceSystem _linear;
    private readonly CholeskyFactor _factor;
    private readonly NetMesh _mesh;
    private readonly SheetEdges[] _edges;
    private readonly int[] _firstBulge;
    private readonly QuadraticSheet[] _sheets;
    private readonly (int Upper, int Lower, double ConductanceS)[] _barrels;
    private readonly DiagonalScaling _ofBulges;

    public CurvedSystem(
        ConductanceSystem linear, CholeskyFactor factor, NetMesh mesh, NodeMap nodes, IReadOnlyList<SheetEdges> edges,
        IReadOnlyList<BarrelLink> links, Stackup stack)
    {
        (_linear, _factor, _mesh, _edges) = (linear, factor, mesh, [.. edges]);
        _firstBulge = new int[edges.Count + 1];
        _firstBulge[0] = linear.Matrix.Size;
        for (int s = 0; s < edges.Count; s++)
        {
            _firstBulge[s + 1] = _firstBulge[s] + edges[s].Count;
        }

        _sheets = new QuadraticSheet[edges.Count];
        Parallel.For(0, _sheets.Length, s =>
        {
            (int layer, SheetMesh sheet) = mesh.Sheets[s];
            SheetConductance conductance = stack.ConductanceOf(layer);
            _sheets[s] = new QuadraticSheet(
                sheet,
                t => linear.IsStray(nodes.NodeOfVertex(s, sheet.Triangles[3 * t])) ? 0 : conductance.Of(sheet, t),
                v => linear.EquationOf(nodes.NodeOfVertex(s, v)),
                corner => BulgeOpposite(s, corner));
        });
        _barrels = [.. links.Where(link => !linear.IsStray(link.UpperGroup))
            .Select(link => (linear.EquationOf(link.UpperGroup), linear.EquationOf(link.LowerGroup), 1 / link.ResistanceOhm))];
        double[] diagonal = new double[Size];
        foreach (QuadraticSheet sheet in _sheets)
        {
            sheet.AddDiagonal(diagonal);
        }

        _ofBulges = new DiagonalScaling(diagonal.AsMemory(linear.Matrix.Size));
    }

    /// <summary>Number of linear equations and bulges.</summary>
    public int Size => _firstBulge[^1];

    /// <param name="terminalCurrentsA">Into the net at each terminal.</param>
    /// <param name="relativeGain">The bulges are left as they are once a step gains less than this share of the heat.</param>
    public CurvedPotential Solve(IReadOnlyList<double> terminalCurrentsA, double relativeGain)
    {
        int size = _linear.Matrix.Size;
        double[] currents = new double[Size], unknowns = new double[Size];
        _linear.CurrentsFor(terminalCurrentsA).CopyTo(currents, 0);
        _factor.Solve(currents.AsSpan(0, size), unknowns.AsSpan(0, size));
        double[] linearV = _linear.Expand(unknowns.AsSpan(0, size));
        double heatW = DenseKernels.Dot(currents.AsSpan(0, size), unknowns.AsSpan(0, size));
        EnergyDescent.Minimise(this, this, currents, unknowns, relativeGain * heatW, MostSteps);
        double residual = SettleLinearPart(currents, unknowns);
        return new CurvedPotential(
            _linear.Expand(unknowns.AsSpan(0, size)),
            linearV,
            [.. Enumerable.Range(0, _sheets.Length).Select(s => BulgesOf(s, unknowns))],
            residual);
    }

    /// <summary>Meets the linear equations for the bulges found.</summary>
    /// <returns>Norm of their residual over that of the currents.</returns>
    private double SettleLinearPart(double[] currents, double[] unknowns)
    {
        int size = _linear.Matrix.Size;
        double[] product = new double[unknowns.Length], correction = new double[size];
        double norm = Math.Sqrt(DenseKernels.Dot(currents, currents));
        double residual = double.PositiveInfinity;
        while (true)
        {
            Multiply(unknowns, product);
            double squares = 0;
            for (int i = 0; i < size; i++)
            {
                product[i] = currents[i] - product[i];
                squares += product[i] * product[i];
            }

            double before = residual;
            residual = Math.Sqrt(squares) / norm;
            if (!(residual > RoundingResidual) || residual > before / 2)
            {
                return residual;
            }

            _factor.Solve(product.AsSpan(0, size), correction);
            DenseKernels.AddScaled(correction, 1, unknowns.AsSpan(0, size));
        }
    }

    private double[] BulgesOf(int s, double[] unknowns)
    {
        SheetMesh sheet = _mesh.Sheets[s].Mesh;
        double[] bulges = new double[sheet.Triangles.Length];
        for (int corner = 0; corner < bulges.Length; corner++)
        {
            if (!sheet.IsHeld(corner / 3) && BulgeOpposite(s, corner) is >= 0 and int unknown)
            {
                bulges[corner] = unknowns[unknown];
            }
        }

        return bulges;
    }

    /// <summary>The rim of a contact or barrel is one potential: no bulges there.</summary>
    private int BulgeOpposite(int s, int corner) =>
        _edges[s].Opposite(corner) is int edge && _edges[s].IsRim(edge) ? -1 : _firstBulge[s] + edge;

    public void Multiply(ReadOnlySpan<double> x, Span<double> y)
    {
        y.Clear();
        foreach (QuadraticSheet sheet in _sheets)
        {
            sheet.AddProduct(x, y);
        }

        foreach ((int upper, int lower, double conductanceS) in _barrels)
        {
            double currentA = conductanceS * ((upper < 0 ? 0 : x[upper]) - (lower < 0 ? 0 : x[lower]));
            if (upper >= 0)
            {
                y[upper] += currentA;
            }

            if (lower >= 0)
            {
                y[lower] -= currentA;
            }
        }
    }

    /// <summary>The factor for the linear equations, the diagonal for the bulges.</summary>
    public void Apply(ReadOnlySpan<double> residual, Span<double> result)
    {
        int linear = _linear.Matrix.Size;
        _factor.Solve(residual[..linear], result[..linear]);
        _ofBulges.Apply(residual[linear..], result[linear..]);
    }
}
