using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>Whether rings run through the same points from the same first point on.</summary>
internal sealed class SameRing : IEqualityComparer<PointNm[]>
{
    public bool Equals(PointNm[]? x, PointNm[]? y) => ReferenceEquals(x, y) || (x is not null && y is not null && AreEqual(x, y, default));

    public int GetHashCode(PointNm[] ring) => HashOf(ring, default).GetHashCode();

    /// <summary>Whether the first ring lies where the second, moved by the shift, does.</summary>
    public static bool AreEqual(PointNm[] ring, PointNm[] other, PointNm shift)
    {
        if (ring.Length != other.Length)
        {
            return false;
        }

        if (shift == default)
        {
            return ReferenceEquals(ring, other) || ring.AsSpan().SequenceEqual(other);
        }

        for (int i = 0; i < ring.Length; i++)
        {
            if (ring[i] != other[i] + shift)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A hash of the points where they are drawn; products of neighbours do not wait for each other.</summary>
    public static ulong HashOf(PointNm[] ring, PointNm offset)
    {
        ulong hash = (ulong)ring.Length, factor = 0x9E3779B97F4A7C15;
        foreach (PointNm p in ring)
        {
            ulong point = (ulong)(p.X + offset.X) ^ ((ulong)(p.Y + offset.Y) << 32 | (ulong)(p.Y + offset.Y) >> 32);
            hash += (point + factor) * factor;
            factor += 0x9E3779B97F4A7C16;
        }

        return hash ^ (hash >> 29);
    }
}
