using CopperPath.Nets;

namespace CopperPath.PowerPath;

/// <summary>How sure a proposal is. It stays a guess until a person confirms it.</summary>
public enum Confidence
{
    Low,
    Medium,
    High,
}

/// <summary>What a stretch of copper does in the power path.</summary>
public enum StageRole
{
    /// <summary>From the connector to the converter, before the input capacitors' net.</summary>
    Feed,

    /// <summary>The way back from the converter's return to the connector, beyond a choke or shunt.</summary>
    FeedReturn,

    /// <summary>The net of the input capacitors.</summary>
    Input,

    /// <summary>The part of the input net between input capacitors and high-side switches of one phase.</summary>
    HighSideSupply,

    /// <summary>Between switches and inductor of one phase.</summary>
    SwitchNode,

    /// <summary>From inductors to load.</summary>
    Output,

    /// <summary>Carries the current back.</summary>
    Return,
}

/// <summary>A proposal what a net does, with its reasons.</summary>
/// <param name="Role">What it does.</param>
/// <param name="Net">The net.</param>
/// <param name="Converter">Number of the converter it belongs to, from 1; 0 when several share it.</param>
/// <param name="Phase">Number of the phase, from 1; 0 where it is not of one phase.</param>
/// <param name="Parts">Parts at its ends, by what they seem to do.</param>
/// <param name="Confidence">How sure.</param>
/// <param name="Reasons">Facts of the copper that speak for (or against) it.</param>
public sealed record StageProposal(
    StageRole Role, Net Net, int Converter, int Phase, IReadOnlyList<StagePart> Parts, Confidence Confidence, IReadOnlyList<string> Reasons);

/// <summary>A part at a stage, and what it seems to be.</summary>
/// <param name="Kind">E.g. <c>inductor</c>, <c>low side</c>.</param>
/// <param name="Part">The part.</param>
public sealed record StagePart(string Kind, Part Part);

/// <summary>One electrical phase: a switch node of its own, its switches and its inductor.</summary>
/// <param name="SwitchNode">The net that swings.</param>
/// <param name="Inductors">Inductors from it to the output: more than one are parallel parts of one phase.</param>
/// <param name="HighSides">Parts between input and switch node.</param>
/// <param name="LowSides">Parts between switch node and return.</param>
/// <param name="InputCapacitors">Two-terminal parts between input and return that are nearer to this phase's high side than to any other's.</param>
/// <param name="Confidence">How sure.</param>
/// <param name="Reasons">Why.</param>
public sealed record PhaseProposal(
    Net SwitchNode,
    IReadOnlyList<Part> Inductors,
    IReadOnlyList<Part> HighSides,
    IReadOnlyList<Part> LowSides,
    IReadOnlyList<Part> InputCapacitors,
    Confidence Confidence,
    IReadOnlyList<string> Reasons);

/// <summary>A converter: phases from one input to one output.</summary>
/// <param name="Number">From 1, most phases and largest output first.</param>
/// <param name="Input">Net the high sides draw from, or null when it could not be told.</param>
/// <param name="Output">Net of the inductors' far ends.</param>
/// <param name="Return">Net of the low sides.</param>
/// <param name="Phases">Its electrical phases, in the order of their place on the board.</param>
/// <param name="OutputCapacitors">Two-terminal parts between output and return.</param>
public sealed record ConverterProposal(
    int Number, Net? Input, Net Output, Net Return, IReadOnlyList<PhaseProposal> Phases, IReadOnlyList<Part> OutputCapacitors);

/// <summary>The power path as the copper suggests it.</summary>
/// <param name="Parts">Parts as named by the files or put together from pads.</param>
/// <param name="Return">The return net, or null when there is no copper to tell it by.</param>
/// <param name="Converters">Converters found; may be empty.</param>
/// <param name="Stages">The path stage by stage.</param>
public sealed record PathProposal(
    IReadOnlyList<Part> Parts, Net? Return, IReadOnlyList<ConverterProposal> Converters, IReadOnlyList<StageProposal> Stages)
{
    /// <summary>The converter that feeds a net, or null.</summary>
    public ConverterProposal? ConverterOf(Net output) => Converters.FirstOrDefault(converter => ReferenceEquals(converter.Output, output));
}
