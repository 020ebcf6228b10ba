using System.Globalization;
using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>How parallel ways share a current, from the field solve: equal shares are what a drawing promises and copper rarely keeps.</summary>
internal static class SharingRule
{
    /// <summary>Holes that carry less than this in the busiest are not worth a remark, amperes. Common practice, no source.</summary>
    private const double LeastHoleA = 0.5;

    private const int LeastGroup = 3;

    public static IEnumerable<Finding> JudgeContacts(PathContext path)
    {
        PracticeLimit limit = path.Limits.SharingRatio;
        foreach (SolvedNet net in path.Nets)
        {
            foreach (TerminalResult terminal in net.Conduction.Terminals.Where(t => t.Terminal.IsJoined && t.ContactCurrentsA.Count > 1))
            {
                double equalA = terminal.ContactCurrentsA.Sum(Math.Abs) / terminal.ContactCurrentsA.Count;
                double worstA = terminal.ContactCurrentsA.Max(Math.Abs);
                if (equalA == 0 || worstA <= limit.Value * equalA)
                {
                    continue;
                }

                Electrical.Contact worst = terminal.Terminal.Contacts[terminal.ContactCurrentsA.ToList().FindIndex(currentA => Math.Abs(currentA) == worstA)];
                (int layer, Geometry.PointNm at) = DropRule.PlaceOf(terminal.Terminal with { Contacts = [worst] });
                yield return PathContext.FindingAt(RuleCatalogue.SharingContacts, PathContext.LevelOf(limit), net.Bound.Review.Name, layer, at,
                    new Measure("current over equal share", "", worstA / equalA, limit.Value),
                    string.Create(CultureInfo.InvariantCulture, $"Of the {terminal.ContactCurrentsA.Count} contacts of {terminal.Terminal.Name}, {worst.Name} takes {QuantityText.Current(worstA)}, ")
                        + $"{QuantityText.Ratio(worstA / equalA)} times its equal share of {QuantityText.Current(equalA)}.",
                    "Bring the current in between them, or widen the copper that joins them, so that the ways are alike.");
            }
        }
    }

    public static IEnumerable<Finding> JudgePhases(PathContext path)
    {
        PracticeLimit limit = path.Limits.SharingRatio;
        foreach (SolvedNet net in path.Nets.Where(net => net.Bound.Review.Role == NetRole.Output))
        {
            List<TerminalResult> phases = [.. net.Conduction.Terminals.Where(t => t.Terminal.CurrentA > 0)];
            if (phases.Count < 2 || phases.Exists(t => Math.Abs(t.Terminal.CurrentA - phases[0].Terminal.CurrentA) > 0.01 * phases[0].Terminal.CurrentA))
            {
                continue;
            }

            double loadV = net.Conduction.Terminals.Where(t => t.Terminal.CurrentA < 0).Min(t => t.PotentialV);
            double meanV = phases.Average(phase => phase.PotentialV - loadV);
            TerminalResult worst = phases.MaxBy(phase => phase.PotentialV)!;
            double ratio = (worst.PotentialV - loadV) / meanV;
            if (ratio > limit.Value)
            {
                (int layer, Geometry.PointNm at) = DropRule.PlaceOf(worst.Terminal);
                yield return PathContext.FindingAt(RuleCatalogue.SharingPhases, PathContext.LevelOf(limit), net.Bound.Review.Name, layer, at,
                    new Measure("drop over mean of the phases", "", ratio, limit.Value),
                    $"From {worst.Terminal.Name} to the load the copper loses {QuantityText.Voltage(worst.PotentialV - loadV)}, "
                        + $"{QuantityText.Ratio(ratio)} times the mean of the phases: phases that share by themselves will not share alike.",
                    "Make the copper of the far phase wider or shorter, or measure each phase's current.");
            }
        }
    }

    public static IEnumerable<Finding> JudgeVias(PathContext path)
    {
        PracticeLimit limit = path.Limits.SharingRatio;
        foreach (SolvedNet net in path.Nets)
        {
            // The most uneven group speaks for the net.
            (List<BarrelCurrent>? group, double ratio) = BarrelRule.Groups(net.Conduction.Barrels)
                .Where(holes => holes.Count >= LeastGroup && holes.Max(hole => Math.Abs(hole.CurrentA)) >= LeastHoleA)
                .Select(holes => ((List<BarrelCurrent>?)holes, holes.Max(hole => Math.Abs(hole.CurrentA)) / holes.Average(hole => Math.Abs(hole.CurrentA))))
                .OrderByDescending(holes => holes.Item2).FirstOrDefault();
            if (group is null || ratio <= limit.Value)
            {
                continue;
            }

            BarrelCurrent worst = group.MaxBy(hole => Math.Abs(hole.CurrentA))!;
            yield return PathContext.FindingAt(RuleCatalogue.SharingVias, PathContext.LevelOf(limit), net.Bound.Review.Name, worst.UpperLayer, worst.Barrel.Centre,
                new Measure("current over equal share", "", ratio, limit.Value),
                string.Create(CultureInfo.InvariantCulture, $"Of {group.Count} plated holes together, this one takes {QuantityText.Current(Math.Abs(worst.CurrentA))}, {QuantityText.Ratio(ratio)} times the equal share."),
                "Holes near the edge of the current carry most: add holes there, or spread the group across the current.");
        }
    }
}
