namespace CopperPath.LinearAlgebra;

/// <summary>Pairs each unknown with the free neighbour it is coupled to most strongly.</summary>
internal static class PairwiseGroups
{
    /// <summary>Couplings below this share of an unknown's strongest make no pair.</summary>
    private const double LeastShare = 0.25;

    /// <param name="matrix">Off-diagonal entries not above zero are couplings.</param>
    /// <param name="count">Number of groups.</param>
    /// <returns>Group of each unknown, numbered in order of their first members; unknowns left over stand alone.</returns>
    public static int[] Of(SymmetricSparseMatrix matrix, out int count)
    {
        (int[] pointers, int[] neighbours, double[] strengths) = FullPattern(matrix);
        int[] groupOf = new int[matrix.Size];
        Array.Fill(groupOf, -1);
        count = 0;
        for (int i = 0; i < matrix.Size; i++)
        {
            if (groupOf[i] >= 0)
            {
                continue;
            }

            double strongest = 0;
            double best = 0;
            int partner = -1;
            for (int k = pointers[i]; k < pointers[i + 1]; k++)
            {
                strongest = Math.Max(strongest, strengths[k]);
                if (groupOf[neighbours[k]] < 0 && strengths[k] > best)
                {
                    (best, partner) = (strengths[k], neighbours[k]);
                }
            }

            groupOf[i] = count;
            if (partner >= 0 && best >= LeastShare * strongest)
            {
                groupOf[partner] = count;
            }

            count++;
        }

        return groupOf;
    }

    /// <summary>Both triangles' neighbours of each unknown, ascending, with the size of their coupling.</summary>
    private static (int[] Pointers, int[] Neighbours, double[] Strengths) FullPattern(SymmetricSparseMatrix matrix)
    {
        int[] pointers = new int[matrix.Size + 1];
        for (int j = 0; j < matrix.Size; j++)
        {
            for (int k = matrix.ColumnPointers[j] + 1; k < matrix.ColumnPointers[j + 1]; k++)
            {
                pointers[j + 1]++;
                pointers[matrix.RowIndices[k] + 1]++;
            }
        }

        for (int j = 0; j < matrix.Size; j++)
        {
            pointers[j + 1] += pointers[j];
        }

        int[] next = pointers[..^1];
        int[] neighbours = new int[pointers[^1]];
        double[] strengths = new double[neighbours.Length];
        for (int j = 0; j < matrix.Size; j++)
        {
            for (int k = matrix.ColumnPointers[j] + 1; k < matrix.ColumnPointers[j + 1]; k++)
            {
                int i = matrix.RowIndices[k];
                (neighbours[next[j]], strengths[next[j]++]) = (i, -matrix.Values[k]);
                (neighbours[next[i]], strengths[next[i]++]) = (j, -matrix.Values[k]);
            }
        }

        return (pointers, neighbours, strengths);
    }
}
