using System.Globalization;
using CopperPath.PowerPath;

namespace CopperPath.Cli.Report.Starter;

/// <summary>
/// The terminals of one proposed stretch: parts at its ends with the currents their part in the converter gives them, one of
/// them taking the rest, so that the stretch balances whatever the converter turns out to be.
/// </summary>
internal sealed class StretchTerminals
{
    private const string Rest = "takes: rest";

    /// <summary>
    /// Pads of a part smaller than this share of its largest on the same net are taken for sense or control pins. Common
    /// practice, no source.
    /// </summary>
    private const double LeastPadShare = 0.25;

    private readonly PathProposal _path;
    private readonly IReadOnlyDictionary<int, ConverterGuess> _guesses;
    private readonly StageProposal _stage;
    private readonly List<ProposedTerminal> _terminals = [];
    private readonly HashSet<PartPad> _used = new(ReferenceEqualityComparer.Instance);

    private StretchTerminals(PathProposal path, IReadOnlyDictionary<int, ConverterGuess> guesses, StageProposal stage) =>
        (_path, _guesses, _stage) = (path, guesses, stage);

    /// <param name="path">The whole proposal.</param>
    /// <param name="guesses">What each converter is taken for, by its number.</param>
    /// <param name="stage">The stretch.</param>
    /// <param name="fed">Converters whose supply runs through it, where it is part of the feed.</param>
    /// <returns>Its terminals; empty where its copper has no two places to name.</returns>
    public static IReadOnlyList<ProposedTerminal> Of(
        PathProposal path, IReadOnlyDictionary<int, ConverterGuess> guesses, StageProposal stage, IReadOnlyList<ConverterGuess> fed)
    {
        StretchTerminals drawn = new(path, guesses, stage);
        drawn.Draw(fed);
        return drawn._terminals.Count >= 2 ? drawn._terminals : [];
    }

    private void Draw(IReadOnlyList<ConverterGuess> fed)
    {
        switch (_stage.Role)
        {
            case StageRole.Feed:
            case StageRole.FeedReturn:
                DrawFeed(fed);
                break;
            case StageRole.Input:
                DrawInput(fed);
                break;
            case StageRole.HighSideSupply:
                AddParts("input capacitors", PartsOf("input capacitor"), $"enters: rms phase input capacitors of {Own.Name}");
                AddParts("high side", PartsOf("high side"), Rest);
                break;
            case StageRole.SwitchNode:
                DrawSwitchNode();
                break;
            case StageRole.Output:
                DrawOutput();
                break;
            default:
                DrawReturn();
                break;
        }
    }

    private ConverterGuess Own => _guesses[_stage.Converter];

    /// <summary>Two ends: what stands at one carries all that the converters draw, the other takes it.</summary>
    private void DrawFeed(IReadOnlyList<ConverterGuess> fed)
    {
        string current = Amount("enters", [.. fed.Select(guess => ("feed", guess.Name, guess.FeedA))]);
        foreach (StagePart end in _stage.Parts)
        {
            AddParts(_terminals.Count == 0 ? end.Kind : $"{end.Kind} {end.Part.Name}", [end.Part], _terminals.Count == 0 ? current : Rest);
            if (_terminals.Count == 2)
            {
                return;
            }
        }

        while (_terminals.Count < 2 && AddFarEnd(_terminals.Count == 0 ? current : Rest))
        {
        }
    }

    private void DrawInput(IReadOnlyList<ConverterGuess> fed)
    {
        AddFirst(
            ("connector", PartsOf("connector")),
            ("link", PartsOf("link")),
            ("inductors before it", [.. _path.ConverterOf(_stage.Net)?.Phases.SelectMany(phase => phase.Inductors) ?? []]));
        bool hasSource = _terminals.Count > 0;
        AddSwitches("high side", "leaves", fed, phase => phase.HighSides, guess => guess.HighSideA);
        if (!hasSource || _terminals.Count < 2)
        {
            AddFarEnd(hasSource ? Amount("leaves", [.. fed.Select(guess => ("feed", guess.Name, guess.FeedA))]) : Rest);
        }
    }

    private void DrawSwitchNode()
    {
        Part[] low = PartsOf("low side");
        Part[] high = PartsOf("high side");
        if (low.Length > 0 && high.Length > 0)
        {
            AddParts("low side", low, $"enters: low side of {Own.Name}");
            AddParts("high side", high, $"enters: high side of {Own.Name}");
        }
        else
        {
            AddParts("switches", [.. low, .. high], $"enters: inductor of {Own.Name}");
        }

        bool isFed = _terminals.Count > 0;
        bool isDrawn = AddParts("inductor", PartsOf("inductor"), Rest) || AddFarEnd(Rest);
        if (isDrawn && !isFed)
        {
            AddFarEnd($"enters: inductor of {Own.Name}");
        }
    }

    private void DrawOutput()
    {
        IReadOnlyList<PhaseProposal> phases = Own.Proposal.Phases;
        for (int i = 0; i < phases.Count; i++)
        {
            AddParts(FormattableString.Invariant($"phase {i + 1} inductor"), phases[i].Inductors, $"enters: inductor of {Own.Name}");
        }

        if (LoadOf(Own.Proposal) is not { } load || !AddParts("load", [load], Rest))
        {
            AddFarEnd(Rest);
        }
    }

    /// <summary>Load currents come in, the low sides draw their part, and what is left goes back to the supply.</summary>
    private void DrawReturn()
    {
        ConverterGuess[] all = [.. _guesses.Values];
        foreach (IGrouping<Part?, ConverterGuess> load in all.GroupBy(guess => LoadOf(guess.Proposal)))
        {
            string names = string.Join(" and ", load.Select(guess => guess.Name));
            string current = Amount("enters", [.. load.Select(guess => ("output", guess.Name, guess.OutputA))]);
            if (load.Key is null || !AddParts($"load of {names}", [load.Key], current))
            {
                AddParts($"output capacitors of {names}", [.. load.SelectMany(guess => guess.Proposal.OutputCapacitors)], current);
            }
        }

        AddSwitches("low side", "leaves", all, phase => phase.LowSides, guess => guess.LowSideA);
        if (!AddFirst(
            ("connector", [.. Connectors()]),
            ("choke", [.. _path.Stages.Where(stage => stage.Role == StageRole.FeedReturn).SelectMany(stage => stage.Parts).Where(end => end.Kind == "link").Select(end => end.Part)]),
            ("input capacitors", [.. all.SelectMany(guess => guess.Proposal.Phases).SelectMany(phase => phase.InputCapacitors)])))
        {
            AddFarEnd(Rest);
        }
    }

    private IEnumerable<Part> Connectors() => _path.Stages.Where(stage => stage.Role is StageRole.Feed or StageRole.Input)
        .SelectMany(stage => stage.Parts).Where(end => end.Kind == "connector").Select(end => end.Part).Distinct().Take(1);

    /// <summary>What is most probably fed: no part of a phase, on the return as well, with most pad area on the output.</summary>
    private Part? LoadOf(ConverterProposal converter)
    {
        HashSet<Part> ofPhases = [.. _path.Converters.SelectMany(other => other.Phases)
            .SelectMany(phase => phase.Inductors.Concat(phase.HighSides).Concat(phase.LowSides))];
        return _path.Parts
            .Where(part => part.Shape is PartShape.Array or PartShape.Package or PartShape.ThroughHole
                && part.Touches(converter.Output) && part.Touches(converter.Return) && !ofPhases.Contains(part))
            .OrderByDescending(part => part.PadAreaM2(converter.Output)).ThenBy(part => part.Name, StringComparer.Ordinal)
            .FirstOrDefault();
    }

    private Part[] PartsOf(string kind) => [.. _stage.Parts.Where(end => end.Kind == kind).Select(end => end.Part)];

    /// <summary>One terminal for each set of switches: phases that share a package share a terminal.</summary>
    private void AddSwitches(
        string kind, string key, IReadOnlyList<ConverterGuess> converters, Func<PhaseProposal, IReadOnlyList<Part>> switchesOf, Func<ConverterGuess, double> currentOf)
    {
        IEnumerable<(ConverterGuess Guess, int Phase, IReadOnlyList<Part> Parts)> phases = converters.SelectMany(guess =>
            guess.Proposal.Phases.Select((phase, i) => (guess, i + 1, switchesOf(phase))));
        foreach (IGrouping<string, (ConverterGuess Guess, int Phase, IReadOnlyList<Part> Parts)> shared in phases
            .Where(phase => phase.Parts.Count > 0)
            .GroupBy(phase => string.Join(' ', phase.Parts.Select(part => part.Name).Order(StringComparer.Ordinal))))
        {
            string name = string.Join(" and ", shared.Select(phase => FormattableString.Invariant($"{phase.Guess.Name} phase {phase.Phase}")));
            AddParts($"{name} {kind}", shared.First().Parts, Amount(key, [.. shared.Select(phase => (kind, phase.Guess.Name, currentOf(phase.Guess)))]));
        }
    }

    /// <summary>A current by its stage where it is that of one; a sum of several can only be written as a number, and is a blank.</summary>
    private static string Amount(string key, IReadOnlyList<(string Stage, string Converter, double CurrentA)> parts) => parts is [var only]
        ? $"{key}: {only.Stage} of {only.Converter}"
        : $"{key}: {BlankText.Of(string.Create(CultureInfo.InvariantCulture, $"{parts.Sum(part => part.CurrentA):0.######} A"), [],
            string.Join(" + ", parts.Select(part => $"{part.Stage} of {part.Converter}")))}";

    /// <summary>The first of several choices that has a pad left on this net takes the rest.</summary>
    private bool AddFirst(params (string Name, Part[] Parts)[] choices) => choices.Any(choice => AddParts(choice.Name, choice.Parts, Rest));

    private bool AddParts(string name, IEnumerable<Part> parts, string current)
    {
        Part[] all = [.. parts.Distinct()];
        PartPad[] pads = [.. all.SelectMany(PowerPads).Where(pad => !_used.Contains(pad))];
        if (pads.Length == 0)
        {
            return false;
        }

        Add(name, pads, current, all.All(part => part.IsNamed) ? null : "the pattern of the pads");
        return true;
    }

    private IEnumerable<PartPad> PowerPads(Part part)
    {
        PartPad[] pads = [.. part.PadsOn(_stage.Net)];
        double leastM2 = pads.Length == 0 ? 0 : LeastPadShare * pads.Max(pad => pad.AreaM2);
        return pads.Where(pad => pad.AreaM2 >= leastM2);
    }

    /// <summary>Where no part is known to stand, the pad farthest from those that are known.</summary>
    private bool AddFarEnd(string current)
    {
        PartPad[] left = [.. _path.Parts.SelectMany(part => part.PadsOn(_stage.Net)).Where(pad => !_used.Contains(pad))];
        if (left.Length == 0)
        {
            return false;
        }

        PartPad far = left.MaxBy(pad => _used.Count == 0 ? pad.AreaM2 : _used.Min(used => used.At.DistanceNmTo(pad.At)))!;
        Add("far end", [far], current, "farthest from the other end; no part was recognised here");
        return true;
    }

    private void Add(string name, PartPad[] pads, string current, string? because)
    {
        _used.UnionWith(pads);
        string unique = name;
        for (int i = 2; _terminals.Exists(terminal => terminal.Name == unique); i++)
        {
            unique = FormattableString.Invariant($"{name} {i}");
        }

        _terminals.Add(new ProposedTerminal(unique, pads, current, because));
    }
}
