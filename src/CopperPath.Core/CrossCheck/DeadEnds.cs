using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.CrossCheck;

/// <summary>
/// Vias that join a piece of copper to nothing but lands. A via is drilled to join; many that do not tell that the copper
/// they lead to is not in the files: an inner layer is missing, or another stands in its place.
/// </summary>
internal static class DeadEnds
{
    /// <summary>Leads of parts, which may end at their hole, need wider ones: 0.4 mm and some room. Common practice, no source.</summary>
    private const long WidestViaNm = Units.NmPerMm / 2;

    /// <summary>A land on its own is at most this much wider than its hole; twice the usual 0.15 to 0.25 mm ring and a reserve.</summary>
    private const long WidestRingsNm = 7 * Units.NmPerMm / 10;

    /// <summary>Share of vias from which copper is missing: 0.012 on sound boards, a third and more without their inner layers.</summary>
    private const double FaultOfSet = 0.05;

    /// <summary>Fewer are spare vias and test points.</summary>
    private const int Fewest = 3;

    public static IEnumerable<Diagnostic> Run(FabricationSet set, int vias, IReadOnlyList<PointNm> dead)
    {
        if (dead.Count >= Fewest && dead.Count >= FaultOfSet * vias)
        {
            yield return SetRemark.Doubt(SetCode.DeadEnds, set.Path,
                $"{dead.Count} of {vias} vias that lead from copper on one layer to nothing, {SetRemark.At(dead)}",
                "copper at both ends of a via: an inner layer may be missing, or be another one");
        }
    }

    /// <summary>Vias of the board and those that lead nowhere.</summary>
    public static (int Vias, IReadOnlyList<PointNm> Dead) Of(NetList nets)
    {
        int vias = 0;
        List<PointNm> dead = [];
        foreach (Net net in nets.Nets)
        {
            Barrel[] ofNet = [.. net.Barrels.Where(IsVia)];
            if (ofNet.Length == 0)
            {
                continue;
            }

            vias += ofNet.Length;
            foreach (Barrel via in ofNet)
            {
                int joined = via.Layers.Count(layer => !net.SheetOn(layer)!.Islands.Any(island => IsLandOf(via, island.Bounds)));
                if (joined <= 1)
                {
                    dead.Add(via.Centre);
                }
            }
        }

        return (vias, dead);
    }

    /// <summary>A round hole that the file calls a via's, or that is as narrow as one where it says nothing.</summary>
    private static bool IsVia(Barrel barrel) => barrel.Feature.IsRoundHole
        && (barrel.Feature.Function?.Contains("ViaDrill", StringComparison.Ordinal) ?? barrel.Feature.ToolDiameterNm <= WidestViaNm);

    private static bool IsLandOf(Barrel via, BoxNm island) =>
        island.WidthNm <= via.Feature.ToolDiameterNm + WidestRingsNm && island.HeightNm <= via.Feature.ToolDiameterNm + WidestRingsNm
        && island.Centre.DistanceNmTo(via.Centre) <= RegistrationSearch.SamePlaceNm;
}
