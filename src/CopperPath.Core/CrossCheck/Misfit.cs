using System.Globalization;
using CopperPath.Geometry;

namespace CopperPath.CrossCheck;

/// <summary>
/// How one file's coordinates come out of another's: mirrored left to right or not, turned by quarters, scaled about
/// the origin, moved, in this order.
/// </summary>
/// <param name="IsMirrored">Whether x changes its sign first.</param>
/// <param name="QuarterTurns">Quarter turns counter-clockwise, 0 to 3.</param>
/// <param name="Scale">Factor, positive.</param>
/// <param name="Shift">Added last.</param>
internal sealed record Misfit(bool IsMirrored, int QuarterTurns, double Scale, PointNm Shift)
{
    /// <summary>Nothing changes.</summary>
    public static readonly Misfit None = new(false, 0, 1, default);

    /// <summary>Factors this near to one are no scaling: 0.1 mm on a board of 0.5 m.</summary>
    private const double SameScale = 2e-4;

    private bool IsMove => !IsMirrored && QuarterTurns == 0 && Math.Abs(Scale - 1) < SameScale;

    public PointNm Apply(PointNm p)
    {
        PointNm turned = Turned(p);
        return new PointNm((long)Math.Round(turned.X * Scale) + Shift.X, (long)Math.Round(turned.Y * Scale) + Shift.Y);
    }

    /// <summary>Mirrored and turned only.</summary>
    public PointNm Turned(PointNm p)
    {
        PointNm q = IsMirrored ? new PointNm(-p.X, p.Y) : p;
        return QuarterTurns switch
        {
            1 => new PointNm(-q.Y, q.X),
            2 => new PointNm(-q.X, -q.Y),
            3 => new PointNm(q.Y, -q.X),
            _ => q,
        };
    }

    /// <summary>The way back.</summary>
    public Misfit Inverse()
    {
        // A mirror image is its own way back whatever its turn; a turn goes back the other way.
        Misfit back = new(IsMirrored, IsMirrored ? QuarterTurns : (4 - QuarterTurns) % 4, 1 / Scale, default);
        PointNm moved = back.Apply(Shift);
        return back with { Shift = new PointNm(-moved.X, -moved.Y) };
    }

    /// <summary>Whether the two say the same of a board, to the tolerance of a place.</summary>
    public bool IsLike(Misfit other, long toleranceNm) =>
        IsMirrored == other.IsMirrored && QuarterTurns == other.QuarterTurns
        && Math.Abs((Scale / other.Scale) - 1) < SameScale && Shift.DistanceNmTo(other.Shift) <= 2 * toleranceNm;

    /// <summary>
    /// Whether both are plain moves and this is the shorter: where pads stand at one distance from their vias, both join
    /// as many places, and files slip by little.
    /// </summary>
    public bool IsNearerThan(Misfit? other) => other is { IsMove: true } && IsMove
        && Shift.DistanceNmTo(default) < other.Shift.DistanceNmTo(default);

    /// <summary>In words that fit after "lie", with what it is measured from: right of 22 of 22 pads, scaled against 22 of 22 pads.</summary>
    public string Against(FormattableString counted) =>
        $"{this} {(IsMove ? "of" : "against")} {counted.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>In words that fit after "lie".</summary>
    public override string ToString()
    {
        if (IsMirrored)
        {
            return QuarterTurns switch
            {
                0 => $"mirrored left to right{About(Shift.X, "x")}",
                2 => $"mirrored top to bottom{About(Shift.Y, "y")}",
                _ => "mirrored and turned by a quarter",
            };
        }

        if (QuarterTurns > 0)
        {
            return string.Create(CultureInfo.InvariantCulture, $"turned by {90 * QuarterTurns} degrees counter-clockwise");
        }

        if (Math.Abs(Scale - 1) >= SameScale)
        {
            return string.Create(CultureInfo.InvariantCulture, $"scaled by {Scale:0.####}");
        }

        string[] parts = [.. new[] { Along(Shift.X, "right", "left"), Along(Shift.Y, "up", "down") }.OfType<string>()];
        return parts.Length == 0 ? "in place" : string.Join(" and ", parts);
    }

    private static string? Along(long byNm, string positive, string negative) => Math.Abs(byNm) < 5_000 ? null
        : string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(byNm) / 1e6:0.00} mm {(byNm > 0 ? positive : negative)}");

    private static string About(long shiftNm, string axis) =>
        string.Create(CultureInfo.InvariantCulture, $" about {axis} = {shiftNm / 2e6:0.00} mm");
}
