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
}

/// <summary>All stretches of a brief tied to a board, or the reasons why not.</summary>
public sealed record BoundCircuit(IReadOnlyList<BoundNet> Nets, IReadOnlyList<Diagnostic> Diagnostics);
