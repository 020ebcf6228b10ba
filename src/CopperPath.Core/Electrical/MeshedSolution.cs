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
    private readonly IReadOnlyList<double> _terminalV;
    private readonly IReadOnlyList<BarrelCurrent> _barrels;
    private readonly Drop _drop;

    private MeshedSolution(
        IReadOnlyList<BoundTerminal> terminals, ConductanceSystem system, CholeskyFactor factor, FieldRecovery recovery)
    {
        _terminals = terminals;
        _system = system;
        _factor = factor;
        _recovery = recovery;
        (_potentialV, _relativeResidual) = Solve([.. terminals.Select(terminal => terminal.CurrentA)]);
        _terminalV = recovery.TerminalPotentialsV(_potentialV, terminals.Count);
        Flows = recovery.Flows(_potentialV);
        _barrels = recovery.BarrelCurrents(_potentialV);
        LossBoundsW = FieldRecovery.LossBoundsW(Flows, _barrels);
        _drop = MeasureDrop();
    }

    public int UnknownCount => _system.Matrix.Size;

    public IReadOnlyList<SheetFlow> Flows { get; }

    public Bracket LossBoundsW { get; }

    /// <summary>What this mesh proves.</summary>
    public RefinementRound Round => new(UnknownCount, LossBoundsW, _drop.BoundsV, _drop.High, _drop.Low);

    /// <summary>Halvings that should bring the bounds of loss and drop within a share of the two; one count per triangle of each sheet.</summary>
    public IReadOnlyList<int[]> HalvingsFor(double accuracy)
    {
        double lossError = Math.Max(double.Epsilon, Flows.Sum(flow => flow.ErrorProductW(flow)));
        double allowedShare = accuracy / Math.Max(LossBoundsW.RelativeWidth, _drop.BoundsV.RelativeWidth);
        if (_drop.UnitFlows is not { } unitFlows)
        {
            return RefinementPlan.For(Flows, (flow, t, _) => flow.ErrorW(t) / lossError, allowedShare);
        }

        // Loss and drop ask for the same share less of the error of the net's currents and of the unit currents.
        double unitError = Math.Max(double.Epsilon, unitFlows.Sum(flow => flow.ErrorProductW(flow)));
        return RefinementPlan.For(
            Flows, (flow, t, s) => (flow.ErrorW(t) / lossError) + (unitFlows[s].ErrorW(t) / unitError), 2 * allowedShare);
    }

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
        IReadOnlyList<TerminalResult> terminals = ledger.Results(_terminalV);
        double entering = _terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA);
        double powerW = terminals.Sum(result => result.Terminal.CurrentA * result.PotentialV);
        Bracket loss = rounds[^1].LossBoundsW;
        Bracket drop = rounds[^1].DropBoundsV;
        return new ConductionResult(
            ConductionStatus.Solved, null,
            [.. Flows.Select(flow => new SheetField(flow.Layer, flow.Mesh, flow.PotentialV, flow.BalancedX, flow.BalancedY)
            {
                CopperShareUnderSolder = flow.Conductance.CopperShareUnderSolder,
            })],
            _barrels, terminals, drop.Middle, drop, loss.Middle, loss, rounds,
            ledger.LargestErrorA / entering,
            Math.Abs(powerW - LossBoundsW.Least) / Math.Max(LossBoundsW.Least, double.Epsilon),
            UnknownCount, _relativeResidual);
    }

    /// <summary>
    /// The drop is what the currents of the net and those of one ampere between its two terminals make together; with d
    /// the difference of balanced and potential current of each, it is the potential's drop + d.d'/2 within |d| |d'| / 2
    /// (W. Prager and J. L. Synge, Q. Appl. Math. 5, 1947, applied to both).
    /// </summary>
    private Drop MeasureDrop()
    {
        int high = IndexOfExtreme(sign: 1), low = IndexOfExtreme(sign: -1);
        if (_terminals.Count == 2)
        {
            return new Drop(high, low, LossBoundsW * (1 / Math.Abs(_terminals[0].CurrentA)), null);
        }

        double[] unit = new double[_terminals.Count];
        (unit[high], unit[low]) = (1, -1);
        SheetFlow[] unitFlows = _recovery.Flows(Solve(unit).PotentialV);
        double product = 0, square = 0, unitSquare = 0;
        for (int s = 0; s < unitFlows.Length; s++)
        {
            product += Flows[s].ErrorProductW(unitFlows[s]);
            square += Flows[s].ErrorProductW(Flows[s]);
            unitSquare += unitFlows[s].ErrorProductW(unitFlows[s]);
        }

        double middle = _terminalV[high] - _terminalV[low] + (product / 2);
        double half = Math.Sqrt(square * unitSquare) / 2;
        return new Drop(high, low, new Bracket(middle - half, middle + half), unitFlows);
    }

    private int IndexOfExtreme(int sign) => Enumerable
        .Range(0, _terminals.Count)
        .Where(t => Math.Sign(_terminals[t].CurrentA) == sign)
        .MaxBy(t => sign * _terminalV[t]);

    private (double[] PotentialV, double RelativeResidual) Solve(IReadOnlyList<double> terminalCurrentsA)
    {
        double[] unknowns = new double[_system.Matrix.Size];
        double residual = _factor.SolveRefined(_system.CurrentsFor(terminalCurrentsA), unknowns).RelativeResidual;
        return (_system.Expand(unknowns), residual);
    }

    /// <param name="High">The terminal where current enters at the highest potential.</param>
    /// <param name="Low">The one where it leaves at the lowest.</param>
    /// <param name="BoundsV">Bounds of the drop from one to the other, volts.</param>
    /// <param name="UnitFlows">Currents of one ampere between its terminals; null where they are those of the net, scaled.</param>
    private sealed record Drop(int High, int Low, Bracket BoundsV, IReadOnlyList<SheetFlow>? UnitFlows);
}
