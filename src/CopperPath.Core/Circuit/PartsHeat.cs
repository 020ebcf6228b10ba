using CopperPath.Brief;
using CopperPath.Converter;
using CopperPath.PowerPath;
using CopperPath.Quantities;

namespace CopperPath.Circuit;

/// <summary>
/// The heat of parts: what the brief states of them, and of each converter with an efficiency the loss of its parts,
/// divided by its loss shares among the high sides, low sides and inductors that the copper shows.
/// </summary>
/// <param name="Losses">Each part's heat and where it enters the board.</param>
/// <param name="Sources">Where the derived ones come from, one line for each converter, for the report.</param>
/// <param name="IsKnown">
/// True where absolute temperatures can be judged: the brief states losses of parts, or every converter of it has its
/// loss derived.
/// </param>
public sealed record PartsHeat(IReadOnlyList<ComponentLoss> Losses, IReadOnlyList<string> Sources, bool IsKnown)
{
    /// <param name="brief">Converters and stated losses.</param>
    /// <param name="nets">Stretches of the brief.</param>
    /// <param name="path">The power path as the copper suggests it.</param>
    public static PartsHeat Of(ReviewBrief brief, IReadOnlyList<BoundNet> nets, PathProposal path)
    {
        List<ComponentLoss> losses = [.. brief.Thermal.Losses];
        List<string> sources = [];
        HashSet<string> stated = [.. losses.Select(loss => loss.Place).OfType<ComponentContact>().Select(place => place.Component)];
        int derived = 0;
        foreach (ConverterFacts facts in brief.Converters.Select(section => section.Facts))
        {
            if (facts.PartsLossW <= 0)
            {
                continue;
            }

            if (ConverterMatch.Of(facts, brief.Converters.Count, nets, path) is not { } converter)
            {
                sources.Add($"converter '{facts.Name}': {QuantityText.Power(facts.PartsLossW)} are lost in its parts, which the copper does not tell; state them under `thermal: losses`");
                continue;
            }

            derived++;
            ComponentLoss[] own = [.. OfConverter(facts, converter)];
            ComponentLoss[] added = [.. own.Where(loss => loss.Place is not ComponentContact place || !stated.Contains(place.Component))];
            losses.AddRange(added);
            sources.Add($"converter '{facts.Name}': {QuantityText.Power(facts.PartsLossW)} lost in its parts by its efficiency, {QuantityText.Power(added.Sum(loss => loss.PowerW))} laid on "
                + $"the pads of {Counted.Of(added.Select(loss => loss.Name).Distinct().Count(), "part")} by its loss shares"
                + (own.Length > added.Length ? "; parts with a stated loss keep that" : ""));
        }

        return new PartsHeat(losses, sources, brief.Thermal.Losses.Count > 0 || (derived > 0 && derived == brief.Converters.Count));
    }

    private static IEnumerable<ComponentLoss> OfConverter(ConverterFacts facts, ConverterProposal converter)
    {
        LossShares shares = facts.LossShares;
        List<(Part Part, double Weight)> weights = [];
        foreach (PhaseProposal phase in converter.Phases)
        {
            Add(phase.HighSides, shares.HighSide);
            Add(phase.LowSides, shares.LowSide);
            Add(phase.Inductors, shares.Inductor);
        }

        // The rest, and the share of a kind of part that a phase does not show, go to the parts there are.
        double sum = weights.Sum(one => one.Weight);
        return sum == 0 ? []
            : weights.GroupBy(one => one.Part).SelectMany(part => OfPart(part.Key, facts.PartsLossW * part.Sum(one => one.Weight) / sum));

        void Add(IReadOnlyList<Part> parts, double share) => weights.AddRange(parts.Select(part => (part, share / parts.Count)));
    }

    /// <summary>A part the files do not name is heated pad by pad, each by its share of the area.</summary>
    private static IEnumerable<ComponentLoss> OfPart(Part part, double powerW)
    {
        if (part.IsNamed)
        {
            return [new ComponentLoss(part.Name, new ComponentContact(part.Name, default), powerW)];
        }

        double areaM2 = part.Pads.Sum(pad => pad.AreaM2);
        return part.Pads.Select(pad => new ComponentLoss(
            part.Name, new RectangleContact(LayerReference.Number(pad.Pad.Layer), pad.Box, default), powerW * pad.AreaM2 / areaM2));
    }
}
