namespace CopperPath.Artwork;

/// <summary>Something a flash can put down, or a stroke can draw with.</summary>
/// <param name="Function">The <c>.AperFunction</c> it was defined under, or null.</param>
internal abstract record Aperture(string? Function);

/// <summary>A plain shape: circle, rectangle, obround, polygon or macro.</summary>
internal sealed record StampAperture(Stamp Stamp, string? Function) : Aperture(Function);

/// <summary>
/// A recorded list of operations that is drawn again, in order, at every flash. Filled between <c>%ABDnn*%</c>
/// and <c>%AB*%</c>; used only after it is complete, so a block can never hold itself.
/// </summary>
internal sealed record BlockAperture(string? Function) : Aperture(Function)
{
    private readonly Dictionary<Similarity, Canvas> _drawn = [];

    public List<DrawOperation> Operations { get; } = [];

    /// <summary>Objects one flash makes, inner blocks expanded; stops counting at <see cref="long.MaxValue"/> / 4.</summary>
    public long ObjectCount { get; private set; }

    public void Add(DrawOperation operation)
    {
        Operations.Add(operation);
        long added = operation is FlashOperation { Aperture: BlockAperture inner } ? inner.ObjectCount : 1;
        ObjectCount = Math.Min(long.MaxValue / 4, ObjectCount + added);
    }

    /// <summary>The block's objects about its origin for one similarity, drawn once.</summary>
    public bool TryGetDrawn(in Similarity similarity, out Canvas canvas)
    {
        if (_drawn.TryGetValue(similarity, out Canvas? known))
        {
            canvas = known;
            return true;
        }

        canvas = new Canvas();
        _drawn.Add(similarity, canvas);
        return false;
    }
}
