using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Brief;

/// <summary>What a net does in the converter: it decides which checks are worth making.</summary>
public enum NetRole
{
    Other,

    /// <summary>Carries the supply from the connector to the converter.</summary>
    Feed,

    /// <summary>The converter's input between capacitors and switches.</summary>
    Input,

    /// <summary>Swings between input and return at the switching frequency.</summary>
    SwitchNode,

    /// <summary>Carries the converted voltage to the load.</summary>
    Output,

    /// <summary>Carries the current back.</summary>
    Return,
}

/// <summary>How the brief points at a net's copper.</summary>
public abstract record NetSelector;

/// <summary>By the net name in the files' attributes.</summary>
public sealed record NetByName(string Name) : NetSelector;

/// <summary>By a point on its copper.</summary>
public sealed record NetAtPoint(LayerReference Layer, PointNm At) : NetSelector;

/// <summary>The limits a net is judged by, board-wide ones already filled in.</summary>
/// <param name="TemperatureRiseK">Rise that the copper's own current may add, kelvin, positive.</param>
/// <param name="VoltageDropV">Allowed drop between any two terminals, volts, positive; null when drop is reported but not judged.</param>
public sealed record NetLimits(double TemperatureRiseK, double? VoltageDropV);

/// <summary>One stretch of copper to review.</summary>
/// <param name="Name">The reader's name of it, unique within the brief.</param>
/// <param name="Selector">Which copper.</param>
/// <param name="Role">What it does.</param>
/// <param name="Siblings">Name of the group of like nets it is compared with, or null.</param>
/// <param name="Limits">What it is judged by.</param>
/// <param name="Terminals">Where current enters and leaves; at least two, in the order of the brief.</param>
/// <param name="Position">Where the brief describes it.</param>
public sealed record NetReview(
    string Name,
    NetSelector Selector,
    NetRole Role,
    string? Siblings,
    NetLimits Limits,
    IReadOnlyList<Terminal> Terminals,
    SourcePosition Position)
{
    /// <summary>
    /// True where its currents are RMS values of an alternating part, which adds in heat to what else flows in its net; false where
    /// they are direct and add to those of the other entries of its net.
    /// </summary>
    public bool IsAlternating { get; init; }

    /// <summary>
    /// What this entry and others of its net that state another word never do at the same time; null where it flows whatever else
    /// does.
    /// </summary>
    public string? Alternative { get; init; }
}
