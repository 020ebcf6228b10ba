using CopperPath.Brief;

namespace CopperPath.Thermal;

/// <summary>A board on some cells, taken through a load, and what was seen on the way.</summary>
internal sealed class LoadRun
{
    private readonly HeatScene _scene;
    private readonly HeatModel _model;
    private readonly LaidBoard _board;
    private readonly int[][] _nodesOf;

    private LoadRun(HeatScene scene, HeatModel model, LaidBoard board)
    {
        (_scene, _model, _board) = (scene, model, board);
        _nodesOf = [.. scene.Stretches.Select(stretch => NodesOf(stretch))];
        Clear();
    }

    /// <summary>Why there are no temperatures; null when there are.</summary>
    public string? Failure { get; private set; }

    /// <summary>Times of the ends of steps, seconds, the beginning first.</summary>
    public List<double> TimesS { get; } = [];

    /// <summary>Hottest place of the board at those times, rise with all heat, kelvin.</summary>
    public List<double> HottestK { get; } = [];

    /// <summary>For each stretch what its own current adds to its hottest cell at those times, kelvin.</summary>
    public IReadOnlyList<List<double>> OwnK { get; private set; } = [];

    public int NodeCount => _model.Cells.NodeCount;

    public int Steps { get; private set; }

    // Largest rise of each node over time, with all heat and by the copper's own loss, and the whole board when a stretch was hottest.
    private double[] _mostK = [];
    private double[] _mostOwnK = [];
    private double[][] _atPeakK = [];

    /// <param name="scene">The board.</param>
    /// <param name="model">It on cells.</param>
    /// <param name="conditions">As stated.</param>
    /// <param name="load">Currents and heat of parts against time.</param>
    public static LoadRun Of(HeatScene scene, HeatModel model, HeatConditions conditions, LoadCase load)
    {
        LaidBoard board = model.Laid(conditions);
        LoadRun run = new(scene, model, board);
        LoadedSources all = new(model, conditions, load, hasCopperLoss: true);
        LoadedSources[] each = scene.HasOtherHeat(conditions.AmbientK) ? [all, new LoadedSources(model, conditions, load, hasCopperLoss: false)] : [all];
        double[] capacity = model.CapacityJPerK(board, conditions.Stack);
        List<HeatInTime> boards = [];
        foreach (LoadedSources sources in each)
        {
            double[] start = new double[capacity.Length];
            if (load.IsPeriodic || load.Start == LoadStart.Steady)
            {
                if (load.IsPeriodic)
                {
                    sources.SetToMean();
                }
                else
                {
                    sources.SetToBefore();
                }

                ThermalResult steady = ThermalSolver.Solve(board.Network, sources.Sources, board.Cooling, board.Sinks);
                if (steady.Status != ThermalStatus.Solved)
                {
                    run.Failure = steady.Explanation;
                    return run;
                }

                start = steady.RiseK;
            }

            boards.Add(new HeatInTime(board, sources.Sources, capacity, sources.SetTo, start));
        }

        TimeSteps steps = new(boards);
        bool isThrough = load.IsPeriodic ? steps.FindPeriod(load.Pieces, Enter, Begin) : steps.Through(load.Pieces, Enter, Begin());
        run.Steps = steps.Count;
        run.Failure = isThrough ? null : "the temperatures did not settle over the load profile";
        return run;

        void Enter(LoadPiece piece)
        {
            foreach (LoadedSources sources in each)
            {
                sources.Enter(piece);
            }
        }

        Action<double> Begin()
        {
            run.Clear();
            run.See(0, boards);
            return timeS => run.See(timeS, boards);
        }
    }

    /// <summary>Largest rise of every place over time with all heat.</summary>
    public TemperatureField Most() => FieldOf(_mostK);

    /// <summary>The same of what the copper's own loss adds.</summary>
    public TemperatureField MostOwn() => FieldOf(_mostOwnK);

    /// <summary>What the copper's own loss adds when a stretch is hottest by it.</summary>
    public TemperatureField AtPeakOf(int stretch) => FieldOf(_atPeakK[stretch]);

    private TemperatureField FieldOf(double[] riseK) => _model.Field(_board.Network,
        new ThermalResult(ThermalStatus.Solved, riseK, new HeatBalance(0, 0, default, default, 0, 0), 0, 0, 0));

    private void Clear()
    {
        TimesS.Clear();
        HottestK.Clear();
        OwnK = [.. _nodesOf.Select(_ => new List<double>())];
        _mostK = new double[NodeCount];
        _mostOwnK = new double[NodeCount];
        _atPeakK = [.. _nodesOf.Select(_ => Array.Empty<double>())];
    }

    private void See(double timeS, List<HeatInTime> boards)
    {
        double[] all = boards[0].RiseK;
        double[] own = boards.Count == 1 ? all : new double[all.Length];
        for (int n = 0; n < all.Length; n++)
        {
            own[n] = boards.Count == 1 ? all[n] : all[n] - boards[1].RiseK[n];
            _mostK[n] = TimesS.Count == 0 ? all[n] : Math.Max(_mostK[n], all[n]);
            _mostOwnK[n] = TimesS.Count == 0 ? own[n] : Math.Max(_mostOwnK[n], own[n]);
        }

        TimesS.Add(timeS);
        HottestK.Add(all.Max());
        for (int s = 0; s < _nodesOf.Length; s++)
        {
            double hottestK = double.NegativeInfinity;
            foreach (int node in _nodesOf[s])
            {
                hottestK = Math.Max(hottestK, own[node]);
            }

            if (OwnK[s].Count == 0 || hottestK > OwnK[s].Max())
            {
                _atPeakK[s] = own;
            }

            OwnK[s].Add(hottestK);
        }
    }

    /// <summary>Cells that belong to the copper of a stretch's net.</summary>
    private int[] NodesOf(HeatingStretch stretch)
    {
        HeatCells cells = _model.Cells;
        int owner = stretch.Net is { } net && _scene.Owners.TryGetValue(net, out int number) ? number : -1;
        List<int> nodes = [];
        foreach (HeatPlane plane in cells.Planes.Where(plane => plane.CopperLayer > 0))
        {
            for (int column = 0; column < cells.Count; column++)
            {
                if (owner >= 0 && _board.Network.OwnerOf(column, plane.CopperLayer) == owner)
                {
                    nodes.Add(cells.NodeOn(plane.CopperLayer, column));
                }
            }
        }

        return [.. nodes];
    }
}
