using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.Nets;

/// <summary>Where the wall of a drilled hole meets copper, and whether the hole is taken as plated.</summary>
/// <param name="Feature">The hole, slot or routed cut.</param>
/// <param name="File">Drill file it comes from.</param>
/// <param name="IsPlated">True when it is taken as plated.</param>
/// <param name="IsInferred">True when nothing but the copper around it says so.</param>
/// <param name="Layers">Every layer of its span, top to bottom.</param>
public sealed record HoleLanding(
    DrilledFeature Feature,
    string File,
    bool IsPlated,
    bool IsInferred,
    IReadOnlyList<LayerLanding> Layers)
{
    /// <summary>Centre of a round hole, middle of the extent of any other.</summary>
    public PointNm Centre => BoxNm.Of(Feature.Path).Centre;

    /// <summary>True when its wall meets copper on the first and the last layer of its span.</summary>
    public bool MeetsBothFaces => Layers.Count > 0 && Layers[0].Share > 0 && Layers[^1].Share > 0;

    /// <summary>True when its wall meets copper on at least one layer.</summary>
    public bool MeetsCopper => Layers.Any(layer => layer.Share > 0);

    /// <summary>
    /// True when copper surrounds it on both faces and, on every layer between, either surrounds it or keeps clear of
    /// it: what a plated hole of a sound board looks like. Anything else has copper broken off at its wall.
    /// </summary>
    public bool IsSound => Layers.Count > 0 && Layers[0].IsWhole && Layers[^1].IsWhole
        && Layers.All(layer => layer.IsWhole || layer.Share == 0);

    /// <summary>
    /// True when the hole only takes copper away: it has no plated wall, or a wall that meets no copper, as when the
    /// pad is no larger than the hole.
    /// </summary>
    public bool OnlyCuts => !IsPlated || !MeetsCopper;
}

/// <summary>How much of a hole's wall meets copper on a layer.</summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="Share">Share of the wall, 0 to 1.</param>
public readonly record struct LayerLanding(int Layer, double Share)
{
    /// <summary>True when copper surrounds the hole.</summary>
    public bool IsWhole => Share >= 1;
}
