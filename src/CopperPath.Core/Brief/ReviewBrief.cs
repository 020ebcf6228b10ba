using CopperPath.Diagnostics;

namespace CopperPath.Brief;

/// <summary>What the reader of the review wants to know: the board, its build, the limits and the currents.</summary>
/// <param name="Board">Board and files.</param>
/// <param name="Stackup">Thicknesses of the build, or null when the brief does not state them.</param>
/// <param name="AmbientK">Temperature of the air around the board, kelvin.</param>
/// <param name="ConductorK">Temperature at which resistivity is taken, kelvin; not below ambient.</param>
/// <param name="Limits">Board-wide limits.</param>
/// <param name="Nets">Nets to review, at least one, in the order of the brief.</param>
/// <param name="StatedDefaults">One line for each value the brief left open and the reader filled in.</param>
public sealed record ReviewBrief(
    BoardSection Board,
    StackupSection? Stackup,
    double AmbientK,
    double ConductorK,
    ReviewLimits Limits,
    IReadOnlyList<NetReview> Nets,
    IReadOnlyList<string> StatedDefaults)
{
    /// <summary>How close the bounds of every loss and drop must lie, as a share of it.</summary>
    public double Accuracy { get; init; } = 0.01;

    /// <summary>How the board gets rid of heat, and what else heats it.</summary>
    public ThermalSection Thermal { get; init; } = ThermalSection.Default;

    /// <summary>True when the copper's temperature was not stated and moves with ambient.</summary>
    public bool ConductorFollowsAmbient { get; init; }

    /// <summary>Ranges of stated values where they are not those that hold by default; null when the brief says nothing about them.</summary>
    public ToleranceSection? Tolerance { get; init; }

    /// <summary>Converters on the board, in the order of the brief; may be empty.</summary>
    public IReadOnlyList<ConverterSection> Converters { get; init; } = [];

    /// <summary>Nets that must keep away from switch nodes; may be empty.</summary>
    public IReadOnlyList<SensitiveNet> SensitiveNets { get; init; } = [];

    /// <summary>Findings accepted beforehand; may be empty.</summary>
    public IReadOnlyList<Waiver> Waivers { get; init; } = [];

    /// <summary>Short overloads to be survived; may be empty.</summary>
    public IReadOnlyList<FaultCase> Faults { get; init; } = [];

    /// <summary>Load against time; null where the stated currents flow for ever.</summary>
    public LoadProfile? LoadProfile { get; init; }

    /// <summary>Values nobody has confirmed, in file order; may be empty.</summary>
    public IReadOnlyList<Blank> Blanks { get; init; } = [];
}

/// <summary>Thicknesses of the build, top to bottom.</summary>
/// <param name="CopperM">Finished thickness of each copper layer, metres, positive.</param>
/// <param name="DielectricM">Thickness between neighbouring copper layers, metres, positive; one fewer than the layers.</param>
/// <param name="PlatingM">Thickness of the copper on hole walls, metres, positive.</param>
/// <param name="Position">Where the section starts.</param>
public sealed record StackupSection(
    IReadOnlyList<double> CopperM, IReadOnlyList<double> DielectricM, double PlatingM, SourcePosition Position)
{
    /// <summary>What the diameters of plated holes in the drill files are.</summary>
    public HoleDiameters HoleDiameters { get; init; }

    /// <summary>Mean thickness of the solder on copper that the mask leaves bare, metres; null when none is to be counted on.</summary>
    public double? SolderM { get; init; }

    /// <summary>What that solder is made of.</summary>
    public SolderAlloy SolderAlloy { get; init; }

    /// <summary>Of FR-4; from memory. Only the capacitance of switch nodes rests on it.</summary>
    public const double UsualRelativePermittivity = 4.3;

    /// <summary>Relative permittivity of the dielectrics, at least 1.</summary>
    public double RelativePermittivity { get; init; } = UsualRelativePermittivity;
}

/// <summary>Families of solder, told apart by their resistivity.</summary>
public enum SolderAlloy
{
    /// <summary>Tin with a few per cent of silver and copper, free of lead.</summary>
    TinSilverCopper,

    /// <summary>Tin and lead near the eutectic.</summary>
    TinLead,
}

/// <summary>What a diameter in a drill file means for a plated hole; the two give different walls.</summary>
public enum HoleDiameters
{
    /// <summary>The hole as delivered, inside its plating.</summary>
    Finished,

    /// <summary>The drill, before plating.</summary>
    Drilled,
}

/// <summary>What judges the temperature of conductors. The board's own temperatures always do; chart relations only where chosen.</summary>
public enum JudgingRule
{
    /// <summary>The board's own temperatures alone; chart relations are shown beside them.</summary>
    Board,

    /// <summary>The IPC-2152-style fit too, inside its range.</summary>
    Ipc2152,

    /// <summary>The IPC-2221 relation too, inside its range.</summary>
    Ipc2221,

    /// <summary>Both relations too, each inside its range.</summary>
    All,
}

/// <summary>What judging rules are called.</summary>
public static class JudgingRuleWords
{
    /// <summary>As briefs and machine output call it.</summary>
    public static string Word(this JudgingRule rule) => LimitsSectionReader.JudgingRules.First(choice => choice.Value == rule).Word;
}

/// <summary>Board-wide limits.</summary>
/// <param name="TemperatureRiseK">Rise that the copper's own current may add, kelvin, positive.</param>
/// <param name="VoltageDropV">Allowed drop of each net without its own, volts, positive; null when not judged.</param>
/// <param name="JudgeBy">What judges the temperature of conductors.</param>
/// <param name="SwitchNodeAreaRatio">Switch-node area above this many times the least among its siblings is remarked on; at least 1.</param>
/// <param name="PlaneSlotLengthM">Slots in a plane longer than this are remarked on, metres, positive; null when not checked.</param>
public sealed record ReviewLimits(
    double TemperatureRiseK,
    double? VoltageDropV,
    JudgingRule JudgeBy,
    double SwitchNodeAreaRatio,
    double? PlaneSlotLengthM)
{
    /// <summary>What no place of the board may exceed with all heat counted, kelvin.</summary>
    public double TemperatureK { get; init; } = LaminateLimit.OperatingK;

    /// <summary>Limits that have no published source.</summary>
    public PracticeLimits Practice { get; init; } = PracticeLimits.Common;
}

/// <summary>What came out of reading a brief.</summary>
/// <param name="Brief">The brief, or null when any diagnostic but an unconfirmed guess is an error.</param>
/// <param name="Diagnostics">Remarks in file order.</param>
public sealed record BriefReading(ReviewBrief? Brief, IReadOnlyList<Diagnostic> Diagnostics)
{
    /// <summary>What was read, as it stood on disk; empty when nothing was.</summary>
    public ReadOnlyMemory<byte> Bytes { get; init; }
}
