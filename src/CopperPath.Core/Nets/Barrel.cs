using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.Nets;

/// <summary>A plated hole or slot that joins the copper it touches on the layers of its span.</summary>
/// <param name="Feature">The drilled feature.</param>
/// <param name="Outline">Wall of the drilled hole as a counter-clockwise ring.</param>
/// <param name="Layers">Numbers of the layers whose copper meets the wall, ascending.</param>
/// <param name="PlatingInferred">True when the file did not say that the hole is plated and the copper around it decided.</param>
public sealed record Barrel(
    DrilledFeature Feature,
    PointNm[] Outline,
    IReadOnlyList<int> Layers,
    bool PlatingInferred)
{
    /// <summary>Centre of a round hole, middle of a slot.</summary>
    public PointNm Centre { get; } = Middle(Feature.Path);

    private static PointNm Middle(PointNm[] path)
    {
        PointNm a = path[(path.Length - 1) / 2];
        PointNm b = path[path.Length / 2];
        return new PointNm((a.X + b.X) / 2, (a.Y + b.Y) / 2);
    }
}
