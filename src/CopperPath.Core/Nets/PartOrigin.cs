using CopperPath.Geometry;
using CopperPath.Quantities;
using CopperPath.Reading.Placement;

namespace CopperPath.Nets;

/// <summary>
/// Finds the origin of a table of placements by a vote. The centre of most small parts lies midway between two equal
/// pads, so each part and each such middle name one shift; the true shift is named by most parts, wrong ones by few.
/// </summary>
internal sealed class PartOrigin
{
    /// <summary>Shifts this near are one: wider than the rounding of tables.</summary>
    private const long CellNm = 50_000;

    private const int PartsAsked = 60;

    /// <summary>A pad is paired with so many of the nearest equal ones.</summary>
    private const int Neighbours = 4;

    private const long LargestSmallPartNm = 5 * Units.NmPerMm;

    private readonly List<(int Layer, PointNm Middle)> _middles = [];

    public PartOrigin(IReadOnlyList<Pad> pads)
    {
        PointIndex index = new(pads.Select(pad => pad.At), LargestSmallPartNm);
        BoxNm[] shapes = [.. pads.Select(pad => BoxNm.Of(pad.Shape.Rings.Count > 0 ? pad.Shape.Rings[0] : []))];
        for (int i = 0; i < pads.Count; i++)
        {
            int[] equal = [.. index.Near(pads[i].At)
                .Where(j => j != i && pads[j].Layer == pads[i].Layer && IsEqual(shapes[i], shapes[j]))
                .OrderBy(j => pads[j].At.DistanceNmTo(pads[i].At)).ThenBy(j => j).Take(Neighbours)];
            _middles.AddRange(equal.Where(j => j > i).Select(j => (pads[i].Layer, BoxNm.Of([pads[i].At, pads[j].At]).Centre)));
        }
    }

    /// <summary>The shift most parts agree on; zero when there is nothing to ask.</summary>
    /// <param name="parts">Parts with their places in nanometres.</param>
    /// <param name="isOnSide">Whether a part may stand on a layer.</param>
    public PointNm Vote(IReadOnlyList<PlacedPart> parts, Func<PlacedPart, int, bool> isOnSide)
    {
        int step = Math.Max(1, parts.Count / PartsAsked);
        Dictionary<(long X, long Y), List<PointNm>> votes = [];
        foreach (PlacedPart part in parts.Where((_, i) => i % step == 0))
        {
            foreach ((int layer, PointNm middle) in _middles)
            {
                if (isOnSide(part, layer))
                {
                    PointNm shift = middle - part.At;
                    (long X, long Y) cell = (CellOf(shift.X), CellOf(shift.Y));
                    if (!votes.TryGetValue(cell, out List<PointNm>? named))
                    {
                        votes[cell] = named = [];
                    }

                    named.Add(shift);
                }
            }
        }

        // The true shift may lie on the edge of a cell: neighbours count with it.
        PointNm[] best = votes.Keys.OrderBy(cell => cell)
            .Select(cell => AroundOf(cell).SelectMany(near => votes.GetValueOrDefault(near, [])).ToArray())
            .MaxBy(named => named.Length) ?? [];
        return best.Length == 0 ? default : new PointNm(Median(best.Select(shift => shift.X)), Median(best.Select(shift => shift.Y)));
    }

    private static IEnumerable<(long, long)> AroundOf((long X, long Y) cell) =>
        from dx in new[] { -1, 0, 1 }
        from dy in new[] { -1, 0, 1 }
        select (cell.X + dx, cell.Y + dy);

    private static long Median(IEnumerable<long> values)
    {
        long[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }

    private static long CellOf(long coordinateNm) => (long)Math.Floor((double)coordinateNm / CellNm);

    private static bool IsEqual(BoxNm a, BoxNm b) => Math.Abs(a.WidthNm - b.WidthNm) <= 1 && Math.Abs(a.HeightNm - b.HeightNm) <= 1;
}
