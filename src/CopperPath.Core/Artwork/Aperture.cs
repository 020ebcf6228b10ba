using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>Something a flash can put down, or a stroke can draw with.</summary>
/// <param name="Function">The <c>.AperFunction</c> it was defined under, or null.</param>
internal abstract record Aperture(string? Function);

/// <summary>A plain shape: circle, rectangle, obround, polygon or macro.</summary>
internal sealed record StampAperture(Stamp Stamp, string? Function) : Aperture(Function);

/// <summary>
/// A recorded drawing that is drawn again, in order, at every flash. Filled between <c>%ABDnn*%</c> and <c>%AB*%</c>;
/// used only after it is complete, so a block can never hold itself.
/// </summary>
internal sealed record BlockAperture(string? Function) : Aperture(Function)
{
    private readonly Dictionary<Similarity, Canvas> _painted = [];

    public Drawing Drawing { get; } = new();

    /// <summary>The block's objects about its origin for one similarity, painted once; false when still to be painted.</summary>
    public bool TryGetPainted(in Similarity similarity, out Canvas canvas)
    {
        if (_painted.TryGetValue(similarity, out Canvas? known))
        {
            canvas = known;
            return true;
        }

        canvas = new Canvas();
        _painted.Add(similarity, canvas);
        return false;
    }
}

/// <summary>
/// A body drawn in columns and rows, copies running along y first: what step and repeat puts down, once, when it
/// closes. It has no code and nothing else can flash it.
/// </summary>
internal sealed record RepeatedBody(Drawing Drawing, int CountX, int CountY, PointNm Step) : Aperture((string?)null)
{
    /// <summary>Copies in all; up to 1e18.</summary>
    public long Copies => (long)CountX * CountY;
}
