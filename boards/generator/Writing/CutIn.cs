namespace CopperPath.DemoBoards.Writing;

/// <summary>Joins the holes of an area to its outer edge by pairs of coincident segments, so that one contour draws it.</summary>
public static class CutIn
{
    /// <summary>One closed contour (first point not repeated).</summary>
    /// <param name="outer">Outer ring, in whole steps, first point not repeated.</param>
    /// <param name="holes">Rings of the holes, likewise; must run opposite to the outer ring.</param>
    public static List<(long X, long Y)> Join(IReadOnlyList<(long X, long Y)> outer, IEnumerable<IReadOnlyList<(long X, long Y)>> holes)
    {
        var contour = outer.ToList();
        // From left to right: a ray to the left of the next hole meets only edges that are already joined.
        foreach (var hole in holes.OrderBy(hole => hole.Min()))
        {
            var start = IndexOfLeast(hole);
            var tip = hole[start];
            var (edge, meeting) = NearestToTheLeft(contour, tip);
            var insert = new List<(long X, long Y)>(hole.Count + 3) { meeting };
            for (var i = 0; i <= hole.Count; i++)
            {
                insert.Add(hole[(start + i) % hole.Count]);
            }

            insert.Add(meeting);
            contour.InsertRange(edge + 1, insert);
        }

        return contour;
    }

    private static int IndexOfLeast(IReadOnlyList<(long X, long Y)> ring)
    {
        var least = 0;
        for (var i = 1; i < ring.Count; i++)
        {
            if (ring[i].CompareTo(ring[least]) < 0)
            {
                least = i;
            }
        }

        return least;
    }

    private static (int Edge, (long X, long Y) Meeting) NearestToTheLeft(List<(long X, long Y)> contour, (long X, long Y) tip)
    {
        var (best, bestX) = (-1, long.MinValue);
        for (var i = 0; i < contour.Count; i++)
        {
            var a = contour[i];
            var b = contour[(i + 1) % contour.Count];
            if (a.Y == b.Y || tip.Y < Math.Min(a.Y, b.Y) || tip.Y > Math.Max(a.Y, b.Y))
            {
                continue;
            }

            var x = a.X + (long)Math.Round((double)(tip.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X));
            if (x <= tip.X && x > bestX)
            {
                (best, bestX) = (i, x);
            }
        }

        return best >= 0
            ? (best, (bestX, tip.Y))
            : throw new InvalidOperationException("A hole lies outside the area it belongs to.");
    }
}
