using CopperPath.Electrical;
using CopperPath.Geometry;

namespace CopperPath.Judging;

/// <summary>A cut of a single layer or of copper that carries a current together, as one relation rates it.</summary>
/// <param name="Rating">The relation.</param>
/// <param name="RiseK">Rise by it, kelvin.</param>
/// <param name="Layers">Layers it crosses.</param>
/// <param name="AtLayer">Layer of its densest current.</param>
/// <param name="AtXM">Place of that, metres.</param>
/// <param name="AtYM">Place of that, metres.</param>
/// <param name="WidthM">Width of the copper, or what its box spans, metres.</param>
/// <param name="CurrentA">Current, amperes.</param>
/// <param name="Extent">Box round it.</param>
/// <param name="Single">The cut of a single layer, or null.</param>
/// <param name="Joint">The joint one, or null.</param>
internal sealed record NeckCut(
    ConductorRating Rating, double RiseK, IReadOnlyList<int> Layers, int AtLayer, double AtXM, double AtYM, double WidthM, double CurrentA,
    BoxNm Extent, Section? Single, JointSection? Joint)
{
    /// <summary>Cuts this near the worst one of a neck, or near one like it, are the same neck, metres.</summary>
    private const double SameNeckM = 2e-3;

    /// <summary>Cuts along a long neck are like the worst one: width and current within this share of its own.</summary>
    private const double AlikeShare = 0.05;

    public static NeckCut Of(Section section, ConductorRating rating) => new(
        rating, rating.TraceRiseK(section), [section.Layer], section.Layer, section.AtXM, section.AtYM, section.WidthM, section.CurrentA,
        BoxNm.Of([PointNm.FromMetres(section.FromXM, section.FromYM), PointNm.FromMetres(section.ToXM, section.ToYM)]), section, null);

    public static NeckCut Of(JointSection section, ConductorRating rating) => new(
        rating, rating.JointRiseK(section), [.. section.Layers.Select(layer => layer.Layer)], section.AtLayer, section.AtXM, section.AtYM,
        Math.Max(section.RightM - section.LeftM, section.TopM - section.BottomM), section.CurrentA,
        BoxNm.Of([PointNm.FromMetres(section.LeftM, section.BottomM), PointNm.FromMetres(section.RightM, section.TopM)]), null, section);

    /// <summary>Whether another cut lies at the same place on a layer that both cross.</summary>
    public bool IsBeside(NeckCut other) => Layers.Intersect(other.Layers).Any() && Distance(other) < SameNeckM + (0.75 * WidthM);

    /// <summary>
    /// The cuts of the neck of which this is the worst: the row of cuts like it, each beside one before it, and cuts through the
    /// copper that carries the current together with one of them.
    /// </summary>
    public List<NeckCut> Neck(IReadOnlyList<NeckCut> cuts)
    {
        List<NeckCut> neck = [this];
        List<NeckCut> alike = [.. cuts.Where(cut => cut != this && IsAlike(cut))];
        for (int next = 0; next < neck.Count; next++)
        {
            NeckCut from = neck[next];
            neck.AddRange(alike.Where(from.IsBeside));
            alike.RemoveAll(from.IsBeside);
        }

        neck.AddRange(cuts.Where(cut => cut.Joint is not null && cut != this && neck.Exists(own => own.IsBeside(cut))));
        return neck;
    }

    private bool IsAlike(NeckCut other) => Joint is null == other.Joint is null
        && Math.Abs(other.WidthM - WidthM) <= AlikeShare * WidthM && Math.Abs(other.CurrentA - CurrentA) <= AlikeShare * CurrentA;

    private double Distance(NeckCut other) =>
        Math.Sqrt(((AtXM - other.AtXM) * (AtXM - other.AtXM)) + ((AtYM - other.AtYM) * (AtYM - other.AtYM)));
}
