using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>One step in building a stamp: adds its outlines to what the earlier parts made, or takes them away.</summary>
/// <param name="Adds">False takes the part away from the earlier parts.</param>
/// <param name="Solids">Closed curves whose insides belong to the part.</param>
/// <param name="Holes">Closed curves strictly inside one solid, disjoint from each other and from other solids.</param>
internal sealed record StampPart(bool Adds, IReadOnlyList<Outline> Solids, IReadOnlyList<Outline> Holes)
{
    public StampPart(Outline solid)
        : this(true, [solid], [])
    {
    }
}

/// <summary>
/// The shape of an aperture: parts in order. A stamp's empty places show what lies below; they never clear it.
/// </summary>
internal sealed class Stamp(IReadOnlyList<StampPart> parts)
{
    private readonly Dictionary<Similarity, PointNm[][]> _rings = [];

    /// <summary>Radius when the stamp is one solid circle about the origin, else null. May be zero.</summary>
    public double? SolidCircleRadiusNm { get; init; }

    /// <summary>Largest distance from the origin, nanometres.</summary>
    public double ReachNm { get; } =
        parts.Count == 0 ? 0 : parts.Max(p => p.Solids.Count == 0 ? 0 : p.Solids.Max(o => o.ReachNm));

    /// <summary>
    /// Rings of the stamp about its origin, the same arrays for the same similarity. The limits must be the same on
    /// every call.
    /// </summary>
    public PaintFault TryGetRings(in Similarity similarity, PaintLimits limits, out PointNm[][] rings)
    {
        if (_rings.TryGetValue(similarity, out rings!))
        {
            return PaintFault.None;
        }

        rings = [];
        if (!(ReachNm * similarity.Scale <= PointNm.LimitNm))
        {
            return PaintFault.OutOfRange;
        }

        if (Flattened(similarity, limits) is not { } flattened)
        {
            return PaintFault.TooMuch;
        }

        // Rings laid over each other as they are would cancel where one winds backwards.
        PointNm[][] together = [.. flattened.SelectMany(part => part.Rings)];
        bool isPlain = flattened.TrueForAll(part => part.Adds)
            && (flattened.Count == 1 || !together.Any(new SelfCrossing().IsFoundIn));
        PointNm[][]? built = isPlain ? together : MacroExposure.Compose(flattened);
        if (built is null)
        {
            return PaintFault.StampNotComposable;
        }

        rings = built;
        _rings.Add(similarity, rings);
        return PaintFault.None;
    }

    /// <summary>The rings of each part, or null when they have more vertices than a whole image may have.</summary>
    private List<(bool Adds, PointNm[][] Rings)>? Flattened(Similarity similarity, PaintLimits limits)
    {
        long vertices = 0;
        List<(bool Adds, PointNm[][] Rings)> flattened = new(parts.Count);
        foreach (StampPart part in parts)
        {
            PointNm[][] rings = Flatten(part, similarity, limits.ChordToleranceNm);
            vertices += rings.Sum(ring => (long)ring.Length);
            if (vertices > limits.MaximumVertices)
            {
                return null;
            }

            flattened.Add((part.Adds, rings));
        }

        return flattened;
    }

    private static PointNm[][] Flatten(StampPart part, Similarity similarity, double toleranceNm)
    {
        IEnumerable<PointNm[]> solids = part.Solids.Select(o => o.Flatten(similarity, toleranceNm));
        IEnumerable<PointNm[]> holes = part.Holes.Select(o => RingOrder.Clockwise(o.Flatten(similarity, toleranceNm)));
        return [.. solids.Concat(holes).Where(ring => ring.Length > 0)];
    }
}
