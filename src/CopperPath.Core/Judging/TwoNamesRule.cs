using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// A stretch whose copper the files claim for several nets is not judged to pass: the copper may be misread, or a short.
/// Only the stretches on such copper are undecided, not the board.
/// </summary>
internal static class TwoNamesRule
{
    private const int MostListed = 4;

    public static IEnumerable<Finding> Judge(SolvedNet net)
    {
        IReadOnlyList<string> names = net.Bound.Net.ClaimedNames;
        if (!net.Bound.Net.NamesContradict)
        {
            yield break;
        }

        (int layer, PointNm at) = DropRule.PlaceOf(net.Bound.Terminals[0]);
        string list = string.Join(", ", names.Take(MostListed)) + (names.Count > MostListed ? ", ..." : "");
        yield return new Finding(
            RuleCatalogue.TwoNames.Id, FindingLevel.Undecided, net.Bound.Review.Name, layer,
            Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y), new Measure("names", "", names.Count, 1, IsCount: true),
            FormattableString.Invariant($"The files claim this one piece of copper for {names.Count} nets: {list}."),
            "Look for copper or a plated hole that joins them. Where they are tied on purpose, waive this finding and say so.",
            RuleCatalogue.TwoNames.Evidence);
    }
}
