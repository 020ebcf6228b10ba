using System.Globalization;
using CopperPath.Converter;
using CopperPath.PowerPath;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Holds the phases a converter claims against the switch nodes its copper has: paralleled parts on one switch node
/// switch together, so they neither interleave nor cancel ripple.
/// </summary>
internal static class PhaseCountRule
{
    public static IEnumerable<Finding> Judge(PathContext path)
    {
        foreach (ConverterFacts facts in path.Brief.Converters.Select(section => section.Facts))
        {
            if (path.ProposalOf(facts) is not { } found || found.Phases.Count == facts.Stage.Phases
                || found.Phases.Any(phase => phase.Confidence == Confidence.Low))
            {
                continue;
            }

            Part inductor = found.Phases[0].Inductors[0];
            yield return PathContext.FindingAt(RuleCatalogue.PhaseCount, FindingLevel.BeyondLimit, facts.Name,
                inductor.Pads[0].Pad.Layer, inductor.Centre,
                new Measure("electrical phases", "", found.Phases.Count, facts.Stage.Phases, LimitIsLeast: found.Phases.Count < facts.Stage.Phases, IsCount: true),
                string.Create(CultureInfo.InvariantCulture,
                    $"The brief claims {Counted.Of(facts.Stage.Phases, "phase")}; the copper has {Counted.Of(found.Phases.Count, "separate switch node")} ")
                    + $"({string.Join(", ", found.Phases.Select(phase => phase.SwitchNode.Name))}).",
                string.Create(CultureInfo.InvariantCulture,
                    $"Count {Counted.Of(found.Phases.Count, "phase")}: ripple, capacitor currents and shares were computed for {facts.Stage.Phases} and do not hold for this copper."));
        }
    }
}
