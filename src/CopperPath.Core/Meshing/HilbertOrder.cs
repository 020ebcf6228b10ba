namespace CopperPath.Meshing;

/// <summary>
/// Orders points along Hilbert's space-filling curve, so that neighbours in the order are neighbours in the plane
/// and point location by walking takes a few steps (D. Hilbert, Math. Annalen 38, 1891).
/// </summary>
internal static class HilbertOrder
{
    private const int Levels = 16;

    /// <summary>Point numbers in curve order; equal cells keep the order of the numbers.</summary>
    public static int[] Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y)
    {
        int count = x.Length;
        double minX = double.MaxValue, minY = double.MaxValue, maxX = double.MinValue, maxY = double.MinValue;
        for (int i = 0; i < count; i++)
        {
            minX = Math.Min(minX, x[i]);
            maxX = Math.Max(maxX, x[i]);
            minY = Math.Min(minY, y[i]);
            maxY = Math.Max(maxY, y[i]);
        }

        double side = Math.Max(Math.Max(maxX - minX, maxY - minY), double.Epsilon);
        double scale = ((1 << Levels) - 1) / side;
        ulong[] keys = new ulong[count];
        int[] order = new int[count];
        for (int i = 0; i < count; i++)
        {
            ulong place = PlaceOnCurve((uint)((x[i] - minX) * scale), (uint)((y[i] - minY) * scale));
            keys[i] = (place << 31) | (uint)i;
            order[i] = i;
        }

        Array.Sort(keys, order);
        return order;
    }

    private static ulong PlaceOnCurve(uint x, uint y)
    {
        ulong place = 0;
        for (uint side = 1u << (Levels - 1); side > 0; side >>= 1)
        {
            uint right = (x & side) != 0 ? 1u : 0;
            uint upper = (y & side) != 0 ? 1u : 0;
            place = (place << 2) | ((3 * right) ^ upper);
            if (upper == 0)
            {
                if (right == 1)
                {
                    x = ~x;
                    y = ~y;
                }

                (x, y) = (y, x);
            }
        }

        return place;
    }
}
