using CopperPath.Brief;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Distance from switch nodes to the nets the brief calls sensitive, on the same layer and on neighbouring ones.</summary>
internal static class SensitiveDistanceRule
{
    public static IEnumerable<Finding> Judge(PathContext path)
    {
        PracticeLimit limit = path.Limits.SensitiveDistanceM;
        foreach (SensitiveNet sensitive in path.Brief.SensitiveNets)
        {
            if (FindNet(path, sensitive.Selector) is not { } net)
            {
                yield return new Finding(RuleCatalogue.SensitiveDistance.Id, FindingLevel.Undecided, sensitive.Name, 0, 0, 0, null,
                    "The brief names a sensitive net that the board does not have.", "Correct the net under 'sensitive nets'; 'survey' lists the nets.",
                    "names and places of the brief");
                continue;
            }

            foreach (SolvedNet node in path.Nets.Where(node => node.Bound.Review.Role == NetRole.SwitchNode))
            {
                (double distanceNm, int layer, PointNm at) = Nearest(node.Bound.Net, net);
                double distanceM = Units.MetresFromNm(distanceNm);
                if (distanceM < limit.Value)
                {
                    yield return PathContext.FindingAt(RuleCatalogue.SensitiveDistance, PathContext.LevelOf(limit), sensitive.Name, layer, at,
                        new Measure("distance", "m", distanceM, limit.Value, LimitIsLeast: true),
                        $"{sensitive.Name} comes within {QuantityText.Length(distanceM)} of {node.Bound.Review.Name}.",
                        "Lead it round the switch node, or put return copper between them.");
                }
            }
        }
    }

    private static Net? FindNet(PathContext path, NetSelector selector) => selector switch
    {
        NetByName byName => path.Board.Named(byName.Name),
        NetAtPoint at => at.Layer.Resolve(path.Board.Layers[^1].Number) is { } layer ? path.Board.At(layer, at.At) : null,
        _ => null,
    };

    private static (double DistanceNm, int Layer, PointNm At) Nearest(Net node, Net sensitive)
    {
        (double DistanceNm, int Layer, PointNm At) best = (double.MaxValue, sensitive.Sheets[0].Layer, sensitive.Sheets[0].Islands[0].Outer[0]);
        foreach (NetSheet sheet in sensitive.Sheets)
        {
            foreach (NetSheet near in node.Sheets.Where(near => Math.Abs(near.Layer - sheet.Layer) <= 1))
            {
                PolygonLocator inside = new(near.Islands);
                foreach (PolygonNm piece in sheet.Islands)
                {
                    PointNm corner = piece.Outer[0];
                    if (inside.Find(corner) >= 0)
                    {
                        best = (0, sheet.Layer, corner);
                    }

                    foreach (PolygonNm copper in near.Islands.Where(copper => copper.Bounds.GrownBy((long)Math.Min(best.DistanceNm, PointNm.LimitNm)).Touches(piece.Bounds)))
                    {
                        (double distanceNm, PointNm at) = RingDistance.Between(piece.Outer, copper.Outer, best.DistanceNm);
                        best = distanceNm < best.DistanceNm ? (distanceNm, sheet.Layer, at) : best;
                    }
                }
            }
        }

        return best;
    }
}
