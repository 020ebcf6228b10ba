using CopperPath.PowerPath;

namespace CopperPath.Cli.Report.Starter;

/// <summary>
/// What a converter found in the copper is taken for until somebody describes it. Voltages follow names of nets where those
/// speak of one; the rest are middling values of small buck converters (common practice, no source).
/// </summary>
/// <param name="Proposal">What the copper shows.</param>
/// <param name="InputV">Volts, above the output.</param>
/// <param name="OutputV">Volts.</param>
internal sealed record ConverterGuess(ConverterProposal Proposal, double InputV, double OutputV)
{
    private static readonly double[] s_inputsV = [3.3, 5, 12, 24, 48];
    private static readonly double[] s_outputsV = [0.9, 1, 1.2, 1.8, 2.5, 3.3, 5, 12];

    public string Name => FormattableString.Invariant($"converter {Proposal.Number}");

    public double OutputA { get; } = 10;

    public double FeedA => OutputA * OutputV / InputV;

    /// <summary>Average in the high-side switches of one phase.</summary>
    public double HighSideA => FeedA / Proposal.Phases.Count;

    /// <summary>Average in the low-side switches of one phase.</summary>
    public double LowSideA => (OutputA - FeedA) / Proposal.Phases.Count;

    public static ConverterGuess Of(ConverterProposal proposal)
    {
        double outputV = NameVoltage.Of(proposal.Output.Name) ?? 1;
        double inputV = proposal.Input is { } input && NameVoltage.Of(input.Name) is { } named && named > outputV ? named
            : s_inputsV.FirstOrDefault(volts => volts >= 12 && volts > outputV, 2 * outputV);
        return new ConverterGuess(proposal, inputV, outputV);
    }

    /// <summary>The entry of <c>converters</c>, every value but the name a blank.</summary>
    public string ToYaml() => string.Concat(
        $"  - name: {Name}\n",
        $"    input voltage: {BlankText.Of(Volts(InputV), s_inputsV.Where(volts => volts > OutputV).Select(Volts), Because(Proposal.Input?.Name, InputV))}\n",
        $"    output voltage: {BlankText.Of(Volts(OutputV), s_outputsV.Where(volts => volts < InputV).Select(Volts), Because(Proposal.Output.Name, OutputV))}\n",
        $"    load current: {BlankText.Of(FormattableString.Invariant($"{OutputA} A"), ["1 A", "3 A", "10 A", "30 A", "100 A"])}\n",
        $"    phases: {BlankText.Of(FormattableString.Invariant($"{Proposal.Phases.Count}"), [], ProposalSummary.PhaseLine(Proposal))}\n",
        $"    switching frequency: {BlankText.Of("500 kHz", ["300 kHz", "500 kHz", "1 MHz", "2 MHz"])}\n",
        $"    inductance: {BlankText.Of("1 uH", ["0.22 uH", "1 uH", "4.7 uH", "10 uH"])}\n");

    private static string Volts(double volts) => FormattableString.Invariant($"{volts:0.##} V");

    private static string? Because(string? net, double guessV) =>
        net is not null && NameVoltage.Of(net) == guessV ? $"the net is called {net}" : null;
}
