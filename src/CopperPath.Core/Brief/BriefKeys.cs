namespace CopperPath.Brief;

/// <summary>
/// Every key of the format, by section. The reader refuses keys that are not listed here and reads none that are not;
/// a test holds docs/brief.schema.json to the same lists.
/// </summary>
internal static class BriefKeys
{
    public const string Because = "because";

    /// <summary>A value nobody has confirmed; it may stand wherever a value does.</summary>
    public static readonly SectionKeys Blank = new("a blank", ["guess", "candidates", Because]);

    public static readonly SectionKeys Root = new("the brief",
        ["copperpath", "board", "stackup", "ambient", "conductor temperature", "accuracy", "limits", "thermal", "tolerance", "converters", "nets", "load profile", "faults", "sensitive nets", "waivers"]);

    public static readonly SectionKeys Board = new("board", ["name", "revision", "files", "layers", "drill format", "placement"]);

    public static readonly SectionKeys LayerAnswer = new("an entry of layers", ["file", "role", "number", "polarity"]);

    public static readonly SectionKeys DrillFormat = new("drill format",
        ["file", "unit", "integer digits", "decimal digits", "zeros"]);

    public static readonly SectionKeys Stackup = new("stackup", ["copper", "dielectric", "plating", "hole diameters", "solder on exposed copper", "solder alloy", "relative permittivity"]);

    public static readonly SectionKeys Tolerance = new("tolerance", ["class", "copper", "plating", "dielectric", "laminate", "ambient", "film", "current"]);

    public static readonly SectionKeys Limits = new("limits",
        [
        "temperature rise", "temperature", "voltage drop", "judge by", "switch node area ratio", "plane slot length",
        "sharing ratio", "least area ratio", "sensitive distance", "capacitor vias", "capacitor distance ratio", "bank drop", "hot loop ratio",
    ]);

    public static readonly SectionKeys Converter = new("a converter",
    [
        "name", "input voltage", "output voltage", "load current", "phases", "switching frequency", "inductance", "efficiency",
        "loss shares", "edge time", "high-side switches", "low-side switches", "input capacitors", "output capacitors", "connector",
    ]);

    public static readonly SectionKeys LossShares = new("loss shares", ["high side", "low side", "inductor", "rest"]);

    public static readonly SectionKeys CapacitorGroup = new("a group of capacitors", ["count", "value", "esr"]);

    public static readonly SectionKeys SupplyConnector = new("connector", ["pins", "rating"]);

    public static readonly SectionKeys SensitiveNet = new("a sensitive net", ["name", "net", "at"]);

    public static readonly SectionKeys Waiver = new("a waiver", ["rule", "net", "near", "reason", "by", "fingerprint"]);

    public static readonly SectionKeys Net = new("a net", ["name", "net", "at", "role", "siblings", "flow", "alternative", "limits", "terminals"]);

    public static readonly SectionKeys NetLimits = new("limits of a net", ["temperature rise", "voltage drop"]);

    public static readonly SectionKeys Terminal = new("a terminal",
    [
        "name", "pins", "component", "pads", "pads in", "holes", "rectangle", "circle",
        "enters", "leaves", "takes", "contact", "contact rating",
    ]);

    public static readonly SectionKeys Thermal = new("thermal",
        ["orientation", "top", "bottom", "laminate", "cell", "losses", "heat sinks"]);

    public static readonly SectionKeys Face = new("a face", ["film", "emissivity"]);

    public static readonly SectionKeys Laminate = new("laminate", ["through", "in plane", "below"]);

    public static readonly SectionKeys Loss = new("a loss", ["name", "component", "rectangle", "circle", "power", "to air"]);

    public static readonly SectionKeys HeatSink = new("a heat sink",
        ["name", "component", "rectangle", "circle", "temperature", "resistance"]);

    public static readonly SectionKeys Fault = new("a fault",
        ["name", "stretch", "current", "time", "capacitance", "voltage", "ramp", "limit"]);

    public static readonly SectionKeys LoadProfile = new("load profile",
        ["points", "csv", "stretches", "period", "until", "start", "parts exponent"]);

    public static readonly SectionKeys StretchLoad = new("a load of a stretch", ["stretch", "points", "csv"]);

    public static readonly SectionKeys PointOnLayer = new("a point on a layer", ["layer", "x", "y"]);

    public static readonly SectionKeys Point = new("a point", ["x", "y"]);

    public static readonly SectionKeys BoxOnLayer = new("a rectangle on a layer", ["layer", "from", "to"]);

    public static readonly SectionKeys CircleOnLayer = new("a circle on a layer", ["layer", "x", "y", "diameter"]);
}

/// <summary>The keys one kind of section may have.</summary>
/// <param name="Section">What to call the section in messages.</param>
/// <param name="Keys">Its keys, as written.</param>
internal sealed record SectionKeys(string Section, IReadOnlyList<string> Keys);
