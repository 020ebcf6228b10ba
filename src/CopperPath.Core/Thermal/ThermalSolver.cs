using CopperPath.LinearAlgebra;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// Steady temperatures of a board: conduction, heat from copper and components, films and radiation at both faces.
/// </summary>
/// <remarks>
/// Newton's method on the heat left over in each node. The copper's loss is linear in its temperature and enters the
/// equations exactly, with the current held as the electrical solve found it: its growth is taken off the diagonal, and
/// where that leaves a matrix that is not positive definite at every temperature up to the limit, heat is made faster
/// than it can leave: runaway. The edges of the board give nothing away.
/// </remarks>
public static class ThermalSolver
{
    /// <summary>Heat left over, summed without sign, as a share of the heat put in: below this the solution stands.</summary>
    private const double Tolerance = 1e-8;

    /// <summary>Each step of Newton's method leaves about this much of the error by its own: its equations are solved no closer.</summary>
    private const double StepTolerance = 0.003;

    /// <summary>The last step is solved to this much of what may be left over, and no closer.</summary>
    private const double LastStep = 0.3;
    private const int MostRounds = 40;

    /// <summary>Laminate has long gone and the laws used here have ended, kelvin; common practice, no source.</summary>
    private const double HottestK = Units.ZeroCelsiusK + 300;

    /// <summary>A still face is taken to shed this much at first, W/(m2 K): only a start for the iteration.</summary>
    private const double FirstFilmWPerM2K = 10;

    /// <param name="network">Conduction inside the board.</param>
    /// <param name="sources">Heat put in.</param>
    /// <param name="cooling">Films and radiation.</param>
    /// <param name="sinks">Places tied to a temperature.</param>
    /// <param name="start">Rises to start from, kelvin, one for each node; null to start from an even one.</param>
    /// <param name="tolerance">Heat that may be left over, as a share of the heat put in; null for 1e-8.</param>
    public static ThermalResult Solve(
        HeatNetwork network, HeatSources sources, Cooling cooling, IReadOnlyList<HeatSink> sinks, double[]? start = null,
        double? tolerance = null)
    {
        Balance balance = new(network, sources, cooling, sinks);
        if (balance.HasNoWayOut)
        {
            return balance.Ended(ThermalStatus.NoWayOut, [], 0);
        }

        double limitK = HottestK - cooling.AmbientK;
        if (start is not null && SolveFrom(balance, balance.WithHeld(start), tolerance ?? Tolerance) is { Status: ThermalStatus.Solved } near && near.RiseK.Max() <= limitK)
        {
            return near;
        }

        double startK = Math.Min(balance.FirstGuessK(FirstFilmWPerM2K), limitK / 2);
        for (; startK <= limitK; startK = Math.Max(1, 2 * startK))
        {
            ThermalResult result = SolveFrom(balance, balance.Start(startK), tolerance ?? Tolerance);
            if (result.Status != ThermalStatus.Runaway)
            {
                return result.Status == ThermalStatus.Solved && result.RiseK.Max() > limitK
                    ? result with { Status = ThermalStatus.TooHot } : result;
            }
        }

        return balance.Ended(ThermalStatus.Runaway, [], 0);
    }

    private static ThermalResult SolveFrom(Balance balance, double[] rise, double tolerance)
    {
        double[] step = new double[rise.Length];
        HeatMultigrid? preconditioner = null;
        for (int round = 0; round < MostRounds; round++)
        {
            double leftW = balance.Update(rise);
            if (leftW <= tolerance * balance.HeatInW)
            {
                return balance.Ended(ThermalStatus.Solved, rise, round);
            }

            preconditioner ??= balance.Preconditioner();
            Array.Clear(step);
            ConjugateGradientResult solved = ConjugateGradient.Solve(
                balance.Matrix, balance.SurplusW, step, preconditioner,
                Math.Max(StepTolerance, LastStep * tolerance * balance.HeatInW / leftW));
            if (solved.Outcome == IterationOutcome.NotPositiveDefinite)
            {
                return balance.Ended(ThermalStatus.Runaway, rise, round);
            }

            for (int n = 0; n < rise.Length; n++)
            {
                rise[n] += step[n];
            }
        }

        return balance.Ended(ThermalStatus.NotConverged, rise, MostRounds);
    }

    /// <summary>The books of every node: what comes in, what goes out, and how both change with temperature.</summary>
    internal sealed class Balance
    {
        private readonly HeatNetwork _network;
        private readonly HeatSources _sources;
        private readonly FaceExchange _top;
        private readonly FaceExchange _bottom;
        private readonly bool[] _isHeld;
        private readonly double[] _heldRiseK;
        private readonly double[] _sinkWPerK;
        private readonly double[] _sinkWAtNoRise;
        private readonly double[] _conductionDiagonal;
        private readonly double _boardAreaM2;
        private HeatBalance _books = new(0, 0, default, default, 0, 0);

        public Balance(HeatNetwork network, HeatSources sources, Cooling cooling, IReadOnlyList<HeatSink> sinks)
        {
            (_network, _sources) = (network, sources);
            _top = new FaceExchange(network, cooling, isTop: true);
            _bottom = new FaceExchange(network, cooling, isTop: false);
            int size = network.Cells.NodeCount;
            _isHeld = new bool[size];
            _heldRiseK = new double[size];
            _sinkWPerK = new double[size];
            _sinkWAtNoRise = new double[size];
            foreach (HeatSink sink in sinks)
            {
                Tie(sink);
            }

            if (_top.GivesNothing && _bottom.GivesNothing)
            {
                HoldWhatNoSinkReaches();
            }

            Matrix = network.Matrix(_isHeld);

            // What conducts nowhere, such as a cell of bare outline without laminate, may still be tied to the air.
            _conductionDiagonal = [.. Matrix.Diagonal.Select((diagonal, n) => Matrix.IsFree[n] ? diagonal : 0)];
            SurplusW = new double[size];
            for (int column = 0; column < network.Cells.Count; column++)
            {
                _boardAreaM2 += network.BoardAreaM2(column);
            }
        }

        /// <summary>True when heat is made where neither a face nor a sink takes it away.</summary>
        public bool HasNoWayOut { get; private set; }

        /// <summary>How the heat left over changes with the rises, after <see cref="Update"/>.</summary>
        public HeatMatrix Matrix { get; }

        /// <summary>Heat left over in each node, watts, after <see cref="Update"/>; 0 at held nodes.</summary>
        public double[] SurplusW { get; private set; }

        public HeatMultigrid? Preconditioner() =>
            HeatMultigrid.TryCreate(Matrix, _network.Cells);

        public double HeatInW => _books.InW;

        public double FirstGuessK(double filmWPerM2K) =>
            (_sources.JouleAtAmbientW.Sum() + _sources.ComponentW.Sum()) / (2 * filmWPerM2K * _boardAreaM2);

        public double[] Start(double riseK) =>
            [.. Enumerable.Range(0, _isHeld.Length).Select(n => _isHeld[n] ? _heldRiseK[n] : riseK)];

        public double[] WithHeld(double[] riseK) => [.. riseK.Select((rise, n) => _isHeld[n] ? _heldRiseK[n] : rise)];

        /// <returns>Heat left over, summed without sign, watts.</returns>
        public double Update(double[] riseK)
        {
            double[] surplus = _network.InflowW(riseK);
            double[] slope = [.. _conductionDiagonal];
            double jouleW = 0;
            double sunkW = 0;
            double fedW = 0;
            for (int n = 0; n < surplus.Length; n++)
            {
                double growth = _sources.JouleAtAmbientW[n] * _sources.ResistivityGrowthPerK;
                double joule = _sources.JouleAtAmbientW[n] + (growth * riseK[n]);
                double sunk = (_sinkWPerK[n] * riseK[n]) - _sinkWAtNoRise[n];
                jouleW += joule;
                sunkW += Math.Max(0, sunk);
                fedW += Math.Max(0, -sunk);
                surplus[n] += joule + _sources.ComponentW[n] - sunk;
                slope[n] += _sinkWPerK[n] - growth;
            }

            (double convectedTop, double radiatedTop) = _top.Update(riseK, surplus, slope);
            (double convectedBottom, double radiatedBottom) = _bottom.Update(riseK, surplus, slope);
            double left = 0;
            for (int n = 0; n < surplus.Length; n++)
            {
                if (_isHeld[n])
                {
                    // What is left over in a held node is what holds it.
                    sunkW += Math.Max(0, surplus[n]);
                    fedW += Math.Max(0, -surplus[n]);
                    surplus[n] = 0;
                    slope[n] = 1;
                }

                left += Math.Abs(surplus[n]);
                Matrix.Diagonal[n] = slope[n] == 0 && !Matrix.IsFree[n] ? 1 : slope[n];
            }

            SurplusW = surplus;
            _books = new HeatBalance(
                jouleW, _sources.ComponentW.Sum(), (convectedTop, convectedBottom), (radiatedTop, radiatedBottom), sunkW, fedW);
            return left;
        }

        public ThermalResult Ended(ThermalStatus status, double[] riseK, int rounds) =>
            new(status, riseK, _books, _top.FilmWPerM2K, _bottom.FilmWPerM2K, rounds)
            {
                StillAirTop = _top.StillAir,
                StillAirBottom = _bottom.StillAir,
            };

        /// <summary>Where faces give nothing, pieces that no sink reaches stay as warm as they are: at ambient without heat, without end with it.</summary>
        private void HoldWhatNoSinkReaches()
        {
            bool[] isReached = new bool[_isHeld.Length];
            Queue<int> open = new();
            for (int n = 0; n < isReached.Length; n++)
            {
                if (_isHeld[n] || _sinkWPerK[n] > 0)
                {
                    isReached[n] = true;
                    open.Enqueue(n);
                }
            }

            HeatMatrix conduction = _network.Matrix(new bool[_isHeld.Length]);
            while (open.TryDequeue(out int node))
            {
                foreach (int next in conduction.NeighboursOf(node))
                {
                    if (!isReached[next])
                    {
                        isReached[next] = true;
                        open.Enqueue(next);
                    }
                }
            }

            for (int n = 0; n < isReached.Length; n++)
            {
                if (!isReached[n])
                {
                    HasNoWayOut |= _sources.JouleAtAmbientW[n] + _sources.ComponentW[n] > 0;
                    _isHeld[n] = true;
                }
            }
        }

        private void Tie(HeatSink sink)
        {
            foreach ((int node, double share) in sink.Spot.Parts)
            {
                if (sink.ResistanceKPerW == 0)
                {
                    _isHeld[node] = true;
                    _heldRiseK[node] = sink.RiseK;
                }
                else
                {
                    _sinkWPerK[node] += share / sink.ResistanceKPerW;
                    _sinkWAtNoRise[node] += share * sink.RiseK / sink.ResistanceKPerW;
                }
            }
        }
    }
}
