using CopperPath.Brief;
using CopperPath.Judging;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>The board through the load profile, for the person at the terminal.</summary>
internal static class LoadText
{
    public static void Write(TextWriter writer, Review review)
    {
        if (review.InTime is not { } heat || review.Brief!.LoadProfile is not { } profile)
        {
            return;
        }

        string over = Over(profile);
        writer.WriteLine($"{char.ToUpperInvariant(over[0])}{over[1..]}:");
        if (heat.Failure is { } failure)
        {
            writer.WriteLine($"No temperatures: {failure}.");
            writer.WriteLine();
            return;
        }

        string[] heads = profile.IsPeriodic ? ["Mean", "Ripple"] : ["At the end"];
        TextTable table = new(["Stretch of copper", "Own peak", "Give or take", "At", .. heads], [false, true, true, true, .. heads.Select(_ => true)]);
        foreach ((SolvedNet net, StretchInTime inTime) in Stretches(review, heat))
        {
            double[] more = profile.IsPeriodic ? [inTime.MeanK, inTime.RippleK] : [inTime.FinalK];
            table.Add([
                net.Bound.Review.Name, QuantityText.TemperatureDifference(inTime.Peak.RiseK), QuantityText.TemperatureDifference(inTime.Peak.EstimateK),
                QuantityText.Time(inTime.PeakTimeS), .. more.Select(QuantityText.TemperatureDifference)]);
        }

        table.Write(writer);
        HottestPlace hottest = heat.Most.Hottest();
        writer.WriteLine($"Hottest place of the board, all heat counted: {QuantityText.Temperature(review.Brief.AmbientK + hottest.RiseK)}, give or take "
            + $"{QuantityText.TemperatureDifference(hottest.EstimateK)}, at {QuantityText.Time(heat.HottestTimeS)}.");
        writer.WriteLine(Basis(heat));
        writer.WriteLine();
    }

    /// <summary>What the profile is, as words within a line.</summary>
    public static string Over(LoadProfile profile) => profile.IsPeriodic ? $"over the load profile, repeated every {QuantityText.Time(profile.DurationS)} for ever"
        : $"over the load profile of {QuantityText.Time(profile.DurationS)}";

    /// <summary>How its temperatures were found.</summary>
    public static string Basis(LoadedHeat heat) => FormattableString.Invariant(
        $"{heat.NodeCount} cells, {heat.Steps} steps in time; parts store no heat here, which makes the board a little quicker than it is.");

    /// <summary>The stretches with their course.</summary>
    public static IEnumerable<(SolvedNet Net, StretchInTime InTime)> Stretches(Review review, LoadedHeat heat) =>
        review.Nets.Where(net => net.Conduction.HasFields).Zip(heat.Stretches);
}
