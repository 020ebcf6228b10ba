using CopperPath.LinearAlgebra;

namespace CopperPath.Thermal;

/// <summary>
/// A board whose temperatures follow its heat: at each node the heat left over warms what stores it, C dT/dt = heat in less heat out.
/// </summary>
/// <remarks>
/// TR-BDF2: half of a step by the trapezoidal rule, the rest by the second backward difference, both with the same matrix; second order,
/// and no oscillation however stiff (Bank et al., IEEE Transactions on Electron Devices 32 (1985) 1992; as a pair with an error
/// estimate, smoothed by that matrix, Hosea and Shampine, Applied Numerical Mathematics 20 (1996) 21; from memory). Films, radiation
/// and the copper's growing loss are those of the end of each part: Newton's method.
/// </remarks>
internal sealed class HeatInTime
{
    private static readonly double s_gamma = 2 - Math.Sqrt(2);
    private static readonly double s_d = s_gamma / 2;
    private static readonly double s_w = Math.Sqrt(2) / 4;

    /// <summary>What Newton's last step may still change, as a share of the error allowed.</summary>
    private const double NewtonShare = 0.02;
    private const double LinearTolerance = 1e-3;

    /// <summary>An error estimate need not be known better.</summary>
    private const double EstimateTolerance = 0.03;

    /// <summary>A preconditioner serves steps that many times longer or shorter.</summary>
    private const double PreconditionerRange = 4;
    private const int MostRounds = 12;

    private readonly ThermalSolver.Balance _balance;
    private readonly HeatNetwork _network;
    private readonly double[] _capacityJPerK;
    private readonly Action<double> _load;
    private HeatMultigrid? _preconditioner;
    private double _preconditionedPerS;

    // What share of its step Newton's method leaves, as last seen, and in steps of which length.
    private (double Share, double PerS) _left = (1, double.PositiveInfinity);

    // What warms each node at the present, watts, and what it changed by in the step before.
    private double[] _flowW;
    private double[]? _changeKPerS;
    private Attempt? _attempt;

    /// <param name="board">Conduction, cooling and sinks.</param>
    /// <param name="sources">Heat put in, as <paramref name="load"/> sets it.</param>
    /// <param name="capacityJPerK">Heat each node stores, joules per kelvin.</param>
    /// <param name="load">Sets the sources to what they are at a time, seconds.</param>
    /// <param name="start">Rises at the beginning, kelvin; held nodes have their own.</param>
    public HeatInTime(LaidBoard board, HeatSources sources, double[] capacityJPerK, Action<double> load, double[] start)
    {
        _network = board.Network;
        _balance = new ThermalSolver.Balance(board.Network, sources, board.Cooling, board.Sinks);
        (_capacityJPerK, _load) = (capacityJPerK, load);
        RiseK = _balance.WithHeld(start);
        _flowW = new double[start.Length];
    }

    /// <summary>Rises at the present, kelvin.</summary>
    public double[] RiseK { get; private set; }

    /// <summary>To be called where the heat jumps: what came before says nothing of what comes.</summary>
    /// <param name="timeS">The present.</param>
    public void Jump(double timeS)
    {
        _load(timeS);
        _balance.Update(RiseK);
        _flowW = _balance.SurplusW;
        _changeKPerS = null;
    }

    /// <summary>Sets other rises at the present.</summary>
    public void Restart(double[] riseK) => RiseK = _balance.WithHeld(riseK);

    /// <summary>A step in which the fastest node changes by about a stated number of kelvin, seconds.</summary>
    public double StepForS(double changeK)
    {
        double fastest = 0;
        for (int n = 0; n < _flowW.Length; n++)
        {
            fastest = _capacityJPerK[n] > 0 ? Math.Max(fastest, Math.Abs(_flowW[n]) / _capacityJPerK[n]) : fastest;
        }

        return fastest > 0 ? changeK / fastest : double.PositiveInfinity;
    }

    /// <summary>Tries a step; <see cref="Accept"/> takes it.</summary>
    /// <returns>Largest error of a rise, kelvin; infinite where the equations of the step did not settle.</returns>
    public double TryStep(double timeS, double stepS, double toleranceK)
    {
        double perS = 1 / (s_d * stepS);
        int size = RiseK.Length;
        double[] middle = [.. RiseK];
        for (int n = 0; n < size && _changeKPerS is not null; n++)
        {
            middle[n] += s_gamma * stepS * _changeKPerS[n];
        }

        _attempt = null;
        if (!Settle(middle, timeS + (s_gamma * stepS), perS, _flowW, toleranceK))
        {
            return double.PositiveInfinity;
        }

        double[] known = new double[size];
        double[] middleW = new double[size];
        double[] end = new double[size];
        for (int n = 0; n < size; n++)
        {
            middleW[n] = (_capacityJPerK[n] * perS * (middle[n] - RiseK[n])) - _flowW[n];
            known[n] = s_w / s_d * (_flowW[n] + middleW[n]);
            end[n] = RiseK[n] + ((middle[n] - RiseK[n]) / s_gamma);
        }

        if (!Settle(end, timeS + stepS, perS, known, toleranceK))
        {
            return double.PositiveInfinity;
        }

        double[] endW = new double[size];
        double[] difference = new double[size];
        for (int n = 0; n < size; n++)
        {
            endW[n] = (_capacityJPerK[n] * perS * (end[n] - RiseK[n])) - known[n];
            difference[n] = ((((4 * s_w) - 1) * _flowW[n]) - middleW[n] + (2 * s_d * endW[n])) / (3 * s_d);
        }

        double[] error = new double[size];
        ConjugateGradient.Solve(_balance.Matrix, difference, error, _preconditioner, EstimateTolerance);
        _attempt = new Attempt(stepS, end, endW);
        return error.Max(Math.Abs);
    }

    /// <summary>Takes the step tried last.</summary>
    public void Accept()
    {
        (double stepS, double[] end, double[] endW) = _attempt!;
        double[] change = new double[end.Length];
        for (int n = 0; n < end.Length; n++)
        {
            change[n] = (end[n] - RiseK[n]) / stepS;
        }

        (RiseK, _flowW, _changeKPerS, _attempt) = (end, endW, change, null);
    }

    /// <summary>
    /// For a load that repeats: brings the start of a period nearer to that of the periodic state, from what a period changed it by.
    /// </summary>
    /// <remarks>
    /// A mode that decays with x in a period needs 1 / (1 - exp(-x)) times what the period changed; in its place 1/x + 1/2 + x / (2x + 12),
    /// which is within 9 % of it for every x, asks only for two solutions of equations as those of a step. Repeated, each round leaves a
    /// tenth of the error before it.
    /// </remarks>
    /// <param name="start">Rises at the start of the period just gone through, kelvin.</param>
    /// <param name="periodS">Its length, seconds.</param>
    /// <returns>The start to try next; null where the board runs away.</returns>
    public double[]? NearerStart(double[] start, double periodS)
    {
        double[] stored = new double[start.Length];
        for (int n = 0; n < start.Length; n++)
        {
            stored[n] = _capacityJPerK[n] * (RiseK[n] - start[n]) / periodS;
        }

        if (Lasting(start, stored, 0) is not { } slow || Lasting(start, stored, 6 / periodS) is not { } fast)
        {
            return null;
        }

        return [.. start.Select((_, n) => RiseK[n] + slow[n] - (3 * fast[n]))];
    }

    private double[]? Lasting(double[] riseK, double[] powerW, double perS)
    {
        _balance.Update(riseK);
        AddMass(perS);
        double[] answer = new double[riseK.Length];
        return ConjugateGradient.Solve(_balance.Matrix, powerW, answer, _balance.Preconditioner(), LinearTolerance).Outcome == IterationOutcome.NotPositiveDefinite
            ? null : answer;
    }

    private void AddMass(double perS)
    {
        for (int n = 0; n < _capacityJPerK.Length; n++)
        {
            _balance.Matrix.Diagonal[n] += perS * _capacityJPerK[n];
        }
    }

    /// <summary>
    /// Newton's method for C (T - T0) perS = heat left over + what is known, from a guess in the rises. False where it does not settle.
    /// </summary>
    private bool Settle(double[] riseK, double timeS, double perS, double[] knownW, double toleranceK)
    {
        _load(timeS);
        double[] step = new double[riseK.Length];
        double before = 0;
        for (int round = 0; round < MostRounds; round++)
        {
            _balance.Update(riseK);
            double[] left = _balance.SurplusW;
            for (int n = 0; n < left.Length; n++)
            {
                left[n] += knownW[n] - (_capacityJPerK[n] * perS * (riseK[n] - RiseK[n]));
            }

            AddMass(perS);
            if (_preconditioner is null || perS > PreconditionerRange * _preconditionedPerS || perS < _preconditionedPerS / PreconditionerRange)
            {
                (_preconditioner, _preconditionedPerS) = (HeatMultigrid.TryCreate(_balance.Matrix, _network.Cells), perS);
            }

            Array.Clear(step);
            if (ConjugateGradient.Solve(_balance.Matrix, left, step, _preconditioner, LinearTolerance).Outcome == IterationOutcome.NotPositiveDefinite)
            {
                return false;
            }

            double largest = 0;
            for (int n = 0; n < step.Length; n++)
            {
                riseK[n] += step[n];
                largest = Math.Max(largest, Math.Abs(step[n]));
            }

            // What is left grows with the length of the step: what films and radiation do beside what is stored.
            if (round > 0 && before > 0)
            {
                _left = (Math.Min(1, largest / before), perS);
            }

            if (Math.Min(1, _left.Share * Math.Max(1, _left.PerS / perS)) * largest <= NewtonShare * toleranceK)
            {
                return true;
            }

            before = largest;
        }

        return false;
    }

    private sealed record Attempt(double StepS, double[] EndK, double[] EndW);
}
