using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>One stretch of copper over the range of what is not known.</summary>
/// <param name="Net">The stretch.</param>
/// <param name="LossW">Heat in its copper, watts; the worst lies between proven bounds.</param>
/// <param name="DropV">Largest drop, volts; the worst is proven between two terminals, of first order with more.</param>
/// <param name="SectionRiseK">Screening rise of the worst section, kelvin; null without one.</param>
/// <param name="HoleRiseK">Screening rise of the worst plated hole, kelvin; null without one.</param>
/// <param name="OwnRiseK">The board's own rise at the stretch's hottest place, kelvin; null where no temperatures were solved.</param>
public sealed record NetTolerance(SolvedNet Net, Spread LossW, Spread DropV, Spread? SectionRiseK, Spread? HoleRiseK, Spread? OwnRiseK)
{
    /// <summary>Name of the stretch.</summary>
    public string Name => Net.Bound.Review.Name;

    /// <summary>What its own current adds as stated; null where no temperatures were solved.</summary>
    public NetTemperatures? Own { get; init; }

    /// <summary>Where the own rise is largest at worst, with its value and estimate as stated; null where there is none.</summary>
    public HottestPlace? OwnAt { get; init; }

    /// <summary>The spreads there are, with what they are of and their unit.</summary>
    public IEnumerable<(string Quantity, string Unit, Spread Spread)> Spreads => new (string, string, Spread?)[]
    {
        ("loss", "W", LossW), ("drop", "V", DropV), ("rise of the worst section", "K", SectionRiseK),
        ("rise of the worst plated hole", "K", HoleRiseK), ("own peak rise", "K", OwnRiseK),
    }.Where(spread => spread.Item3 is not null).Select(spread => (spread.Item1, spread.Item2, spread.Item3!));
}

/// <summary>What is not known makes of the results: nominal, worst, and what each item does alone.</summary>
/// <param name="Brief">Values as stated.</param>
/// <param name="Stack">The build as stated.</param>
/// <param name="Ranges">What is not known.</param>
/// <param name="Nets">Solved stretches, in the order of the brief.</param>
public sealed record ToleranceStudy(ReviewBrief Brief, Stackup Stack, BoardRanges Ranges, IReadOnlyList<NetTolerance> Nets)
{
    private HeatResponse? Heat { get; init; }

    /// <summary>
    /// Temperature of the board's hottest place with all heat, kelvin, with everything at its worse end and ambient at its highest;
    /// null where no temperatures were solved.
    /// </summary>
    public Spread? TemperatureK { get; init; }

    /// <summary>Where that is at worst.</summary>
    public HottestPlace? HottestAt { get; init; }

    /// <param name="brief">Values as stated.</param>
    /// <param name="nets">Its stretches.</param>
    /// <param name="stack">Nominal build.</param>
    /// <param name="board">The board's temperatures.</param>
    /// <param name="ranges">What is not known.</param>
    public static ToleranceStudy Of(ReviewBrief brief, IReadOnlyList<SolvedNet> nets, Stackup stack, BoardHeat board, BoardRanges ranges)
    {
        SolvedNet[] solved = [.. nets.Where(net => net.Conduction.HasFields)];
        NetTemperatures[] peaks = new NetTemperatures[solved.Length];
        HeatResponse? heat = null;
        if (board.Own.Result.Status == ThermalStatus.Solved && solved.Length > 0)
        {
            Parallel.For(0, solved.Length, n => peaks[n] = NetTemperatures.Of(solved[n], board.Own));
            heat = HeatResponse.Of(brief, stack, ranges, board, peaks.MaxBy(peak => peak.PeakK)!);
        }

        NetTolerance[] tolerances = new NetTolerance[solved.Length];
        Parallel.For(0, solved.Length, n => tolerances[n] = OfNet(n));
        (Spread Spread, HottestPlace At)? hottest = heat?.Temperature();
        return new ToleranceStudy(brief, stack, ranges, tolerances) { Heat = heat, TemperatureK = hottest?.Spread, HottestAt = hottest?.At };

        NetTolerance OfNet(int n)
        {
            SolvedNet net = solved[n];
            (Spread Spread, HottestPlace At)? own = heat?.OwnRiseOf(net, peaks[n]);
            NetResponse response = new(net, brief, stack, ranges);
            return new NetTolerance(
                net, response.SpreadOf(response.LossW, response.LossBoundsW), response.SpreadOf(response.DropV, response.DropBoundsV),
                net.Sections.Count > 0 ? response.SpreadOf(response.SectionRiseK) : null,
                net.Conduction.Barrels.Count > 0 ? response.SpreadOf(response.HoleRiseK) : null,
                own?.Spread)
            {
                Own = heat is null ? null : peaks[n],
                OwnAt = own?.At,
            };
        }
    }

    /// <summary>The results of a stretch, known by its entry in the brief; null for one that was not solved.</summary>
    public NetTolerance? Of(SolvedNet net) => Nets.FirstOrDefault(one => one.Net.Bound.Review.Position == net.Bound.Review.Position);

    /// <summary>A relation at the worse ends.</summary>
    internal ChartAtWorst AtWorst(ConductorRating rating)
    {
        BuildState worst = ToleranceItem.OfResistance(Ranges).Aggregate(BuildState.Nominal(Brief, Stack), (state, item) => item.Usual.Apply(state));
        return new ChartAtWorst(rating.On(worst.StackOf(Brief, Stack)), worst.CurrentScale);
    }

    /// <summary>The rise of a cut by a relation.</summary>
    internal Spread OfCut(SolvedNet net, Section section, ConductorRating rating) => new NetResponse(net, Brief, Stack, Ranges).OfCut(section, rating);

    /// <summary>The rise of a plated hole by a relation.</summary>
    internal Spread OfHole(SolvedNet net, BarrelCurrent barrel, ConductorRating rating) => new NetResponse(net, Brief, Stack, Ranges).OfHole(barrel, rating);

    /// <summary>What its own current adds to a place of a stretch at worst, kelvin; null where no temperatures were solved.</summary>
    internal double? WorstOwnRiseK(SolvedNet net, HottestPlace place) => Heat?.OwnRiseAt(place, net.Bound.Net).Worst;
}
