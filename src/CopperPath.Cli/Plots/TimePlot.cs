using CopperPath.Cli.Overlays.Stages;

namespace CopperPath.Cli.Plots;

/// <summary>A quantity over time.</summary>
/// <param name="Name">What the label at its end says first.</param>
/// <param name="Facts">What it says below that.</param>
/// <param name="Stage">Gives its accent; null for what is of no stage, drawn strong in the colour of text.</param>
/// <param name="Points">Times, in order, and values; straight between them; at least one.</param>
public sealed record TimeCurve(string Name, string Facts, StageKind? Stage, IReadOnlyList<(double Time, double Value)> Points);

/// <summary>What a value must not exceed.</summary>
/// <param name="Name">What the label at the end of its line says.</param>
/// <param name="Facts">What it says below that.</param>
/// <param name="Value">Positive.</param>
public sealed record TimeLimit(string Name, string Facts, double Value);

/// <summary>A picture of quantities over time on linear axes from zero, each labelled where it ends.</summary>
/// <param name="Title">What it shows.</param>
/// <param name="AbscissaName">Time and unit along the foot.</param>
/// <param name="OrdinateName">Quantity and unit along the side.</param>
/// <param name="End">Last time, positive.</param>
/// <param name="Curves">What is drawn, in order; the label column has room for about a dozen.</param>
/// <param name="Limits">Lines across.</param>
/// <param name="Notes">Lines under the plot.</param>
public sealed record TimePlot(
    string Title, string AbscissaName, string OrdinateName, double End,
    IReadOnlyList<TimeCurve> Curves, IReadOnlyList<TimeLimit> Limits, IReadOnlyList<string> Notes);
