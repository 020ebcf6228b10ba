namespace CopperPath.Thermal;

/// <summary>
/// Gathers columns into wider ones, those of one wider cell into several where copper parts them: what is one temperature on one side of a
/// gap and another on its other side can not be corrected by one value for both.
/// </summary>
internal static class ColumnGathering
{
    /// <summary>A coupling below this share of a node's largest is a gap.</summary>
    private const double Gap = 0.03;

    /// <summary>Where a node's levels hold it this many times as fast as its neighbours do, gaps between these do not count.</summary>
    private const double Held = 1;

    /// <param name="matrix">Equations of the columns.</param>
    /// <param name="parentOf">Wider cell of each column.</param>
    /// <returns>Group of each column, numbered in the order of columns, and the wider cell of each group.</returns>
    public static (int[] GroupOf, int[] ParentOf) Of(HeatMatrix matrix, int[] parentOf)
    {
        int planes = matrix.Planes;
        double[] most = new double[matrix.Size];
        for (int column = 0; column < matrix.Columns; column++)
        {
            for (int k = matrix.Start[column]; k < matrix.Start[column + 1]; k++)
            {
                for (int p = 0; p < planes; p++)
                {
                    most[(column * planes) + p] = Math.Max(most[(column * planes) + p], matrix.Coupling[(k * planes) + p]);
                }
            }
        }

        for (int n = 0; n < matrix.Size; n++)
        {
            double levels = matrix.Down[n] + (n > 0 ? matrix.Down[n - 1] : 0);
            most[n] = levels > Held * most[n] ? 0 : most[n];
        }

        int[] first = new int[matrix.Columns];
        for (int column = 0; column < matrix.Columns; column++)
        {
            first[column] = column;
            for (int k = matrix.Start[column]; k < matrix.Start[column + 1]; k++)
            {
                int other = matrix.Neighbour[k];
                if (other < column && parentOf[other] == parentOf[column] && IsJoined(column, other, k))
                {
                    (int a, int b) = (FirstOf(column), FirstOf(other));
                    first[Math.Max(a, b)] = Math.Min(a, b);
                }
            }
        }

        int[] groupOf = new int[matrix.Columns];
        Array.Fill(groupOf, -1);
        List<int> parents = [];
        for (int column = 0; column < matrix.Columns; column++)
        {
            int root = FirstOf(column);
            if (root == column)
            {
                groupOf[column] = parents.Count;
                parents.Add(parentOf[column]);
            }
            else
            {
                groupOf[column] = groupOf[root];
            }
        }

        return (groupOf, [.. parents]);

        int FirstOf(int column)
        {
            while (first[column] != column)
            {
                column = first[column];
            }

            return column;
        }

        bool IsJoined(int column, int other, int k)
        {
            for (int p = 0; p < planes; p++)
            {
                if (matrix.Coupling[(k * planes) + p] < Gap * Math.Max(most[(column * planes) + p], most[(other * planes) + p]))
                {
                    return false;
                }
            }

            return true;
        }
    }
}
