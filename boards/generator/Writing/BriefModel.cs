namespace CopperPath.DemoBoards.Writing;

/// <summary>A stretch of copper to be reviewed.</summary>
/// <param name="Name">The reader's name of it.</param>
/// <param name="Net">Net name in the files.</param>
/// <param name="Role">Role word of the brief.</param>
/// <param name="Terminals">Where current enters and leaves; pins are written "part.pin", and "part" alone is all its pins.</param>
/// <param name="Siblings">Group of like nets, or null.</param>
public sealed record BriefNet(string Name, string Net, string Role, IReadOnlyList<BriefTerminal> Terminals, string? Siblings = null)
{
    /// <summary>True for alternating current beside the direct current that another entry brings to the same copper.</summary>
    public bool IsAlternating { get; init; }
}

/// <summary>A terminal: contacts and current.</summary>
/// <param name="Name">The reader's name of it.</param>
/// <param name="Contacts">Pins ("part.pin"), or one part without a pin.</param>
/// <param name="Current">"enters: 9 A", "leaves: 9 A" or "takes: rest".</param>
/// <param name="IsSpread">Current shared in equal parts among the contacts.</param>
public sealed record BriefTerminal(string Name, IReadOnlyList<string> Contacts, string Current, bool IsSpread = false);
