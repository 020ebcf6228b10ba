using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>Painted objects in order.</summary>
internal sealed class Canvas
{
    public List<PaintedObject> Objects { get; } = [];

    /// <summary>Vertices of all objects; rings shared between objects are counted each time.</summary>
    public long VertexCount { get; private set; }

    public void Add(PaintedObject painted)
    {
        Objects.Add(painted);
        foreach (PointNm[] ring in painted.Rings)
        {
            VertexCount += ring.Length;
        }
    }

    /// <summary>Paints everything of another canvas again, moved.</summary>
    /// <param name="other">What to paint; not this canvas.</param>
    /// <param name="offset">Moves every object.</param>
    /// <param name="toggle">Exchanges dark and clear.</param>
    /// <param name="labels">Claims for objects that make none themselves.</param>
    public void Append(Canvas other, PointNm offset, bool toggle, ObjectLabels labels)
    {
        foreach (PaintedObject painted in other.Objects)
        {
            Objects.Add(painted with
            {
                Polarity = toggle ? Opposite(painted.Polarity) : painted.Polarity,
                Offset = painted.Offset + offset,
                Anchor = painted.Anchor + offset,
                Labels = Filled(painted.Labels, labels),
            });
        }

        VertexCount += other.VertexCount;
    }

    private static Polarity Opposite(Polarity polarity) => polarity == Polarity.Dark ? Polarity.Clear : Polarity.Dark;

    private static ObjectLabels Filled(ObjectLabels own, ObjectLabels outer)
    {
        if (ReferenceEquals(outer, ObjectLabels.None))
        {
            return own;
        }

        return ReferenceEquals(own, ObjectLabels.None) ? outer : new ObjectLabels(
            own.Nets.Count > 0 ? own.Nets : outer.Nets,
            own.Pin ?? outer.Pin,
            own.Component ?? outer.Component,
            own.ApertureFunction ?? outer.ApertureFunction);
    }
}
