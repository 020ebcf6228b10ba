namespace CopperPath.Cli.Overlays;

/// <summary>The lines that say what a picture is of, so that it can be filed on its own.</summary>
/// <param name="Board">Board name.</param>
/// <param name="Revision">Board revision; empty when unknown.</param>
/// <param name="Layer">Copper layer, in the words of the board's brief.</param>
/// <param name="Subject">Net or converter stage shown.</param>
/// <param name="Conditions">Load, ambient, copper and the like, one short phrase each.</param>
/// <param name="ToolVersion">Program name and version.</param>
/// <param name="InputHash">Fingerprint of the inputs; empty to leave out.</param>
public sealed record TitleBlock(
    string Board,
    string Revision,
    string Layer,
    string Subject,
    IReadOnlyList<string> Conditions,
    string ToolVersion,
    string InputHash);
