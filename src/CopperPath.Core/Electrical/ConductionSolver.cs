using CopperPath.Artwork;
using CopperPath.LinearAlgebra;
using CopperPath.Meshing;
using CopperPath.Nets;

namespace CopperPath.Electrical;

/// <summary>
/// Steady conduction in the copper of one net.
/// <para>
/// Equation, on every layer: div(G grad V) = 0 with G = thickness / resistivity (siemens per square); no current
/// crosses the edge of the copper; contacts and rims of plated holes are each one potential; barrels join the
/// potentials of the layers they touch through R = rho L / A; the current of each terminal is given.
/// </para>
/// <para>
/// Limits: the current is uniform through the thickness of a layer (direct current; see the skin-depth note of the
/// report), and one temperature holds for all copper. Linear triangles: the energy is bounded from one side, so the
/// resistance comes out slightly low and rises as the mesh is refined (Strang and Fix, An Analysis of the Finite
/// Element Method, 1973, ch. 1).
/// </para>
/// </summary>
public static class ConductionSolver
{
    /// <param name="net">The conductor.</param>
    /// <param name="terminals">At least two; their currents sum to zero.</param>
    /// <param name="cuts">Unplated holes and slots that cut the copper.</param>
    /// <param name="stack">Thickness, distances and resistivity.</param>
    /// <param name="quality">Fineness of the mesh.</param>
    public static ConductionResult Solve(
        Net net, IReadOnlyList<BoundTerminal> terminals, IReadOnlyList<DrilledFeature> cuts, Stackup stack, MeshQuality quality)
    {
        List<Contact> contacts = [.. terminals.SelectMany(terminal => terminal.Contacts)];
        (NetMesh? mesh, string? reason) = NetMesh.Build(net, contacts, cuts, stack, quality);
        if (mesh is null)
        {
            return ConductionResult.Failed(ConductionStatus.MeshFailed, reason!);
        }

        NodeMap nodes = NodeMap.Build(net, mesh, terminals);
        if (nodes.UnplacedContact is { } unplaced)
        {
            return ConductionResult.Failed(ConductionStatus.ContactOffCopper, $"{unplaced} touches no copper of the net");
        }

        List<BarrelLink> links = BarrelLink.Of(net, nodes, stack);
        ConductanceSystem system = ConductanceSystem.Assemble(mesh, nodes, links, terminals, stack);
        if (system.Stranded is { } stranded)
        {
            return ConductionResult.Failed(ConductionStatus.NotConnected,
                $"no copper joins {stranded} to {terminals[^1].Name}");
        }

        FactorResult factor = CholeskyFactor.Factor(system.Matrix);
        if (factor.Factor is null)
        {
            return ConductionResult.Failed(ConductionStatus.SolverFailed, $"factorisation ended with {factor.Outcome}");
        }

        double[] unknowns = new double[system.Matrix.Size];
        double residual = factor.Factor.SolveRefined(system.RightHandSide, unknowns).RelativeResidual;
        return FieldRecovery.Recover(mesh, nodes, links, terminals, stack, system.Expand(unknowns), system.Matrix.Size, residual);
    }
}
