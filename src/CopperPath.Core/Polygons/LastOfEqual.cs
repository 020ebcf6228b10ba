using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>
/// Finds the steps of a picture that matter: of steps with the same rings at the same place only the last is seen, as it
/// covers whatever the others covered. Boards repeat pads, and files draw strokes twice.
/// </summary>
internal static class LastOfEqual
{
    /// <summary>Numbers of the steps that matter, rising.</summary>
    public static List<int> Of(IReadOnlyList<PaintStep> steps)
    {
        ulong[] signs = new ulong[steps.Count];
        HashSet<ulong> signsSeen = new(steps.Count), repeated = [];
        for (int i = 0; i < signs.Length; i++)
        {
            signs[i] = SignOf(steps[i]);
            if (!signsSeen.Add(signs[i]))
            {
                repeated.Add(signs[i]);
            }
        }

        HashSet<PaintStep> seen = new(new SamePlaces());
        List<int> kept = new(steps.Count);
        for (int i = steps.Count - 1; i >= 0; i--)
        {
            if (!repeated.Contains(signs[i]) || seen.Add(steps[i]))
            {
                kept.Add(i);
            }
        }

        kept.Reverse();
        return kept;
    }

    /// <summary>
    /// A number that equal steps share, from a few of their points. Most steps share theirs with none, and are not looked
    /// at point by point.
    /// </summary>
    private static ulong SignOf(in PaintStep step)
    {
        if (step.Rings is not [{ Length: > 0 } ring, ..])
        {
            return (ulong)step.Rings.Count;
        }

        PointNm first = ring[0] + step.Offset, middle = ring[ring.Length / 2] + step.Offset;
        ulong sign = ((ulong)step.Rings.Count << 32) + (ulong)ring.Length;
        foreach (long number in (ReadOnlySpan<long>)[first.X, first.Y, middle.X, middle.Y])
        {
            sign = (sign ^ (ulong)number) * 0x9E3779B97F4A7C15;
            sign ^= sign >> 29;
        }

        return sign;
    }

    /// <summary>Steps are the same when their rings are, point by point where they are drawn, whatever their look.</summary>
    private sealed class SamePlaces : IEqualityComparer<PaintStep>
    {
        public bool Equals(PaintStep x, PaintStep y)
        {
            if (x.Rings.Count != y.Rings.Count)
            {
                return false;
            }

            PointNm shift = y.Offset - x.Offset;
            for (int r = 0; r < x.Rings.Count; r++)
            {
                if (!SameRing.AreEqual(x.Rings[r], y.Rings[r], shift))
                {
                    return false;
                }
            }

            return true;
        }

        public int GetHashCode(PaintStep step)
        {
            ulong hash = 0;
            for (int r = 0; r < step.Rings.Count; r++)
            {
                hash = (hash * 31) + SameRing.HashOf(step.Rings[r], step.Offset);
            }

            return hash.GetHashCode();
        }
    }
}
