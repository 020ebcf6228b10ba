using System.Collections.Concurrent;
using CopperPath.Artwork;
using CopperPath.Brief;
using CopperPath.Circuit;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.PowerPath;
using CopperPath.Thermal;

namespace CopperPath;

/// <summary>The main path: a review brief -> findings. Read it from top to bottom; each stage is a room of its own.</summary>
public static class Analysis
{
    /// <param name="briefFile">Path of the brief; the board's files are found relative to it.</param>
    /// <param name="progress">Told the name of each stage as it begins; may be null.</param>
    /// <param name="rebuilt">Told as soon as the copper is rebuilt and its nets are found, before the long part; may be null.</param>
    public static Review Check(
        string briefFile, Action<string>? progress = null, Action<ReviewBrief, Board>? rebuilt = null)
    {
        StageClock clock = new(progress);

        // 1. The brief: what to review, with which currents and limits.
        clock.Begin("Reading the brief");
        BriefReading reading = BriefFile.Read(briefFile);
        if (reading.Brief is not { } brief)
        {
            return Undecided(reading, null, reading.Diagnostics, clock);
        }

        // 2. The board: files -> artwork -> copper -> nets.
        Board board = BoardRebuilder.Rebuild(BriefFile.FolderOf(briefFile, brief), brief.Board, clock);
        List<Diagnostic> diagnostics = [.. reading.Diagnostics, .. board.Diagnostics];
        if (board.Nets is null)
        {
            return Undecided(reading, board, diagnostics, clock);
        }

        rebuilt?.Invoke(brief, board);

        // 3. The circuit: terminals of the brief as places on copper.
        clock.Begin("Binding terminals");
        (Stackup? stack, IReadOnlyList<string> assumed, Diagnostic? problem) = StackupBuilder.Build(brief, board.Nets);
        BoundCircuit circuit = CircuitBinder.Bind(brief, board.Nets);
        IReadOnlyList<Diagnostic> misplaced = HeatPlaceCheck.Run(brief.Thermal, board.Nets, board.Bounds);
        List<Diagnostic> unbound = [.. circuit.Diagnostics];
        (IReadOnlyList<BoundNet> flows, IReadOnlyList<string> summed) = Superposition.Of(circuit.Nets, brief.LoadProfile, unbound);
        diagnostics.AddRange([.. unbound, .. misplaced]);
        if (problem is not null)
        {
            diagnostics.Add(problem);
        }

        if (stack is null || misplaced.Count > 0 || unbound.Any(diagnostic => diagnostic.Severity == Severity.Error))
        {
            return Undecided(reading, board, diagnostics, clock);
        }

        (SolderCoat? solder, IReadOnlyList<string> ofSolder) = SolderSet.Read(brief.Stackup!, board, diagnostics);
        stack = stack with { Solder = solder };

        // 4. The fields: mesh, solve, cut across the current.
        IReadOnlyList<DrilledFeature> cuts = BoardRebuilder.UnplatedCuts(board);
        ConductorRating rating = ConductorRating.Shown(brief.Limits.JudgeBy, stack);
        BoardRanges ranges = BoardRanges.Of(brief, stack);
        Task<PathProposal> proposing = Task.Run(() => PowerPathFinder.Propose(board.Nets));
        SolvedNet[] solved = new SolvedNet[flows.Count];
        clock.Begin(FormattableString.Invariant($"Solving {solved.Length} stretches of copper"));
        Parallel.ForEach(
            Partitioner.Create(LargestFirst(flows), EnumerablePartitionerOptions.NoBuffering),
            i => solved[i] = Solve(flows[i], cuts, stack, rating, brief.Accuracy));

        // A fault names an entry, which may have been solved as part of a sum only.
        IEnumerable<BoundNet> faulted = circuit.Nets.Where(entry => brief.Faults.Any(fault => fault.Stretch == entry.Review.Name));
        IReadOnlyList<SolvedNet> alone = [.. faulted.Select(entry =>
            solved.FirstOrDefault(net => net.Bound == entry) ?? Solve(entry, cuts, stack, rating, brief.Accuracy))];

        // 5. The heat: the whole board's temperatures from the loss of the solved copper. What does not ask for them is
        // judged beside it.
        clock.Begin("Solving temperatures");
        PathProposal proposal = proposing.GetAwaiter().GetResult();
        PartsHeat parts = PartsHeat.Of(brief, circuit.Nets, proposal);
        Task<PathJudgement> ofPath = Task.Run(() => PathJudgement.Of(new PathContext(brief, solved, board.Nets, proposal, stack, rating, ranges)));
        Task<IReadOnlyList<Finding>> ofSlots = Task.Run(() => Judge.Slots(brief, solved, board.Nets));
        BoardHeat boardHeat = BoardHeat.Solve(
            board.Nets, board.Profile, board.Bounds, stack, brief.Thermal with { Losses = parts.Losses }, brief.AmbientK, SharedHeat.StretchesOf(solved, brief.LoadProfile));
        LoadedHeat? inTime = Loaded(brief, boardHeat, clock);

        // 6. The range of what is not known: the same results with everything at its worse end.
        clock.Begin("Working out tolerances");
        ToleranceStudy tolerance = ToleranceStudy.Of(brief, solved, stack, boardHeat, ranges);

        // 7. The judgement.
        clock.Begin("Judging");
        IReadOnlyList<Finding> ofCopper = Judge.Findings(
            brief, solved, stack, boardHeat.Own, parts, tolerance, ofSlots.GetAwaiter().GetResult(), boardHeat, inTime, alone);
        PathJudgement path = ofPath.GetAwaiter().GetResult();
        (IReadOnlyList<Finding> findings, IReadOnlyList<Diagnostic> waiverRemarks) = Waivers.Apply(
            [.. ofCopper, .. path.Findings], brief.Waivers, board.Fingerprint);
        diagnostics.AddRange(waiverRemarks);
        Verdict verdict = Judge.VerdictOf(findings, board.CopperIsUncertain || brief.Blanks.Count > 0 || solved.Length == 0);
        return new Review(brief, board, stack, solved, findings, verdict, RemarkBudget.Apply(diagnostics),
            [.. brief.StatedDefaults, .. assumed, .. summed, .. ofSolder, .. parts.Sources, .. ranges.Assumptions, .. board.Assumptions], clock.End())
        {
            BriefBytes = reading.Bytes,
            Own = boardHeat.Own,
            PartsHeat = parts,
            InTime = inTime,
            Tolerance = tolerance,
            SwitchNodes = path.SwitchNodes,
            HotLoops = path.HotLoops,
        };
    }

    /// <summary>What a folder or archive holds, without a brief.</summary>
    public static Survey Survey(string path, Action<string>? progress = null)
    {
        StageClock clock = new(progress);
        Board board = BoardRebuilder.Rebuild(path, null, clock);
        clock.Begin("Proposing the power path");
        PathProposal? proposal = board.Nets is { } nets ? PowerPathFinder.Propose(nets) : null;
        return new Survey(board, proposal, clock.End());
    }

    /// <summary>The board through the load profile of the brief; null without one, or where the stated currents have no steady state.</summary>
    private static LoadedHeat? Loaded(ReviewBrief brief, BoardHeat heat, StageClock clock)
    {
        if (brief.LoadProfile is not { } load || heat.Stretches.Count == 0 || heat.Own.Result.Status != ThermalStatus.Solved)
        {
            return null;
        }

        clock.Begin("Going through the load profile");
        return heat.Through(load);
    }

    /// <summary>The nets in the order they are begun, so that no core is left waiting for a large one begun last.</summary>
    private static IEnumerable<int> LargestFirst(IReadOnlyList<BoundNet> nets) =>
        Enumerable.Range(0, nets.Count).OrderByDescending(i => nets[i].Net.AreaM2);

    private static SolvedNet Solve(
        BoundNet bound, IReadOnlyList<DrilledFeature> cuts, Stackup stack, ConductorRating rating, double accuracy)
    {
        ConductionResult result = ConductionSolver.Solve(
            bound.Net, bound.Terminals, cuts, stack, SolveDemand.Default with { Accuracy = accuracy });
        Section[] sections = [.. result.Sheets.SelectMany(sheet => SectionFinder.Find(sheet, rating.TraceRiseK))];
        return new SolvedNet(bound, result, sections)
        {
            Joint = JointSectionFinder.Find(result, bound.Net, stack, sections, rating.JointRiseK),
        };
    }

    private static Review Undecided(BriefReading reading, Board? board, IReadOnlyList<Diagnostic> diagnostics, StageClock clock) =>
        new(reading.Brief, board, null, [], [], Verdict.CouldNotJudge, RemarkBudget.Apply(diagnostics), reading.Brief?.StatedDefaults ?? [], clock.End())
        {
            BriefBytes = reading.Bytes,
        };
}
