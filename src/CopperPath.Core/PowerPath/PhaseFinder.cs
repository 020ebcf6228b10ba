using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.PowerPath;

/// <summary>
/// Finds switch nodes: nets that a large two-terminal part (the inductor) joins to a net with capacitors, that have no
/// capacitors of their own, and that a switch or converter package joins to the return or to the supply. Names of nets
/// play no part, and letters of designators only where they say that a part to the return is no capacitor.
/// </summary>
internal static class PhaseFinder
{
    // Weights of the evidence and the sums that make a confidence. The project's own choice, tried on real boards (docs/proposals.md).
    private const int ForHigh = 7;
    private const int ForMedium = 6;
    private const int ForProposal = 5;

    /// <summary>Inductor pads are larger than those of the board's usual two-terminal part by at least this.</summary>
    private const double LeastPadRatio = 3;
    private const double LargePadRatio = 5;

    /// <summary>Inductor pads below this carry no power current, square metres. Common practice, no source.</summary>
    private const double LeastInductorPadM2 = 0.7e-6;

    /// <summary>One snubber may stand between switch node and return.</summary>
    private const int MostCapacitorsOnSwitchNode = 1;

    /// <summary>A net with more parts than this is a supply, not a switch node.</summary>
    private const int MostPartsOnSwitchNode = 12;

    /// <summary>A switch node that carries power has at least this much copper, square metres. Common practice, no source.</summary>
    private const double LeastSwitchNodeM2 = 3e-6;

    /// <summary>A capacitor farther from every high side belongs to the feed. Common practice, no source.</summary>
    private const double CapacitorReachNm = 25e6;

    /// <summary>A supply has about as much copper as the node it feeds, or more.</summary>
    private const double LeastInputToNodeArea = 0.5;

    public static IReadOnlyList<ConverterProposal> Find(BoardCensus census)
    {
        if (census.Return is not { } back)
        {
            return [];
        }

        List<Candidate> candidates = [.. census.Parts
            .Where(part => part.Shape == PartShape.TwoTerminal && part.Nets.Count == 2 && !part.Touches(back.Net))
            .SelectMany(part => new[] { Candidate.Weigh(census, back.Net, part, part.Nets[0]), Candidate.Weigh(census, back.Net, part, part.Nets[1]) })
            .OfType<Candidate>()];

        // A part has one switch node at most: the better supported end.
        List<Candidate> best = [.. candidates.GroupBy(candidate => candidate.Inductor, ReferenceEqualityComparer.Instance)
            .Select(ends => ends.OrderByDescending(end => end.Score).ThenBy(end => end.SwitchNode.AreaM2).First())];

        // A net that is the output of one inductor is not the switch node of another, unless it is the better supported.
        best.RemoveAll(candidate => best.Exists(other => ReferenceEquals(other.Output, candidate.SwitchNode) && other.Score > candidate.Score));
        List<ConverterProposal> converters = [];
        foreach (IGrouping<Net, Candidate> output in best.GroupBy(candidate => candidate.Output, NetIdentity.Comparer))
        {
            List<IGrouping<Net, Candidate>> nodes = [.. output.GroupBy(candidate => candidate.SwitchNode, NetIdentity.Comparer)];
            List<IGrouping<Net, Candidate>> kept = [.. nodes.Where(node => node.Max(candidate => candidate.Score) >= ForProposal)];
            if (kept.Count > 0)
            {
                converters.Add(ConverterOf(census, back.Net, output.Key, kept, isRepeated: kept.Count > 1));
            }
        }

        return ShareCapacitors(census, [.. converters.OrderByDescending(converter => converter.Phases.Count).ThenByDescending(converter => converter.Output.AreaM2)
            .Select((converter, i) => converter with { Number = i + 1 })]);
    }

    private static ConverterProposal ConverterOf(
        BoardCensus census, Net back, Net output, List<IGrouping<Net, Candidate>> nodes, bool isRepeated)
    {
        Net? input = nodes.SelectMany(node => node).SelectMany(candidate => candidate.Inputs)
            .GroupBy(vote => vote.Net, NetIdentity.Comparer)
            .OrderByDescending(votes => votes.Sum(vote => vote.Weight)).ThenBy(votes => votes.Key.Name, StringComparer.Ordinal)
            .FirstOrDefault()?.Key;
        List<PhaseProposal> phases = [.. nodes
            .OrderBy(node => node.First().Inductor.Centre.X).ThenByDescending(node => node.First().Inductor.Centre.Y)
            .Select(node => PhaseOf(node, back, input, isRepeated ? nodes.Count : 1))];
        return new ConverterProposal(0, input, output, back, phases, census.ToReturn(output));
    }

    private static PhaseProposal PhaseOf(IGrouping<Net, Candidate> node, Net back, Net? input, int siblings)
    {
        Candidate best = node.MaxBy(candidate => candidate.Score)!;
        List<Part> inductors = [.. node.Select(candidate => candidate.Inductor)];
        List<Part> highSides = [.. best.Switches.Where(part => input is not null && part.Touches(input))];
        List<Part> lowSides = [.. best.Switches.Where(part => part.Touches(back))];
        List<string> reasons = [.. best.Reasons];
        if (inductors.Count > 1)
        {
            reasons.Add(FormattableString.Invariant($"{inductors.Count} inductors hang on this one net: parallel parts of one phase"));
        }

        if (siblings > 1)
        {
            reasons.Add(FormattableString.Invariant($"{siblings} such nets lead to the same output"));
        }

        int score = best.Score + (siblings > 1 ? 1 : 0);
        return new PhaseProposal(node.Key, inductors, highSides, lowSides, [],
            score >= ForHigh ? Confidence.High : score >= ForMedium ? Confidence.Medium : Confidence.Low, reasons);
    }

    /// <summary>Gives each input capacitor to the phase whose high side is nearest, over all converters that draw from its net.</summary>
    private static List<ConverterProposal> ShareCapacitors(BoardCensus census, List<ConverterProposal> converters)
    {
        Dictionary<Net, List<Part>> shares = new(NetIdentity.Comparer);
        foreach (IGrouping<Net, ConverterProposal> supply in converters.Where(converter => converter.Input is not null)
            .GroupBy(converter => converter.Input!, NetIdentity.Comparer))
        {
            List<PhaseProposal> phases = [.. supply.SelectMany(converter => converter.Phases)];
            foreach (Part capacitor in census.ToReturn(supply.Key))
            {
                (Net node, double distanceNm) = phases.Select(phase => (phase.SwitchNode, phase.HighSides
                        .Select(part => part.Centre.DistanceNmTo(capacitor.Centre)).DefaultIfEmpty(double.MaxValue).Min()))
                    .MinBy(distance => distance.Item2);
                if (distanceNm <= CapacitorReachNm)
                {
                    shares.TryAdd(node, []);
                    shares[node].Add(capacitor);
                }
            }
        }

        return [.. converters.Select(converter => converter with
        {
            Phases = [.. converter.Phases.Select(phase => phase with { InputCapacitors = shares.GetValueOrDefault(phase.SwitchNode, []) })],
        })];
    }

    /// <summary>A large two-terminal part with one end taken for the switch node.</summary>
    private sealed record Candidate(
        Part Inductor, Net SwitchNode, Net Output, IReadOnlyList<Part> Switches, IReadOnlyList<(Net Net, double Weight)> Inputs, int Score, IReadOnlyList<string> Reasons)
    {
        public static Candidate? Weigh(BoardCensus census, Net back, Part inductor, Net node)
        {
            Net output = inductor.Across(node);
            int ownCapacitors = census.ToReturn(node).Count;
            int outputCapacitors = census.ToReturn(output).Count;
            double padM2 = inductor.Pads.Min(pad => pad.AreaM2);
            IReadOnlyList<Part> partsOnNode = census.PartsOn(node);
            List<Part> switches = [.. partsOnNode.Where(part => part.Pads.Count >= 3 && part.Shape == PartShape.Package)
                .Where(part => part.Nets.Any(net => !ReferenceEquals(net, node) && !ReferenceEquals(net, output)
                    && (ReferenceEquals(net, back) || census.ToReturn(net).Count > 0)))];
            if (outputCapacitors == 0 || ownCapacitors > MostCapacitorsOnSwitchNode || switches.Count == 0
                || partsOnNode.Count > MostPartsOnSwitchNode || node.AreaM2 < LeastSwitchNodeM2
                || padM2 < LeastInductorPadM2 || padM2 < LeastPadRatio * census.UsualPadM2)
            {
                return null;
            }

            List<string> reasons = [];
            int score = 0;
            void Say(int weight, string reason)
            {
                score += weight;
                reasons.Add(reason);
            }

            Say(outputCapacitors >= 2 ? 2 : 1, $"{inductor.Name} leads to a net with {Counted.Of(outputCapacitors, "capacitor")} to the return");
            Say(ownCapacitors == 0 ? 1 : 0, ownCapacitors == 0 ? "no capacitor to the return on this side" : "one capacitor to the return on this side, as a snubber has");
            double padRatio = padM2 / census.UsualPadM2;
            Say(padRatio >= LargePadRatio ? 1 : 0, $"its pads have {QuantityText.Ratio(padRatio)} times the area of the usual two-terminal part");
            Say(node.AreaM2 < output.AreaM2 ? 1 : -1, $"{QuantityText.Area(node.AreaM2)} of copper against {QuantityText.Area(output.AreaM2)} of the output");
            List<(Net Net, double Weight)> inputs = InputsOf(census, back, node, output, switches);
            if (inputs.Count == 0)
            {
                return null;
            }

            bool reachesReturn = switches.Exists(part => part.Touches(back));
            string verb = switches.Count == 1 ? "joins" : "join";
            Say(reachesReturn ? 2 : 0, $"{string.Join(", ", switches.Select(part => part.Name))} {verb} it to "
                + (reachesReturn ? "the return and to a supply" : "a supply"));
            return new Candidate(inductor, node, output, switches, inputs, score, reasons);
        }

        /// <summary>Nets the switches could draw from: those with capacitors to the return, weighed by the pads that reach them.</summary>
        private static List<(Net Net, double Weight)> InputsOf(BoardCensus census, Net back, Net node, Net output, List<Part> switches) =>
        [
            .. switches.SelectMany(part => part.Nets
                .Where(net => !ReferenceEquals(net, node) && !ReferenceEquals(net, output) && !ReferenceEquals(net, back)
                    && census.ToReturn(net).Count > 0 && net.AreaM2 >= LeastInputToNodeArea * node.AreaM2)
                .Select(net => (net, Math.Min(part.PadAreaM2(net), part.PadAreaM2(node)) * Math.Sqrt(net.AreaM2)))),
        ];
    }
}
