using CopperPath.LinearAlgebra;
using CopperPath.Nets;

namespace CopperPath.Electrical;

/// <summary>The equations of a net on one mesh, factored once and solved for its currents.</summary>
internal sealed class MeshedSolution
{
    private readonly IReadOnlyList<BoundTerminal> _terminals;
    private readonly ConductanceSystem _system;
    private readonly CholeskyFactor _factor;
    private readonly FieldRecovery _recovery;
    private readonly double[] _potentialV;
    private readonly double _relativeResidual;
    private readonly IReadOnlyList<BarrelCurrent> _barrels;

    private MeshedSolution(
        IReadOnlyList<BoundTerminal> terminals, ConductanceSystem system, CholeskyFactor factor, FieldRecovery recovery)
    {
        _terminals = terminals;
        _system = system;
        _factor = factor;
        _recovery = recovery;
        (_potentialV, _relativeResidual) = Solve([.. terminals.Select(terminal => terminal.CurrentA)]);
        Flows = recovery.Flows(_potentialV);
        _barrels = recovery.BarrelCurrents(_potentialV);
        LossBoundsW = FieldRecovery.LossBoundsW(Flows, _barrels);
    }

    public int UnknownCount => _system.Matrix.Size;

    public IReadOnlyList<SheetFlow> Flows { get; }

    public Bracket LossBoundsW { get; }

    /// <returns>The solution, or the result that says why there is none.</returns>
    public static (MeshedSolution? Solution, ConductionResult? Failure) Of(
        Net net, NetMesh mesh, IReadOnlyList<BoundTerminal> terminals, Stackup stack)
    {
        NodeMap nodes = NodeMap.Build(net, mesh, terminals);
        if (nodes.UnplacedContact is { } unplaced)
        {
            return (null, ConductionResult.Failed(ConductionStatus.ContactOffCopper, $"{unplaced} touches no copper of the net"));
        }

        List<BarrelLink> links = BarrelLink.Of(net, nodes, stack);
        ConductanceSystem system = ConductanceSystem.Assemble(mesh, nodes, links, terminals, stack);
        if (system.Stranded is { } stranded)
        {
            return (null, ConductionResult.Failed(
                ConductionStatus.NotConnected, $"no copper joins {stranded} to {terminals[^1].Name}"));
        }

        FactorResult factor = CholeskyFactor.Factor(system.Matrix);
        return factor.Factor is null
            ? (null, ConductionResult.Failed(ConductionStatus.SolverFailed, $"factorisation ended with {factor.Outcome}"))
            : (new MeshedSolution(terminals, system, factor.Factor, new FieldRecovery(mesh, nodes, links, stack)), null);
    }

    /// <param name="rounds">The meshes tried, this one last, with the bounds they gave together.</param>
    public ConductionResult Result(IReadOnlyList<RefinementRound> rounds)
    {
        ContactLedger ledger = _recovery.Books(Flows, _potentialV, _terminals);
        IReadOnlyList<TerminalResult> terminals = ledger.Results(_potentialV);
        double entering = _terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA);
        double powerW = terminals.Sum(result => result.Terminal.CurrentA * result.PotentialV);
        Bracket loss = rounds[^1].LossBoundsW;
        Bracket drop = DropBoundsV(terminals, loss);
        return new ConductionResult(
            ConductionStatus.Solved, null,
            [.. Flows.Select(flow => new SheetField(flow.Layer, flow.Mesh, flow.PotentialV, flow.BalancedX, flow.BalancedY))],
            _barrels, terminals, drop.Middle, drop, loss.Middle, loss, rounds,
            ledger.LargestErrorA / entering,
            Math.Abs(powerW - LossBoundsW.Least) / Math.Max(LossBoundsW.Least, double.Epsilon),
            UnknownCount, _relativeResidual);
    }

    /// <summary>
    /// Bounds of the largest drop between a terminal where current enters and one where it leaves. The drop is what the
    /// currents of the net and those of one ampere between these two terminals make together; with d the difference of
    /// balanced and potential current of each, it is the potential's drop + d.d'/2 within |d| |d'| / 2 (W. Prager and J. L. Synge,
    /// Q. Appl. Math. 5, 1947, applied to both).
    /// </summary>
    private Bracket DropBoundsV(IReadOnlyList<TerminalResult> terminals, Bracket loss)
    {
        int high = IndexOfExtreme(terminals, sign: 1), low = IndexOfExtreme(terminals, sign: -1);
        if (terminals.Count == 2)
        {
            return loss * (1 / Math.Abs(_terminals[0].CurrentA));
        }

        double[] unit = new double[terminals.Count];
        (unit[high], unit[low]) = (1, -1);
        SheetFlow[] unitFlows = _recovery.Flows(Solve(unit).PotentialV);
        double product = 0, square = 0, unitSquare = 0;
        for (int s = 0; s < unitFlows.Length; s++)
        {
            product += Flows[s].ErrorProductW(unitFlows[s]);
            square += Flows[s].ErrorProductW(Flows[s]);
            unitSquare += unitFlows[s].ErrorProductW(unitFlows[s]);
        }

        double middle = terminals[high].PotentialV - terminals[low].PotentialV + (product / 2);
        double half = Math.Sqrt(square * unitSquare) / 2;
        return new Bracket(middle - half, middle + half);
    }

    private static int IndexOfExtreme(IReadOnlyList<TerminalResult> terminals, int sign) => Enumerable
        .Range(0, terminals.Count)
        .Where(t => Math.Sign(terminals[t].Terminal.CurrentA) == sign)
        .MaxBy(t => sign * terminals[t].PotentialV);

    private (double[] PotentialV, double RelativeResidual) Solve(IReadOnlyList<double> terminalCurrentsA)
    {
        double[] unknowns = new double[_system.Matrix.Size];
        double residual = _factor.SolveRefined(_system.CurrentsFor(terminalCurrentsA), unknowns).RelativeResidual;
        return (_system.Expand(unknowns), residual);
    }
}
