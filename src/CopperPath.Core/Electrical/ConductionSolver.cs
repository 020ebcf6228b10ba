using CopperPath.Artwork;
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
/// Linear triangles are solved with a factor, bulges along their edges are added in a few steps
/// (<see cref="CurvedSystem"/>). A balanced current made from the potential (<see cref="CurrentTubes"/>) and the eddies
/// that lower its heat most (<see cref="Eddies"/>) bounds the loss from above, and less the heat of the difference of the
/// two from below. Triangles are halved where the two differ until the bounds are as close as demanded.
/// </para>
/// <para>
/// The bounds are proven for the meshed shape, whose outlines lie off the drawn ones by up to the mesher's tolerance. What that
/// may change is estimated (<see cref="OutlineAllowance"/>) and added to the bounds; where it takes too large a share of the
/// accuracy asked for, the outlines are meshed more closely.
/// </para>
/// <para>
/// Limits: the current is uniform through the thickness of a layer (direct current; see the skin-depth note of the report),
/// and one temperature holds for all copper.
/// </para>
/// </summary>
public static class ConductionSolver
{
    /// <summary>Imbalances are of rounding, some 1e-10 on large nets; beyond this share something is wrong.</summary>
    private const double RoundingShare = 1e-6;

    /// <summary>Currents given in decimal add up to nothing but for rounding.</summary>
    private const double GivenBalanceShare = 1e-9;

    /// <summary>Share of the accuracy that the outlines may take before they are meshed more closely, and what is then aimed at.</summary>
    private const double OutlineShareLimit = 0.5, OutlineShareAim = 0.2;

    private const int MostOutlineMeshes = 3;

    /// <param name="net">The conductor.</param>
    /// <param name="terminals">At least two; their currents sum to zero, else the result says so.</param>
    /// <param name="cuts">Unplated holes and slots that cut the copper.</param>
    /// <param name="stack">Thickness, distances and resistivity.</param>
    /// <param name="demand">Starting mesh and accuracy.</param>
    public static ConductionResult Solve(
        Net net, IReadOnlyList<BoundTerminal> terminals, IReadOnlyList<DrilledFeature> cuts, Stackup stack, SolveDemand demand)
    {
        double sumA = terminals.Sum(terminal => terminal.CurrentA);
        double magnitudeA = terminals.Sum(terminal => Math.Abs(terminal.CurrentA));
        if (!(Math.Abs(sumA) <= GivenBalanceShare * magnitudeA) || !(magnitudeA > 0) || double.IsInfinity(magnitudeA))
        {
            return ConductionResult.Failed(ConductionStatus.CurrentsUnbalanced, FormattableString.Invariant(
                $"the currents of the {terminals.Count} terminals add up to {sumA:G6} A, not to 0 A with a current above 0 A among them"));
        }

        List<Contact> contacts = [.. terminals.SelectMany(terminal => terminal.Contacts)];
        MeshQuality quality = demand.FittingMesh;
        for (int outlineMesh = 1; ; outlineMesh++)
        {
            (NetMesh? mesh, string? reason) = NetMesh.Build(net, contacts, cuts, stack, quality);
            if (mesh is null)
            {
                return ConductionResult.Failed(ConductionStatus.MeshFailed, reason!);
            }

            (ConductionResult? result, double outlineShare) = SolveOn(mesh, net, terminals, stack, demand,
                outlineMesh < MostOutlineMeshes && quality.SimplificationToleranceM > 0 ? OutlineShareLimit * demand.Accuracy : double.PositiveInfinity);
            if (result is not null)
            {
                return result;
            }

            // What an outline's displacement changes falls at least as fast as the displacement.
            double closerM = quality.SimplificationToleranceM * OutlineShareAim * demand.Accuracy / outlineShare;
            quality = quality with { SimplificationToleranceM = closerM < quality.WeldingGridM ? 0 : closerM };
        }
    }

    /// <returns>The result, or null and the share of the outlines where that is beyond a limit.</returns>
    private static (ConductionResult? Result, double OutlineShare) SolveOn(
        NetMesh mesh, Net net, IReadOnlyList<BoundTerminal> terminals, Stackup stack, SolveDemand demand, double outlineShareLimit)
    {
        List<RefinementRound> rounds = [];
        while (true)
        {
            (MeshedSolution? solution, ConductionResult? failure) = MeshedSolution.Of(net, mesh, terminals, stack, demand.Accuracy);
            if (solution is null)
            {
                return (failure!, 0);
            }

            RefinementRound round = rounds.Count == 0 ? solution.Round : solution.Round.Tightened(rounds[^1]);
            rounds.Add(round);
            if (round.OutlineShare > outlineShareLimit)
            {
                return (null, round.OutlineShare);
            }

            // No mesh helps where the outlines alone take more than was asked for.
            if (round.WidthShare <= demand.Accuracy || round.OutlineShare >= demand.Accuracy || rounds.Count >= demand.RoundLimit
                || solution.UnknownCount >= demand.UnknownLimit)
            {
                return (Judged(solution.Result(rounds) with { CoarseLayers = mesh.CoarseLayers }, demand), 0);
            }

            mesh = mesh.Refined(solution.HalvingsFor(demand.Accuracy));
        }
    }

    /// <summary>The result with the status its evidence allows.</summary>
    internal static ConductionResult Judged(ConductionResult result, SolveDemand demand)
    {
        if (!(result.CurrentBalanceRatio <= RoundingShare && result.PowerBalanceRatio <= RoundingShare && result.RelativeResidual <= RoundingShare))
        {
            return result with
            {
                Status = ConductionStatus.BooksDoNotBalance,
                Explanation = FormattableString.Invariant($"its currents balance to {result.CurrentBalanceRatio:E1}, its power to ")
                    + FormattableString.Invariant($"{result.PowerBalanceRatio:E1} and its equations to {result.RelativeResidual:E1} only"),
            };
        }

        RefinementRound last = result.Rounds[^1];
        if (last.WidthShare <= demand.Accuracy)
        {
            return result;
        }

        string coarse = result.CoarseLayers.Count == 0 ? "" : $"; the mesh of layer {string.Join(", ", result.CoarseLayers)} ended at its limit of vertices";
        return result with
        {
            Status = ConductionStatus.AccuracyNotReached,
            Explanation = FormattableString.Invariant($"the bounds of loss and drop lie {100 * last.WidthShare:G3} % apart, {100 * demand.Accuracy:G3} % was asked for; ")
                + FormattableString.Invariant($"meshing ended at {last.UnknownCount} unknowns after {result.Rounds.Count} rounds, the drawn outlines take {100 * last.OutlineShare:G2} %{coarse}"),
        };
    }
}
