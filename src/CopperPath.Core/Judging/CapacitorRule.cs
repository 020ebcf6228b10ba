using System.Globalization;
using CopperPath.Brief;
using CopperPath.Nets;
using CopperPath.PowerPath;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Counts the plated holes beside the return ends of power capacitors and compares the distances of a phase's bank.</summary>
internal static class CapacitorRule
{
    /// <summary>Holes farther from a pad than this serve something else, nanometres. Common practice, no source.</summary>
    private const double ReachNm = 3e6;

    private const int NamesShown = 4;

    public static IEnumerable<Finding> Judge(PathContext path)
    {
        foreach (ConverterProposal converter in path.Path.Converters)
        {
            List<Part> atInput = [.. converter.Phases.SelectMany(phase => phase.InputCapacitors).Distinct().Except(converter.OutputCapacitors)];
            foreach (Finding finding in JudgeVias(path, converter.Return, converter.Output, converter.OutputCapacitors)
                .Concat(JudgeVias(path, converter.Return, converter.Input ?? converter.Output, atInput))
                .Concat(JudgeDistances(path, converter)))
            {
                yield return finding;
            }
        }
    }

    private static IEnumerable<Finding> JudgeVias(PathContext path, Net back, Net supply, IReadOnlyList<Part> capacitors)
    {
        if (back.Sheets.Count < 2)
        {
            yield break;
        }

        PracticeLimit limit = path.Limits.CapacitorVias;
        List<(Part Part, PartPad Pad, int Holes)> starved = [.. capacitors
            .Select(part => (part, Pad: part.PadsOn(back).First()))
            .Where(end => end.Pad.HoleDiameterNm == 0)
            .Select(end => (end.part, end.Pad, back.Barrels.Count(barrel => GapNm(end.Pad, barrel) <= ReachNm)))
            .Where(end => end.Item3 < limit.Value)];
        if (starved.Count > 0)
        {
            (Part part, PartPad pad, int holes) = starved.MinBy(end => end.Holes);
            yield return PathContext.FindingAt(RuleCatalogue.CapacitorVias, PathContext.LevelOf(limit), supply.Name, pad.Pad.Layer, pad.At,
                new Measure("plated holes", "", holes, limit.Value, LimitIsLeast: true, IsCount: true),
                string.Create(CultureInfo.InvariantCulture, $"{Counted.Of(starved.Count, "power capacitor has", "power capacitors have")} fewer than {limit.Value:0} plated holes of the return within 3 mm: ")
                    + string.Join(", ", starved.Take(NamesShown).Select(end => string.Create(CultureInfo.InvariantCulture, $"{end.Part.Name} ({end.Holes})")))
                    + (starved.Count > NamesShown ? " and others" : "")
                    + Guess(starved.Select(end => end.Part)),
                $"Place holes to the return plane beside {(starved.Count == 1 ? "this pad" : "these pads")}.");
        }
    }

    private static IEnumerable<Finding> JudgeDistances(PathContext path, ConverterProposal converter)
    {
        PracticeLimit limit = path.Limits.CapacitorDistanceRatio;
        foreach (PhaseProposal phase in converter.Phases.Where(phase => phase.InputCapacitors.Count > 1 && phase.HighSides.Count > 0))
        {
            List<(Part Part, double DistanceNm)> ranked = [.. phase.InputCapacitors
                .Select(part => (part, phase.HighSides.Min(high => high.Centre.DistanceNmTo(part.Centre)))).OrderBy(end => end.Item2)];
            double ratio = ranked[^1].DistanceNm / ranked[0].DistanceNm;
            if (ratio > limit.Value)
            {
                Part far = ranked[^1].Part;
                yield return PathContext.FindingAt(RuleCatalogue.CapacitorDistance, PathContext.LevelOf(limit), phase.SwitchNode.Name,
                    far.Pads[0].Pad.Layer, far.Centre,
                    new Measure("farthest over nearest", "", ratio, limit.Value),
                    $"{far.Name} is {QuantityText.Length(Units.MetresFromNm(ranked[^1].DistanceNm))} from the high side, "
                        + $"{ranked[0].Part.Name} only {QuantityText.Length(Units.MetresFromNm(ranked[0].DistanceNm))}: the near one takes most of the edge" + Guess([far, ranked[0].Part]),
                    "Bring the bank together, or count on the near capacitors only.");
            }
        }
    }

    private static string Guess(IEnumerable<Part> parts) =>
        parts.All(part => part.IsNamed) ? "." : "; parts without a name are guessed from the pattern of their pads.";

    private static double GapNm(PartPad pad, Barrel barrel)
    {
        double dx = Math.Max(0, Math.Max(pad.Box.MinX - barrel.Centre.X, barrel.Centre.X - pad.Box.MaxX));
        double dy = Math.Max(0, Math.Max(pad.Box.MinY - barrel.Centre.Y, barrel.Centre.Y - pad.Box.MaxY));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }
}
