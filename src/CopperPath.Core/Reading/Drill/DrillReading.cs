using CopperPath.Artwork;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Drill;

/// <summary>What came out of a drill file.</summary>
/// <param name="Artwork">The holes, or null when the file was rejected.</param>
/// <param name="Format">How numbers were read, for the report: e.g. <c>inch, 2.5, leading zeros omitted (inferred)</c>.</param>
/// <param name="Diagnostics">Remarks in file order; holds at least one error when <paramref name="Artwork"/> is null.</param>
public sealed record DrillReading(DrillArtwork? Artwork, string Format, IReadOnlyList<Diagnostic> Diagnostics);
