using CopperPath.PowerPath;

namespace CopperPath.Cli.Report.Starter;

/// <summary>Where a proposed stretch is fed or loaded, and with what.</summary>
/// <param name="Name">What it is called; unique in its stretch.</param>
/// <param name="Pads">Pads of the stretch's net; at least one.</param>
/// <param name="Current">The current's key and value, YAML.</param>
/// <param name="Because">What speaks for this place, or null where its part is named and the role of the stretch says it.</param>
internal sealed record ProposedTerminal(string Name, IReadOnlyList<PartPad> Pads, string Current, string? Because);
