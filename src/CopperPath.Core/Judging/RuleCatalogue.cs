namespace CopperPath.Judging;

/// <summary>A rule: what it asks, what it is judged by and on what evidence. docs/rules.md is written from these.</summary>
/// <param name="Id">Stable identifier; waivers name it.</param>
/// <param name="Question">What it asks, as a reviewer would.</param>
/// <param name="Level">What a finding of it means: beyond limit, or a remark until the brief states a limit.</param>
/// <param name="Limit">The limit and its default.</param>
/// <param name="LimitSource">Where the limit comes from.</param>
/// <param name="BriefKey">Key of the brief that changes it.</param>
/// <param name="Evidence">What a finding rests on.</param>
public sealed record Rule(string Id, string Question, string Level, string Limit, string LimitSource, string BriefKey, string Evidence);

/// <summary>All rules, in the order of the report.</summary>
public static class RuleCatalogue
{
    private const string Beyond = JudgingWords.BeyondLimit;
    private const string OverTheRange = $"; {JudgingWords.WithinAsStated} where what is not known takes it beyond";
    private const string RemarkUntilStated = $"{JudgingWords.Remark}; {JudgingWords.BeyondLimit} where the brief states the limit";
    private const string Practice = "common practice, no source";

    public static readonly Rule Temperature = new("temperature",
        "Does the hottest place of the board stay within its operating temperature with all heat counted?",
        $"{Beyond}; could not judge where the limit lies within the estimate{OverTheRange}; where no loss of parts is stated or follows from an efficiency, never within", "130 °C",
        "maximum operating temperature of many FR-4 laminates (UL 796; from memory); state the laminate's own",
        "limits: temperature; thermal; converters: efficiency", "temperatures solved for the whole board, all copper, laminate and stated parts");

    public static readonly Rule Heat = new("heat",
        "Does its own current warm the copper by no more than is allowed, on this very board?",
        $"{Beyond}; could not judge where the limit lies within the estimate{OverTheRange}", "temperature rise, no default", "the brief",
        "limits: temperature rise; thermal", "temperatures solved for the whole board with and without the loss of its copper");

    public static readonly Rule Neck = new("neck",
        "Would each cross-section of copper carry its current within the allowed rise if it were one long isolated conductor?",
        $"{Beyond} where `judge by` names a chart relation{OverTheRange}; otherwise only shown", "temperature rise, no default", "the brief, through the relation named there (IPC-2152-style fit or IPC-2221)",
        "limits: judge by; limits: temperature rise", "cuts across the solved current, through one layer and through all copper that carries it together; only inside the relation's range");

    public static readonly Rule Barrel = new("barrel",
        "Would each plated hole carry its current within the allowed rise if it were one long isolated conductor?",
        $"{Beyond} where `judge by` names a chart relation{OverTheRange}; otherwise only shown", "temperature rise, no default", "the brief; a hole is judged as a conductor of equal section",
        "limits: judge by; limits: temperature rise", "current of each hole from the field solve; only inside the relation's range");

    public static readonly Rule Fault = new("fault",
        "Does the worst section stand the stated overloads?",
        $"{JudgingWords.Remark}; {JudgingWords.BeyondLimit} where the limit is passed{OverTheRange}", "130 °C", "maximum operating temperature of many FR-4 laminates (UL 796; from memory)",
        "faults: limit", "the worst section or plated hole of the stretch, heated without losing heat (adiabatic form of IEC 60949; from memory); once heat has time to leave, the warm board solved in time");

    public static readonly Rule Drop = new("drop",
        "Is the voltage lost along the copper within the allowed drop?",
        Beyond + OverTheRange, "voltage drop, not judged by default", "the brief",
        "limits: voltage drop", "potentials of the terminals from the field solve");

    public static readonly Rule SwingArea = new("swing-area",
        "Is the copper of a switch node no larger than that of its siblings?",
        Beyond, "2 times the smallest sibling", Practice,
        "limits: switch node area ratio", "areas of drawn copper, all layers summed");

    public static readonly Rule ReturnSlot = new("return-slot",
        "Is the return plane whole under the power path?",
        Beyond, "length of slot, not judged by default", Practice,
        "limits: plane slot length", "voids of the drawn plane, closed or open to its edge, that copper of the power path really lies over");

    public static readonly Rule Open = new("open",
        "Does copper join the terminals at all?",
        Beyond, "none", "none needed: a conductor either connects or does not",
        "none", "connectivity of the drawn copper and its plated holes");

    public static readonly Rule OneConductor = new("one-conductor",
        "Are stretches that do different work separate pieces of copper?",
        "beyond limit; undecided where the brief may mean one conductor", "separate", "none needed: copper between feed and return is a short circuit",
        "nets: role, net or at", "connectivity of the drawn copper and its plated holes; roles, names and parts of the brief");

    public static readonly Rule TwoNames = new("two-names",
        "Does the copper of each stretch carry the name of one net?",
        "undecided", "one name", "none needed: where names disagree, copper is misread, shorted or tied on purpose",
        "none; a waiver settles it", "net names in the artwork");

    public static readonly Rule Accuracy = new("accuracy",
        "Was the copper solved as closely as asked for, where a limit hangs on it?",
        "undecided where a limit lies within what is open; else a remark", "distance of the bounds, 1 %", "the brief",
        "accuracy", "bounds of loss and drop; estimates of the currents of holes");

    public static readonly Rule PhaseCount = new("phase-count",
        "Has the copper as many separate switch nodes as phases are claimed?",
        Beyond, "equal", "none needed: a phase without a switch node of its own is a parallel part",
        "converters: phases", "switch nodes found from the shapes of copper and pads");

    public static readonly Rule PinRating = new("pin-rating",
        "Does each connector pin stay within its rating?",
        Beyond, "rating, no default", "the brief: take the maker's value with neighbouring pins loaded",
        "converters: connector: rating; terminals: contact rating", "equal shares; where the field solve gives a pin more than its rating, a remark, because contacts without resistance share less evenly than real ones");

    public static readonly Rule SharingContacts = new("sharing-contacts",
        "Do paralleled switches and connector pins share their current evenly?",
        RemarkUntilStated, "2 times the equal share", Practice,
        "limits: sharing ratio", "current of each contact of a joined terminal from the field solve; the part is taken to join them without resistance, so real shares are more even");

    public static readonly Rule SharingPhases = new("sharing-phases",
        "Is the copper from each phase to the load alike?",
        RemarkUntilStated, "drop of 2 times the mean", Practice,
        "limits: sharing ratio", "drop from each inductor to the load at equal currents, from the field solve");

    public static readonly Rule SharingVias = new("sharing-vias",
        "Do the plated holes of a group share their current evenly?",
        RemarkUntilStated, "2 times the equal share, groups of 3 and more that carry 0.5 A in a hole", Practice,
        "limits: sharing ratio", "current of each hole from the field solve");

    public static readonly Rule SwingLeast = new("swing-least",
        "Is a switch node no larger than its current needs?",
        RemarkUntilStated, "4 times the least area", Practice,
        "limits: least area ratio", "least area: the width that carries the current at the allowed rise, from switches to inductor, and the pads");

    public static readonly Rule SensitiveDistance = new("sensitive-distance",
        "Do feedback and sense nets keep away from switch nodes?",
        RemarkUntilStated, "2 mm", Practice,
        "limits: sensitive distance; sensitive nets", "distance of drawn copper on the same layer and on neighbouring ones");

    public static readonly Rule HotLoop = new("hot-loop",
        "Is the loop of input capacitor, high side and low side as small in each phase as in the best?",
        RemarkUntilStated, "2 times the inductance of the best phase", Practice,
        "limits: hot loop ratio", "pads of the nearest input capacitor and the switches, and the distance to the plane under them");

    public static readonly Rule CapacitorVias = new("capacitor-vias",
        "Has each power capacitor plated holes of the return beside it?",
        RemarkUntilStated, "2 holes within 3 mm", Practice,
        "limits: capacitor vias", "plated holes of the return beside the capacitor's pad; a two-terminal part between output or supply and return is taken for a capacitor, unless its designator says otherwise");

    public static readonly Rule CapacitorDistance = new("capacitor-distance",
        "Are the input capacitors of a phase about equally far from its high side?",
        RemarkUntilStated, "4 times the nearest", Practice,
        "limits: capacitor distance ratio", "distances of pads");

    public static readonly Rule BankDrop = new("bank-drop",
        "Is the drop between output capacitors and load small?",
        RemarkUntilStated + OverTheRange, "10 mV", Practice,
        "limits: bank drop", "potentials at the capacitors' pads and at the load from the field solve");

    public static readonly IReadOnlyList<Rule> All =
    [
        Temperature, Heat, Neck, Barrel, Fault, Drop, SwingArea, ReturnSlot, Open, OneConductor, TwoNames, Accuracy, PhaseCount, PinRating, SharingContacts, SharingPhases, SharingVias,
        SwingLeast, SensitiveDistance, HotLoop, CapacitorVias, CapacitorDistance, BankDrop,
    ];

    /// <summary>The catalogue as a page of the documentation; a test holds docs/rules.md to it.</summary>
    public static string ToMarkdown() => string.Join('\n', All.Select(rule => string.Join('\n',
        $"## `{rule.Id}`",
        "",
        rule.Question,
        "",
        "| | |",
        "|---|---|",
        $"| Level | {rule.Level} |",
        $"| Limit | {rule.Limit} |",
        $"| Source of the limit | {rule.LimitSource} |",
        $"| Key in the brief | `{rule.BriefKey}` |",
        $"| Evidence | {rule.Evidence} |",
        "")));
}
