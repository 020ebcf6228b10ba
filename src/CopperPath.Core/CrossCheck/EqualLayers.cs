using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.CrossCheck;

/// <summary>
/// Two layers with one image: planes that are meant to be alike, or a file copied over another. Equal planes are sound
/// where every pad on them has its hole and the vias of the board lead somewhere; pads of parts on both, or vias whose
/// copper is nowhere, say that the copy took the place of a layer.
/// </summary>
internal static class EqualLayers
{
    /// <summary>Share of copper in equal pieces from which two layers are called alike.</summary>
    private const double Alike = 0.9;

    /// <summary>Corners this near are one: rounding between inch and metric files.</summary>
    private const long SameNm = 10_000;

    /// <summary>Areas that differ by less are one piece, drawn with a clearance more or less.</summary>
    private const double SameArea = 0.02;

    /// <summary>Share of dead ends at which a copy is the likelier reason of equal layers: sound boards show 0.012 at most.</summary>
    private const double SuspectDeadEnds = 0.025;

    /// <summary>Pads without hole that equal layers may share: a fiducial at one place of both faces, a few times.</summary>
    private const int MostCommonPads = 4;

    public static IEnumerable<Diagnostic> Run(FabricationSet set, double shareOfDeadEnds)
    {
        double[] areasM2 = [.. set.Layers.Select(layer => layer.AreaM2)];
        Lazy<HoleIndex> holes = new(() => new HoleIndex(set.Drills.SelectMany(drill => drill.Features)));
        for (int i = 0; i < set.Layers.Count; i++)
        {
            for (int j = i + 1; j < set.Layers.Count; j++)
            {
                double share = CommonShare((set.Layers[i], areasM2[i]), (set.Layers[j], areasM2[j]));
                if (share < Alike)
                {
                    continue;
                }

                int pads = set.Landmarks[j].Count(land => land.Kind == LandmarkKind.Land && !holes.Value.HasHoleIn(land));
                if (Remark(set.Layers[i], set.Layers[j], share, pads, shareOfDeadEnds) is { } remark)
                {
                    yield return remark;
                }
            }
        }
    }

    private static Diagnostic? Remark(CopperLayer first, CopperLayer second, double share, int padsWithoutHole, double shareOfDeadEnds)
    {
        string alike = FormattableString.Invariant($"copper layers {first.Number} and {second.Number}, alike in {100 * share:0} % of their copper");
        return padsWithoutHole > MostCommonPads
            ? SetRemark.Doubt(SetCode.EqualLayers, second.File,
                $"{alike}, with {padsWithoutHole} pads without hole on both", "pads of parts on one face: one file may be a copy of the other")
            : shareOfDeadEnds >= SuspectDeadEnds
            ? SetRemark.Doubt(SetCode.EqualLayers, second.File,
                $"{alike}, and {100 * shareOfDeadEnds:0} % of the vias lead nowhere", "copper at both ends of vias: one file may be a copy that took the place of another layer")
            : null;
    }

    /// <summary>Share of the larger layer's copper in pieces that the other has too.</summary>
    private static double CommonShare((CopperLayer Layer, double AreaM2) a, (CopperLayer Layer, double AreaM2) b)
    {
        double larger = Math.Max(a.AreaM2, b.AreaM2);
        if (larger == 0 || Math.Min(a.AreaM2, b.AreaM2) < Alike * larger)
        {
            return 0;
        }

        ILookup<(long, long), PolygonNm> byPlace = a.Layer.Islands.ToLookup(Place);
        double commonM2 = b.Layer.Islands
            .Where(island => Near(Place(island)).SelectMany(place => byPlace[place]).Any(other => IsSame(island, other)))
            .Sum(island => island.AreaNm2) * 1e-18;
        return Math.Min(1, commonM2 / larger);
    }

    private static (long, long) Place(PolygonNm island) =>
        ((long)Math.Floor((double)island.Bounds.MinX / SameNm), (long)Math.Floor((double)island.Bounds.MinY / SameNm));

    private static IEnumerable<(long, long)> Near((long X, long Y) place) =>
        from x in Enumerable.Range(-1, 3) from y in Enumerable.Range(-1, 3) select (place.X + x, place.Y + y);

    private static bool IsSame(PolygonNm one, PolygonNm other) =>
        Math.Abs(one.Bounds.WidthNm - other.Bounds.WidthNm) <= 2 * SameNm && Math.Abs(one.Bounds.HeightNm - other.Bounds.HeightNm) <= 2 * SameNm
        && Math.Abs(one.AreaNm2 - other.AreaNm2) <= SameArea * Math.Max(one.AreaNm2, other.AreaNm2);
}
