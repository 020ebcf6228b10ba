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
        HashSet<PaintStep> seen = new(steps.Count, new SamePlaces());
        List<int> kept = new(steps.Count);
        for (int i = steps.Count - 1; i >= 0; i--)
        {
            if (seen.Add(steps[i]))
            {
                kept.Add(i);
            }
        }

        kept.Reverse();
        return kept;
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
