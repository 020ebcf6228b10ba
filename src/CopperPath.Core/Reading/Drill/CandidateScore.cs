using System.Globalization;

namespace CopperPath.Reading.Drill;

/// <summary>How well the holes of one decoding sit on the board.</summary>
/// <param name="Format">The format tried.</param>
/// <param name="SameAs">Other formats that decode every hole and tool to exactly the same place and size.</param>
/// <param name="OnPadShare">Share of holes, 0 to 1, whose centre is the centre of a copper pad.</param>
/// <param name="InsideShare">Share of holes inside the bounds of the board, grown by 5 %.</param>
/// <param name="ToolShare">Share of holes with a tool from 0.1 mm to 10 mm.</param>
/// <param name="Rejected">Why the file can not be decoded so, or null.</param>
public sealed record CandidateScore(
    DrillFormat Format,
    IReadOnlyList<DrillFormat> SameAs,
    double OnPadShare,
    double InsideShare,
    double ToolShare,
    string? Rejected)
{
    /// <summary>The smallest share: a decoding is as good as its worst evidence.</summary>
    public double Score => Rejected is null ? Math.Min(OnPadShare, Math.Min(InsideShare, ToolShare)) : 0;

    public override string ToString() => Rejected is not null
        ? $"{Format}: {Rejected}"
        : string.Create(
            CultureInfo.InvariantCulture,
            $"{Format}: {OnPadShare:P1} on pads, {InsideShare:P1} inside the board, {ToolShare:P1} of usual size");
}
