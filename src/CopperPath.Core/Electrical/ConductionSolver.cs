using CopperPath.Artwork;
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
/// Linear triangles are solved with a factor, bulges along their edges are added in a few steps
/// (<see cref="CurvedSystem"/>). A balanced current made from the potential (<see cref="CurrentTubes"/>) and the eddies
/// that lower its heat most (<see cref="Eddies"/>) bounds the loss from above, and less the heat of the difference of the
/// two from below. Triangles are halved where the two differ until the bounds are as close as demanded.
/// </para>
/// <para>
/// Limits: the bounds hold for the meshed shape, whose outlines may lie off the artwork's by the mesher's simplification
/// tolerance; the current is uniform through the thickness of a layer (direct current; see the skin-depth note of the
/// report), and one temperature holds for all copper.
/// </para>
/// </summary>
public static class ConductionSolver
{
    /// <param name="net">The conductor.</param>
    /// <param name="terminals">At least two; their currents sum to zero.</param>
    /// <param name="cuts">Unplated holes and slots that cut the copper.</param>
    /// <param name="stack">Thickness, distances and resistivity.</param>
    /// <param name="demand">Starting mesh and accuracy.</param>
    public static ConductionResult Solve(
        Net net, IReadOnlyList<BoundTerminal> terminals, IReadOnlyList<DrilledFeature> cuts, Stackup stack, SolveDemand demand)
    {
        List<Contact> contacts = [.. terminals.SelectMany(terminal => terminal.Contacts)];
        (NetMesh? mesh, string? reason) = NetMesh.Build(net, contacts, cuts, stack, demand.StartingMesh);
        if (mesh is null)
        {
            return ConductionResult.Failed(ConductionStatus.MeshFailed, reason!);
        }

        List<RefinementRound> rounds = [];
        while (true)
        {
            (MeshedSolution? solution, ConductionResult? failure) = MeshedSolution.Of(net, mesh, terminals, stack, demand.Accuracy);
            if (solution is null)
            {
                return failure!;
            }

            rounds.Add(rounds.Count == 0 ? solution.Round : solution.Round.Tightened(rounds[^1]));
            if (rounds[^1].IsWithin(demand.Accuracy) || rounds.Count >= demand.RoundLimit
                || solution.UnknownCount >= demand.UnknownLimit)
            {
                return solution.Result(rounds);
            }

            mesh = mesh.Refined(solution.HalvingsFor(demand.Accuracy));
        }
    }
}
