using System.Numerics;

namespace CopperPath.Cli;

/// <summary>The value of a rank without sorting all others.</summary>
internal static class OrderStatistic
{
    /// <summary>The value that would stand at a place if the values were sorted (Hoare, Algorithm 65: Find, 1961).</summary>
    /// <param name="values">Numbers, none of them NaN; left in another order.</param>
    /// <param name="rank">Place in rising order, from 0.</param>
    public static T At<T>(Span<T> values, int rank)
        where T : struct, IComparisonOperators<T, T, bool>
    {
        int left = 0;
        int right = values.Length - 1;
        while (left < right)
        {
            T pivot = Median(values[left], values[left + ((right - left) / 2)], values[right]);
            int i = left;
            int j = right;
            while (i <= j)
            {
                while (values[i] < pivot)
                {
                    i++;
                }

                while (pivot < values[j])
                {
                    j--;
                }

                if (i <= j)
                {
                    (values[i], values[j]) = (values[j], values[i]);
                    i++;
                    j--;
                }
            }

            // What lies between the two parts equals the pivot.
            if (rank > j && rank < i)
            {
                return pivot;
            }

            (left, right) = rank <= j ? (left, j) : (i, right);
        }

        return values[rank];
    }

    private static T Median<T>(T a, T b, T c)
        where T : IComparisonOperators<T, T, bool>
    {
        (T low, T high) = a < b ? (a, b) : (b, a);
        return c < low ? low : high < c ? high : c;
    }
}
