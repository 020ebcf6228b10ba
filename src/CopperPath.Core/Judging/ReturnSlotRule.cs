using CopperPath.Brief;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// Looks for slots: voids in a return plane that are longer than allowed, hold little copper of other nets, and lie
/// under, over or close beside copper of the power path on a neighbouring layer. The return current has to go around them.
/// </summary>
internal static class ReturnSlotRule
{
    /// <summary>A void filled with more than this share of other copper is a pour of another net, not a slot.</summary>
    private const double FilledShare = 0.3;

    /// <summary>Overlap with the power path that counts, square metres (1 mm2).</summary>
    private const double LeastOverlapM2 = 1e-6;

    /// <summary>
    /// How far beside the power path a slot still stands in the way of its return current, nanometres: return current
    /// spreads over a few times the distance between the layers.
    /// </summary>
    private const long ReachNm = 2 * Units.NmPerMm;

    public static IEnumerable<Finding> Judge(IReadOnlyList<SolvedNet> nets, NetList board, double allowedLengthM)
    {
        foreach (SolvedNet plane in nets.Where(net => net.Bound.Review.Role == NetRole.Return))
        {
            foreach (NetSheet sheet in plane.Bound.Net.Sheets)
            {
                foreach (PointNm[] slot in sheet.Islands.SelectMany(island => island.Holes))
                {
                    PointNm[] outline = [.. slot.Reverse()];
                    double lengthM = Units.MetresFromNm(Diameter(outline));
                    if (lengthM <= allowedLengthM || IsFilled(outline, sheet.Layer, board))
                    {
                        continue;
                    }

                    List<string> crossing = [.. nets.Where(net => IsPowerPath(net) && Overlaps(outline, net.Bound.Net, sheet.Layer))
                        .Select(net => net.Bound.Review.Name)];
                    if (crossing.Count > 0)
                    {
                        yield return FindingOf(plane, sheet.Layer, outline, lengthM, allowedLengthM, crossing);
                    }
                }
            }
        }
    }

    private static Finding FindingOf(
        SolvedNet plane, int layer, PointNm[] outline, double lengthM, double allowedM, List<string> crossing)
    {
        PointNm at = BoxNm.Of(outline).Centre;
        double meanWidthM = Ring.SignedAreaNm2(outline) * 1e-18 / lengthM;
        return new Finding(
            RuleCatalogue.ReturnSlot.Id, FindingLevel.BeyondLimit, plane.Bound.Review.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y),
            new Measure("slot length", "m", lengthM, allowedM),
            $"A slot {QuantityText.Length(lengthM)} long and about {QuantityText.Length(meanWidthM)} wide cuts the return plane on layer {layer} "
                + $"next to {string.Join(", ", crossing)}.",
            "Close the slot, or bridge it on the path of the current; the return current must go around it, which adds drop, loop area and noise.",
            "void in the drawn plane beside copper of the power path on a neighbouring layer; the length is common practice, no source");
    }

    private static bool IsPowerPath(SolvedNet net) => net.Bound.Review.Role is not (NetRole.Return or NetRole.Other);

    private static bool IsFilled(PointNm[] outline, int layer, NetList board)
    {
        CopperLayer copper = board.Layers.First(candidate => candidate.Number == layer);
        return OverlapNm2(outline, copper.Islands) > FilledShare * Ring.SignedAreaNm2(outline);
    }

    private static bool Overlaps(PointNm[] outline, Net net, int layer)
    {
        PointNm[] surroundings = BoxNm.Of(outline).GrownBy(ReachNm).ToRing();
        return net.Sheets.Where(sheet => Math.Abs(sheet.Layer - layer) == 1)
            .Any(sheet => OverlapNm2(surroundings, sheet.Islands) * 1e-18 > LeastOverlapM2);
    }

    private static double OverlapNm2(PointNm[] outline, IReadOnlyList<PolygonNm> copper)
    {
        BoxNm box = BoxNm.Of(outline);
        List<PolygonNm> near = [.. copper.Where(island => island.Bounds.Touches(box))];
        return near.Count == 0 ? 0
            : PolygonOperations.Intersect([outline], CopperBuilder.RingsOf(near)).Sum(piece => piece.AreaNm2);
    }

    /// <summary>Largest distance between two corners.</summary>
    private static double Diameter(PointNm[] ring)
    {
        double diameter = 0;
        for (int i = 0; i < ring.Length; i++)
        {
            for (int j = i + 1; j < ring.Length; j++)
            {
                diameter = Math.Max(diameter, ring[i].DistanceNmTo(ring[j]));
            }
        }

        return diameter;
    }
}
