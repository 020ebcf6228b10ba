using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.PowerPath;

/// <summary>
/// Nets and pads -> the power path as the copper suggests it. It reads shapes only: names of nets decide
/// nothing, so boards without attributes are treated alike; a designator decides only that a part is no capacitor.
/// </summary>
public static class PowerPathFinder
{
    public static PathProposal Propose(NetList board)
    {
        IReadOnlyList<Part> parts = PartFinder.Find(board);
        BoardCensus census = new(board, parts);
        if (census.Return is not { } back)
        {
            return new PathProposal(parts, null, [], []);
        }

        IReadOnlyList<ConverterProposal> converters = PhaseFinder.Find(census);
        HashSet<Net> converterNets = new(NetIdentity.Comparer);
        foreach (ConverterProposal converter in converters)
        {
            converterNets.UnionWith(converter.Phases.Select(phase => phase.SwitchNode));
            converterNets.Add(converter.Output);
        }

        FeedFinder feeds = new(census, back.Net, converterNets);
        List<StageProposal> stages = [];
        foreach (IGrouping<Net, ConverterProposal> supply in converters.Where(converter => converter.Input is not null)
            .GroupBy(converter => converter.Input!, NetIdentity.Comparer))
        {
            stages.AddRange(FeedStages(feeds, supply.Key, supply.Count() == 1 ? supply.First().Number : 0));
            stages.Add(InputStage(census, feeds, supply.Key, supply));
        }

        foreach (ConverterProposal converter in converters)
        {
            stages.AddRange(PhaseStages(converter));
            stages.Add(OutputStage(converter, converters));
        }

        if (converters.Count > 0)
        {
            stages.Add(new StageProposal(StageRole.Return, back.Net, 0, 0,
                [.. converters.SelectMany(converter => converter.Phases).SelectMany(phase => phase.LowSides).Distinct().Select(part => new StagePart("low side", part))],
                back.Confidence, back.Reasons));
        }

        return new PathProposal(parts, back.Net, converters, stages);
    }

    private static IEnumerable<StageProposal> FeedStages(FeedFinder feeds, Net input, int converter)
    {
        IReadOnlyList<FeedStep> steps = feeds.From(input);
        bool reachesConnector = steps.Count > 0 && feeds.IsAtConnector(steps[^1].Net, 1);
        for (int i = steps.Count - 1; i >= 0; i--)
        {
            List<StagePart> ends = [];
            List<string> reasons = [];
            if (i == steps.Count - 1 && reachesConnector)
            {
                Part connector = feeds.ConnectorsOf(steps[i].Net).First();
                ends.Add(new StagePart("connector", connector));
                reasons.Add(FormattableString.Invariant($"{connector.Name} has {connector.PadsOn(steps[i].Net).Count()} pins in plated holes on it"));
            }

            if (i < steps.Count - 1)
            {
                ends.Add(new StagePart("link", steps[i + 1].Link));
            }

            ends.Add(new StagePart("link", steps[i].Link));
            reasons.Add($"{steps[i].Link.Name}, {ShapeText(steps[i].Link)}, joins it to {(i == 0 ? "the converter's input" : steps[i - 1].Net.Name)}");
            if (!reachesConnector)
            {
                reasons.Add("no connector was found at its end");
            }

            yield return new StageProposal(StageRole.Feed, steps[i].Net, converter, 0, ends,
                !reachesConnector ? Confidence.Low : steps[i].Link.Shape == PartShape.Package ? Confidence.Medium : Confidence.High, reasons);
        }

        // A choke that carries the supply as a rule carries the return as well.
        foreach (FeedStep step in steps.Where(step => step.Link.Shape == PartShape.FourTerminal))
        {
            if (feeds.ReturnBeyond(step.Link) is { } beyond)
            {
                yield return new StageProposal(StageRole.FeedReturn, beyond.Net, converter, 0,
                    [new StagePart("link", step.Link), .. feeds.ConnectorsOf(beyond.Net).Take(1).Select(part => new StagePart("connector", part))],
                    feeds.IsAtConnector(beyond.Net, 1) ? Confidence.High : Confidence.Medium,
                    [$"{step.Link.Name} joins it to the return beside the supply"]);
            }
        }
    }

    private static StageProposal InputStage(BoardCensus census, FeedFinder feeds, Net input, IEnumerable<ConverterProposal> converters)
    {
        int capacitors = census.ToReturn(input).Count;
        List<ConverterProposal> fed = [.. converters];
        List<string> reasons =
        [
            $"{Counted.Of(capacitors, "capacitor")} to the return",
            $"high sides of {Counted.Of(fed.Sum(converter => converter.Phases.Count), "phase")} draw from it",
        ];
        List<StagePart> ends = [.. feeds.ConnectorsOf(input).Take(1).Select(part => new StagePart("connector", part))];
        if (ends.Count > 0)
        {
            reasons.Add($"{ends[0].Part.Name} with pins in plated holes stands on it");
        }

        ends.AddRange(feeds.From(input).Take(1).Select(step => new StagePart("link", step.Link)));
        ends.AddRange(fed.SelectMany(converter => converter.Phases).SelectMany(phase => phase.HighSides).Distinct().Select(part => new StagePart("high side", part)));
        return new StageProposal(StageRole.Input, input, fed.Count == 1 ? fed[0].Number : 0, 0, ends,
            capacitors >= 2 ? Confidence.High : Confidence.Medium, reasons);
    }

    private static IEnumerable<StageProposal> PhaseStages(ConverterProposal converter)
    {
        for (int i = 0; i < converter.Phases.Count; i++)
        {
            PhaseProposal phase = converter.Phases[i];
            if (converter.Input is { } input && phase.HighSides.Count > 0)
            {
                yield return new StageProposal(StageRole.HighSideSupply, input, converter.Number, i + 1,
                    [.. phase.InputCapacitors.Select(part => new StagePart("input capacitor", part)), .. phase.HighSides.Select(part => new StagePart("high side", part))],
                    phase.InputCapacitors.Count > 0 ? phase.Confidence : Confidence.Low,
                    [$"{Counted.Of(phase.InputCapacitors.Count, "capacitor")} nearest to {string.Join(", ", phase.HighSides.Select(part => part.Name))}"]);
            }

            yield return new StageProposal(StageRole.SwitchNode, phase.SwitchNode, converter.Number, i + 1,
                [
                    .. phase.LowSides.Select(part => new StagePart("low side", part)),
                    .. phase.HighSides.Except(phase.LowSides).Select(part => new StagePart("high side", part)),
                    .. phase.Inductors.Select(part => new StagePart("inductor", part)),
                ],
                phase.Confidence, phase.Reasons);
        }
    }

    /// <remarks>A buck and a converter that raises the voltage have the same copper with the ends swapped.</remarks>
    private static StageProposal OutputStage(ConverterProposal converter, IReadOnlyList<ConverterProposal> all) => new(
        StageRole.Output, converter.Output, converter.Number, 0,
        [
            .. converter.Phases.SelectMany(phase => phase.Inductors).Select(part => new StagePart("inductor", part)),
        ],
        OutputConfidence(converter, all),
        [
            converter.Phases.Count == 1 ? "the inductor of one phase ends on it" : FormattableString.Invariant($"inductors of {converter.Phases.Count} phases end on it"),
            $"{Counted.Of(converter.OutputCapacitors.Count, "capacitor")} to the return",
            .. all.Where(other => ReferenceEquals(other.Input, converter.Output))
                .Select(other => FormattableString.Invariant($"converter {other.Number} draws from it: either one follows the other, or this one raises the voltage")),
        ]);

    private static Confidence OutputConfidence(ConverterProposal converter, IReadOnlyList<ConverterProposal> all)
    {
        Confidence phases = converter.Phases.Max(phase => phase.Confidence);
        bool isDoubtful = converter.OutputCapacitors.Count < 2 || all.Any(other => ReferenceEquals(other.Input, converter.Output));
        return isDoubtful && phases > Confidence.Medium ? Confidence.Medium : phases;
    }

    private static string ShapeText(Part part) => part.Shape switch
    {
        PartShape.TwoTerminal => "a large two-terminal part",
        PartShape.FourTerminal => "a part of two windings",
        _ => "a package",
    };
}
