using CopperPath.LinearAlgebra;
using CopperPath.Meshing;
using CopperPath.Nets;

namespace CopperPath.Electrical;

/// <summary>The equations of a net on one mesh, factored once and solved for its currents.</summary>
internal sealed class MeshedSolution
{
    /// <summary>Gains below this share of the demanded accuracy are not worth a step of either iteration.</summary>
    private const double GainShare = 1.0 / 50;

    /// <summary>What is left of the accuracy for the mesh however much the outlines take.</summary>
    private const double LeastShareOfMesh = 0.1;

    private readonly IReadOnlyList<BoundTerminal> _terminals;
    private readonly CurvedSystem _system;
    private readonly FieldRecovery _recovery;
    private readonly double _relativeGain;
    private readonly Sample _sample;
    private readonly Bracket _lossBoundsW;
    private readonly Drop _drop;
    private readonly OutlineAllowance _lossOutlineW;
    private readonly OutlineAllowance _dropOutlineV;

    private MeshedSolution(
        IReadOnlyList<BoundTerminal> terminals, CurvedSystem system, int unknownCount, FieldRecovery recovery, double accuracy,
        IReadOnlyList<IReadOnlyList<EdgeFit>> outlines)
    {
        _terminals = terminals;
        _system = system;
        UnknownCount = unknownCount;
        _recovery = recovery;
        _relativeGain = GainShare * accuracy;
        _sample = Solve([.. terminals.Select(terminal => terminal.CurrentA)]);
        double greatestW = _sample.BarrelsW(_sample) + _sample.OverSheets(s => _sample.Flows[s].BalancedLossW());
        _lossBoundsW = new Bracket(greatestW - _sample.OwnErrorW, greatestW);
        _drop = MeasureDrop();
        _lossOutlineW = OutlineAllowance.Of(outlines, _sample.Flows, _sample.Flows);
        _dropOutlineV = _drop.Unit is { } unit ? OutlineAllowance.Of(outlines, _sample.Flows, unit.Flows)
            : _lossOutlineW * (1 / Math.Abs(terminals[0].CurrentA));
    }

    /// <summary>Linear equations; the bulges come on top.</summary>
    public int UnknownCount { get; }

    /// <summary>What this mesh proves.</summary>
    public RefinementRound Round => new(UnknownCount, _lossBoundsW, _drop.BoundsV, _lossOutlineW, _dropOutlineV, _drop.High, _drop.Low);

    /// <summary>Halvings that should bring the bounds of loss and drop within a share of the two; one count per triangle of each sheet.</summary>
    public IReadOnlyList<int[]> HalvingsFor(double accuracy)
    {
        double lossError = Math.Max(double.Epsilon, _sample.OwnErrorW);
        double ofMesh = Math.Max(LeastShareOfMesh * accuracy, accuracy - Round.OutlineShare);
        double allowedShare = ofMesh / Math.Max(_lossBoundsW.RelativeWidth, _drop.BoundsV.RelativeWidth);
        if (_drop.Unit is not { } unit)
        {
            return RefinementPlan.For(_sample.Flows, (flow, t, _) => flow.ErrorW(t) / lossError, allowedShare);
        }

        // Loss and drop ask for the same share less of the error of the net's currents and of the unit currents.
        double unitError = Math.Max(double.Epsilon, unit.OwnErrorW);
        return RefinementPlan.For(
            _sample.Flows, (flow, t, s) => (flow.ErrorW(t) / lossError) + (unit.Flows[s].ErrorW(t) / unitError), 2 * allowedShare);
    }

    /// <returns>The solution, or the result that says why there is none.</returns>
    public static (MeshedSolution? Solution, ConductionResult? Failure) Of(
        Net net, NetMesh mesh, IReadOnlyList<BoundTerminal> terminals, Stackup stack, double accuracy)
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

        if (system.IsBypassed(terminals))
        {
            return (null, ConductionResult.Failed(
                ConductionStatus.ContactsTouch, "the contacts touch each other, so the current crosses no copper between them"));
        }

        FactorResult factor = CholeskyFactor.Factor(system.Matrix);
        if (factor.Factor is null)
        {
            return (null, ConductionResult.Failed(ConductionStatus.SolverFailed, $"factorisation ended with {factor.Outcome}"));
        }

        FieldRecovery recovery = new(mesh, nodes, links, stack);
        CurvedSystem curved = new(system, factor.Factor, mesh, nodes, recovery.Edges, links, stack);
        return (new MeshedSolution(terminals, curved, system.Matrix.Size, recovery, accuracy, mesh.OutlineFits()), null);
    }

    /// <param name="rounds">The meshes tried, this one last, with the bounds they gave together.</param>
    public ConductionResult Result(IReadOnlyList<RefinementRound> rounds)
    {
        ContactLedger ledger = _recovery.Books(_sample.Flows, _sample.Potential.MemberV, _terminals);
        CurrentAccuracy accuracy = new(rounds[^1].WidthShare);
        IReadOnlyList<TerminalResult> terminals = accuracy.Of(
            ledger.Results(_sample.TerminalV), _recovery.BooksOfLinear(_sample.Potential.LinearV, _terminals).Results(_sample.TerminalV));
        double entering = _terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA);
        double leastW = (2 * _sample.PowerW(_sample)) - _sample.SourceW(_sample);
        Bracket loss = rounds[^1].LossBoundsW;
        Bracket drop = rounds[^1].DropBoundsV;
        return new ConductionResult(
            ConductionStatus.Solved, null,
            [.. _sample.Flows.Select(flow => new SheetField(flow.Layer, flow.Mesh, flow.PotentialV, flow.BalancedX, flow.BalancedY)
            {
                CopperShareUnderSolder = flow.Conductance.CopperShareUnderSolder,
                CornerCurrentAPerM = flow.CornerCurrentsAPerM(),
                MeanSquareA2PerM2 = flow.MeanSquaresA2PerM2(),
            })],
            accuracy.Of(BarrelsWithUnitCurrents(entering), _recovery.BarrelCurrents(_sample.Potential.LinearV)), terminals, drop.Middle, drop, loss.Middle, loss, rounds,
            ledger.LargestErrorA / entering,
            _lossBoundsW.Least > 0 ? Math.Abs(leastW - _lossBoundsW.Least) / _lossBoundsW.Least : null,
            UnknownCount, _sample.Potential.RelativeResidual)
        {
            PartsWhenAsked = new(() => ConductorPart.Of(_sample.Flows, _drop.Unit?.Flows, entering)),
        };
    }

    private IReadOnlyList<BarrelCurrent> BarrelsWithUnitCurrents(double enteringA) => [.. _sample.Barrels.Select(
        (barrel, b) => barrel with { UnitCurrentA = _drop.Unit?.Barrels[b].CurrentA ?? barrel.CurrentA / enteringA })];

    /// <summary>
    /// The drop is what the currents of the net and those of one ampere between its two terminals make together. With v
    /// and v' approximate potentials of the two and d, d' the differences of balanced and potential currents, it is
    /// I.v' + I'.v - J(v).J(v') + d.d'/2 within |d| |d'| / 2 (W. Prager and J. L. Synge, Q. Appl. Math. 5, 1947, applied
    /// to both: a potential's error is square to a balanced current's).
    /// </summary>
    private Drop MeasureDrop()
    {
        int high = IndexOfExtreme(sign: 1), low = IndexOfExtreme(sign: -1);
        if (_terminals.Count == 2)
        {
            return new Drop(high, low, _lossBoundsW * (1 / Math.Abs(_terminals[0].CurrentA)), null);
        }

        double[] currents = new double[_terminals.Count];
        (currents[high], currents[low]) = (1, -1);
        Sample unit = Solve(currents);
        double middle = _sample.PowerW(unit) + unit.PowerW(_sample) - _sample.SourceW(unit) + (_sample.ErrorW(unit) / 2);
        double half = Math.Sqrt(_sample.OwnErrorW * unit.OwnErrorW) / 2;
        return new Drop(high, low, new Bracket(middle - half, middle + half), unit);
    }

    private int IndexOfExtreme(int sign) => Enumerable
        .Range(0, _terminals.Count)
        .Where(t => Math.Sign(_terminals[t].CurrentA) == sign)
        .MaxBy(t => sign * _sample.TerminalV[t]);

    private Sample Solve(IReadOnlyList<double> terminalCurrentsA)
    {
        CurvedPotential potential = _system.Solve(terminalCurrentsA, _relativeGain);
        IReadOnlyList<double> terminalV = _recovery.TerminalPotentialsV(potential.MemberV, _terminals.Count);
        double powerW = Sample.PowerW(terminalCurrentsA, terminalV);
        return new Sample(
            terminalCurrentsA, terminalV, potential, _recovery.Flows(potential, _relativeGain * powerW),
            _recovery.BarrelCurrents(potential.MemberV));
    }

    /// <summary>The fields for given currents of the terminals, and what two of them make together, watts.</summary>
    private sealed record Sample(
        IReadOnlyList<double> TerminalA, IReadOnlyList<double> TerminalV, CurvedPotential Potential, SheetFlow[] Flows,
        List<BarrelCurrent> Barrels)
    {
        private double? _ownErrorW;

        public static double PowerW(IReadOnlyList<double> currentsA, IReadOnlyList<double> potentialsV) =>
            currentsA.Zip(potentialsV, (currentA, potentialV) => currentA * potentialV).Sum();

        /// <summary>The power these currents bring at the other's potentials.</summary>
        public double PowerW(Sample other) => PowerW(TerminalA, other.TerminalV);

        /// <summary>What the potentials' own currents make.</summary>
        public double SourceW(Sample other) =>
            BarrelsW(other) + OverSheets(s => Flows[s].SourceProductW(other.Flows[s]));

        /// <summary>What the differences of balanced and potential currents make. Barrels have none: theirs follow from the potentials.</summary>
        public double ErrorW(Sample other) => OverSheets(s => Flows[s].ErrorProductW(other.Flows[s]));

        /// <summary>The same with itself, worked out once.</summary>
        public double OwnErrorW => _ownErrorW ??= ErrorW(this);

        /// <summary>A sum over the sheets, whose terms are worked out side by side.</summary>
        public double OverSheets(Func<int, double> termOf)
        {
            double[] terms = new double[Flows.Length];
            Parallel.For(0, terms.Length, s => terms[s] = termOf(s));
            return terms.Sum();
        }

        public double BarrelsW(Sample other) =>
            Barrels.Zip(other.Barrels, (mine, others) => mine.CurrentA * others.CurrentA * mine.ResistanceOhm).Sum();
    }

    /// <param name="High">The terminal where current enters at the highest potential.</param>
    /// <param name="Low">The one where it leaves at the lowest.</param>
    /// <param name="BoundsV">Bounds of the drop from one to the other, volts.</param>
    /// <param name="Unit">The fields of one ampere between its terminals; null where they are those of the net, scaled.</param>
    private sealed record Drop(int High, int Low, Bracket BoundsV, Sample? Unit);
}
