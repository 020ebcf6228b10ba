namespace CopperPath.Thermal;

/// <summary>
/// Boards taken through time together, in steps as long as the error allowed lets them be. Steps end where loads have corners. Work is
/// counted in steps, so that the same boards take the same steps on any machine.
/// </summary>
/// <param name="boards">The boards, at the same present.</param>
internal sealed class TimeSteps(IReadOnlyList<HeatInTime> boards)
{
    /// <summary>Error allowed in a step, as a share of the largest rise there is.</summary>
    private const double ErrorShare = 5e-4;

    /// <summary>Rises smaller than this have no meaning here, kelvin.</summary>
    private const double LeastErrorK = 1e-4;

    /// <summary>A period may end this many times the error of a step off its beginning.</summary>
    private const double PeriodFactor = 3;

    private const int MostPeriods = 20;
    private const int MostSteps = 20_000;
    private const double MostGrowth = 4;
    private const double LeastGrowth = 0.2;

    private double _stepS;
    private double _largestK;

    /// <summary>Steps taken.</summary>
    public int Count { get; private set; }

    /// <summary>Goes through pieces of a load, one after the other.</summary>
    /// <param name="pieces">In their order.</param>
    /// <param name="entered">Told each piece before it begins: from then on loads are those of that piece.</param>
    /// <param name="told">Told the time after each step.</param>
    /// <returns>False where that takes more steps than are allowed, or no step is short enough.</returns>
    public bool Through(IEnumerable<LoadPiece> pieces, Action<LoadPiece> entered, Action<double> told)
    {
        foreach (LoadPiece piece in pieces)
        {
            entered(piece);
            if (!GoOn(piece.FromS, piece.ToS, piece.Jumps, told))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>
    /// The state in which a load that repeats leaves everything as it was a period before. The boards begin near it; they end in it.
    /// </summary>
    /// <param name="pieces">One period, the first with a jump.</param>
    /// <param name="entered">As for <see cref="Through"/>.</param>
    /// <param name="begin">Called before each period that is tried; what it gives is told the time after each step of it.</param>
    /// <returns>False where the period does not settle.</returns>
    public bool FindPeriod(IReadOnlyList<LoadPiece> pieces, Action<LoadPiece> entered, Func<Action<double>> begin)
    {
        for (int round = 0; round < MostPeriods; round++)
        {
            double[][] starts = [.. boards.Select(board => board.RiseK)];
            if (!Through(pieces, entered, begin()))
            {
                return false;
            }

            double[]?[] nearer = [.. boards.Select((board, b) => board.NearerStart(starts[b], pieces[^1].ToS - pieces[0].FromS))];
            if (nearer.Contains(null))
            {
                return false;
            }

            double offK = nearer.Select((rises, b) => rises!.Zip(starts[b]).Max(pair => Math.Abs(pair.First - pair.Second))).Max();
            if (offK <= PeriodFactor * ToleranceK())
            {
                return true;
            }

            for (int b = 0; b < boards.Count; b++)
            {
                boards[b].Restart(nearer[b]!);
            }
        }

        return false;
    }

    /// <param name="fromS">The present, seconds.</param>
    /// <param name="toS">End, seconds; loads are smooth up to there.</param>
    /// <param name="jumps">True where the loads jump at the present.</param>
    /// <param name="told">Told the time after each step.</param>
    private bool GoOn(double fromS, double toS, bool jumps, Action<double> told)
    {
        double spanS = toS - fromS;
        if (jumps || _stepS == 0)
        {
            foreach (HeatInTime board in boards)
            {
                board.Jump(fromS);
            }

            _stepS = Math.Max(1e-9 * spanS, boards.Min(board => board.StepForS(2 * ToleranceK())));
        }

        for (double timeS = fromS; timeS < toS;)
        {
            // No sliver is left over at the end.
            double leftS = toS - timeS;
            double stepS = _stepS >= leftS ? leftS : Math.Min(_stepS, leftS / 2 < _stepS ? leftS / 2 : _stepS);
            double toleranceK = ToleranceK();
            double errorK = boards.Max(board => board.TryStep(timeS, stepS, toleranceK));
            double growth = double.IsFinite(errorK)
                ? Math.Clamp(0.9 * Math.Cbrt(toleranceK / Math.Max(errorK, 1e-12)), LeastGrowth, MostGrowth) : LeastGrowth;
            if (++Count > MostSteps || stepS < 1e-12 * spanS)
            {
                return false;
            }

            if (errorK <= toleranceK)
            {
                foreach (HeatInTime board in boards)
                {
                    board.Accept();
                }

                timeS = stepS == leftS ? toS : timeS + stepS;
                told(timeS);

                // A step cut short at a corner says little about how long the next may be.
                _stepS = stepS < _stepS ? Math.Max(_stepS, growth * stepS) : growth * stepS;
            }
            else
            {
                _stepS = growth * stepS;
            }
        }

        return true;
    }

    private double ToleranceK()
    {
        _largestK = Math.Max(_largestK, boards.Max(board => board.RiseK.Max(Math.Abs)));
        return Math.Max(LeastErrorK, ErrorShare * _largestK);
    }
}

/// <summary>A stretch of time in which a load has no corner.</summary>
/// <param name="FromS">Beginning, seconds.</param>
/// <param name="ToS">End, seconds.</param>
/// <param name="Jumps">True where the load is another at once at the beginning.</param>
internal sealed record LoadPiece(double FromS, double ToS, bool Jumps)
{
    /// <summary>A time in it that is at neither end, seconds.</summary>
    public double MiddleS => (FromS + ToS) / 2;
}
