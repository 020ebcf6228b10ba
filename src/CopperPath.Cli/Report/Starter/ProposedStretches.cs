using System.Globalization;
using System.Text;
using CopperPath.OutsideText;
using CopperPath.PowerPath;

namespace CopperPath.Cli.Report.Starter;

/// <summary>The proposed power path as sections of a starter brief: it parses and balances as written, and every guess is a blank.</summary>
internal static class ProposedStretches
{
    private static readonly string[] s_roles = ["feed", "input", "switch node", "output", "return", "other"];

    /// <returns>The sections <c>converters</c> and <c>nets</c>, or null where the copper shows no stretch that could be reviewed.</returns>
    public static string? Of(PathProposal path, CopperPlace places)
    {
        Dictionary<int, ConverterGuess> guesses = path.Converters.ToDictionary(converter => converter.Number, ConverterGuess.Of);
        StringBuilder nets = new();
        HashSet<string> names = [];
        for (int i = 0; i < path.Stages.Count; i++)
        {
            StageProposal stage = path.Stages[i];
            IReadOnlyList<ProposedTerminal> terminals = StretchTerminals.Of(path, guesses, stage, FedThrough(path, i, guesses));
            if (terminals.Count > 0)
            {
                AppendStretch(nets, stage, UniqueName(stage, names), terminals, places);
            }
        }

        return nets.Length == 0 ? null
            : $"converters:\n{string.Concat(guesses.Values.Select(guess => guess.ToYaml()))}nets:\n{nets}";
    }

    /// <summary>Converters whose supply runs through a stage of the feed: those that draw from the next input in the path.</summary>
    private static IReadOnlyList<ConverterGuess> FedThrough(PathProposal path, int stage, Dictionary<int, ConverterGuess> guesses)
    {
        StageProposal? input = path.Stages.Skip(stage).FirstOrDefault(later => later.Role == StageRole.Input)
            ?? path.Stages.Take(stage).LastOrDefault(earlier => earlier.Role == StageRole.Input);
        return [.. guesses.Values.Where(guess => ReferenceEquals(guess.Proposal.Input, input?.Net))];
    }

    private static string UniqueName(StageProposal stage, HashSet<string> names)
    {
        string name = ProposalSummary.NameOf(stage);
        string unique = name;
        for (int i = 2; !names.Add(unique); i++)
        {
            unique = FormattableString.Invariant($"{name}, part {i}");
        }

        return unique;
    }

    private static void AppendStretch(
        StringBuilder text, StageProposal stage, string name, IReadOnlyList<ProposedTerminal> terminals, CopperPlace places)
    {
        string role = BlankText.Of(RoleWord(stage.Role), s_roles, $"{ProposalSummary.ConfidenceText(stage)}: {string.Join("; ", stage.Reasons)}");
        text.Append(CultureInfo.InvariantCulture, $"  - name: {YamlScalar.Quoted(name)}\n    {places.SelectorOf(stage.Net)}\n    role: {role}\n    terminals:\n");
        foreach (ProposedTerminal terminal in terminals)
        {
            text.Append(CultureInfo.InvariantCulture, $"      - name: {YamlScalar.Quoted(terminal.Name)}\n");
            foreach (string key in places.KeysOf(stage.Net, [.. terminal.Pads.Select(pad => pad.Pad)], terminal.Because))
            {
                text.Append(CultureInfo.InvariantCulture, $"        {key}\n");
            }

            text.Append(CultureInfo.InvariantCulture, $"        {terminal.Current}\n");
        }
    }

    private static string RoleWord(StageRole role) => role switch
    {
        StageRole.Feed or StageRole.FeedReturn => "feed",
        StageRole.Input or StageRole.HighSideSupply => "input",
        StageRole.SwitchNode => "switch node",
        StageRole.Output => "output",
        _ => "return",
    };
}
