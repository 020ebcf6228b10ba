using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>One stretch of copper under the ranges of the brief.</summary>
/// <param name="Name">The stretch.</param>
/// <param name="LossW">Heat in its copper, watts; the worst lies between proven bounds.</param>
/// <param name="DropV">Largest drop, volts; the worst is proven between two terminals, of first order with more.</param>
/// <param name="SectionRiseK">Screening rise of the worst section, kelvin; null without one.</param>
/// <param name="HoleRiseK">Screening rise of the worst plated hole, kelvin; null without one.</param>
/// <param name="OwnRiseK">The board's own rise at the stretch's hottest place, kelvin; null where no temperatures were solved.</param>
public sealed record NetTolerance(string Name, Spread LossW, Spread DropV, Spread? SectionRiseK, Spread? HoleRiseK, Spread? OwnRiseK)
{
    /// <summary>The spreads there are, with what they are of and their unit.</summary>
    public IEnumerable<(string Quantity, string Unit, Spread Spread)> Spreads => new (string, string, Spread?)[]
    {
        ("loss", "W", LossW), ("drop", "V", DropV), ("rise of the worst section", "K", SectionRiseK),
        ("rise of the worst plated hole", "K", HoleRiseK), ("own peak rise", "K", OwnRiseK),
    }.Where(spread => spread.Item3 is not null).Select(spread => (spread.Item1, spread.Item2, spread.Item3!));
}

/// <summary>What the ranges of a brief make of its results: nominal, worst, and what each item does alone.</summary>
/// <param name="Nets">Solved stretches, in the order of the brief.</param>
/// <param name="WarmestK">
/// Temperature of the hottest copper with everything at its worse end and ambient at its highest, kelvin; infinite where the
/// board then runs away, null where no temperatures were solved.
/// </param>
public sealed record ToleranceStudy(IReadOnlyList<NetTolerance> Nets, double? WarmestK)
{
    /// <param name="brief">A brief with ranges.</param>
    /// <param name="nets">Its stretches.</param>
    /// <param name="stack">Nominal build.</param>
    /// <param name="board">The board's temperatures.</param>
    public static ToleranceStudy Of(ReviewBrief brief, IReadOnlyList<SolvedNet> nets, Stackup stack, BoardHeat board)
    {
        IReadOnlyList<ToleranceItem> items = ToleranceItem.Of(brief.Tolerance!);
        SolvedNet[] solved = [.. nets.Where(net => net.Conduction.HasFields)];
        NetTemperatures[] peaks = board.Own.Result.Status == ThermalStatus.Solved
            ? [.. solved.Select(net => NetTemperatures.Of(net, board.Own))] : [];
        HeatResponse? heat = peaks.Length == 0 ? null : HeatResponse.Of(brief, stack, items, board, peaks.MaxBy(peak => peak.PeakK)!);
        NetTolerance[] tolerances = new NetTolerance[solved.Length];
        Parallel.For(0, solved.Length, n => tolerances[n] = OfNet(solved[n], heat?.SpreadOf(peaks[n])));
        double? warmestK = heat is null ? null
            : (brief.Tolerance!.AmbientK?.Most ?? brief.AmbientK) + peaks.Max(peak => heat.WarmestRiseK(peak, board.Field));
        return new ToleranceStudy(tolerances, warmestK);

        NetTolerance OfNet(SolvedNet net, Spread? own)
        {
            NetResponse response = new(net, brief, stack);
            BuildState nominal = BuildState.Nominal(brief, stack);
            return new NetTolerance(
                net.Bound.Review.Name,
                Spread.Of(nominal, items, response.LossW, response.LossBoundsW),
                Spread.Of(nominal, items, response.DropV, response.DropBoundsV),
                net.Sections.Count > 0 ? Spread.Of(nominal, items, response.SectionRiseK) : null,
                net.Conduction.Barrels.Count > 0 ? Spread.Of(nominal, items, response.HoleRiseK) : null,
                own);
        }
    }
}
