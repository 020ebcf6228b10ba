using CopperPath.Artwork;
using CopperPath.Diagnostics;

namespace CopperPath.Reading.Drill;

/// <summary>What came out of a drill file.</summary>
/// <param name="Artwork">The holes, or null when the file was rejected.</param>
/// <param name="Format">How numbers were read, for the report: e.g. <c>inch, 2.5, leading zeros omitted (given)</c>.</param>
/// <param name="Diagnostics">Remarks in file order; holds at least one error when <paramref name="Artwork"/> is null.</param>
public sealed record DrillReading(DrillArtwork? Artwork, string Format, IReadOnlyList<Diagnostic> Diagnostics)
{
    /// <summary>
    /// True when numbers could not be read for want of a unit or format: ask
    /// <see cref="DrillFormatInference"/> or the user, then read again.
    /// </summary>
    public bool NeedsFormat { get; init; }

    /// <summary>True when positions rest on an assumed zero suppression that the copper should confirm.</summary>
    public bool IsFormatAssumed { get; init; }
}
