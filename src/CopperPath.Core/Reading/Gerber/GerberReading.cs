using CopperPath.Artwork;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Gerber;

/// <summary>What came out of a Gerber file.</summary>
/// <param name="Artwork">The image, or null when the file was rejected.</param>
/// <param name="Diagnostics">Remarks in file order; holds at least one error when <paramref name="Artwork"/> is null.</param>
public sealed record GerberReading(LayerArtwork? Artwork, IReadOnlyList<Diagnostic> Diagnostics);
