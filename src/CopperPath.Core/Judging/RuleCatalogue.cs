namespace CopperPath.Judging;

/// <summary>A rule: its stable identifier, what it asks, and where its limit comes from.</summary>
public sealed record Rule(string Id, string Question, string LimitSource);

/// <summary>All rules, in the order of the report.</summary>
public static class RuleCatalogue
{
    public static readonly Rule Neck = new("neck",
        "Does each cross-section of copper carry its current within the allowed rise?",
        "temperature rise of the brief, through the conductor relation named there (IPC-2152-style fit or IPC-2221)");

    public static readonly Rule Barrel = new("barrel",
        "Does each plated hole carry its current within the allowed rise?",
        "temperature rise of the brief, a barrel judged as a conductor of equal section");

    public static readonly Rule Heat = new("heat",
        "Does the copper stay within the allowed rise on this very board?",
        "temperature rise of the brief, against the temperatures solved for the whole board");

    public static readonly Rule Drop = new("drop",
        "Is the voltage lost along the copper within the allowed drop?",
        "voltage drop of the brief");

    public static readonly Rule SwingArea = new("swing-area",
        "Is the copper of a switch node no larger than its siblings need?",
        "switch node area ratio of the brief; the default is common practice, no source");

    public static readonly Rule ReturnSlot = new("return-slot",
        "Is the return plane whole under the power path?",
        "plane slot length of the brief; the default is common practice, no source");

    public static readonly Rule Open = new("open",
        "Does copper join the terminals at all?",
        "none: a conductor either connects or does not");

    public static readonly IReadOnlyList<Rule> All = [Neck, Barrel, Heat, Drop, SwingArea, ReturnSlot, Open];
}
