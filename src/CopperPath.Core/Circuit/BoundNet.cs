using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Nets;

namespace CopperPath.Circuit;

/// <summary>A stretch of the brief tied to the copper it talks about.</summary>
/// <param name="Review">What the brief says.</param>
/// <param name="Net">The conductor.</param>
/// <param name="Terminals">Its terminals as areas and barrels, in the order of the brief.</param>
public sealed record BoundNet(NetReview Review, Net Net, IReadOnlyList<BoundTerminal> Terminals)
{
    /// <summary>Current that enters it, amperes.</summary>
    public double EnteringA => Terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA);

    /// <summary>The entries of the brief whose currents it is the sum of; itself where it is one entry.</summary>
    public IReadOnlyList<BoundNet> Entries
    {
        get => field ?? [this];
        init;
    }

    /// <summary>What it and other flows of its net with another word never do at the same time; null where it flows whatever else does.</summary>
    public string? Alternative => Review.Alternative;
}

/// <summary>All stretches of a brief tied to a board, or the reasons why not.</summary>
public sealed record BoundCircuit(IReadOnlyList<BoundNet> Nets, IReadOnlyList<Diagnostic> Diagnostics);
