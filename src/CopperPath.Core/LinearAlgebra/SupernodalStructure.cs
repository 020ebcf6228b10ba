namespace CopperPath.LinearAlgebra;

/// <summary>
/// The shape of a Cholesky factor, found before any number is computed: runs of neighbouring columns with the same
/// rows below them ("supernodes"), the rows of each, and the tree that says which supernode adds to which.
/// </summary>
/// <remarks>
/// Supernode s owns the columns <c>ColumnStarts[s]</c> to <c>ColumnStarts[s + 1]</c> (in the eliminated order) and is
/// stored as a full column-major block whose rows are the slice of <see cref="Rows"/> from <c>RowStarts[s]</c> to
/// <c>RowStarts[s + 1]</c>, ascending, its own columns first. Small supernodes are merged with their parents where this
/// stores few extra zeros (Ashcraft and Grimes, "The influence of relaxed supernode partitions on the multifrontal
/// method", ACM TOMS 15, 1989).
/// </remarks>
internal sealed class SupernodalStructure
{
    private SupernodalStructure(int[] order, int[] position, int[] columnStarts, int[] parent)
    {
        Order = order;
        Position = position;
        ColumnStarts = columnStarts;
        Parent = parent;
        RowStarts = new int[parent.Length + 1];
        ValueStarts = new long[parent.Length + 1];
        Rows = [];
    }

    /// <summary>Number of unknowns.</summary>
    public int Size => Order.Length;

    /// <summary>Number of supernodes, numbered children before parents, every subtree contiguous.</summary>
    public int Count => Parent.Length;

    /// <summary>Order[k] is the unknown eliminated k-th.</summary>
    public int[] Order { get; }

    /// <summary>The inverse of <see cref="Order"/>.</summary>
    public int[] Position { get; }

    /// <summary>First column of each supernode; length Count + 1.</summary>
    public int[] ColumnStarts { get; }

    /// <summary>Parent of each supernode, −1 for a root.</summary>
    public int[] Parent { get; }

    /// <summary>First entry of each supernode in <see cref="Rows"/>; length Count + 1.</summary>
    public int[] RowStarts { get; }

    /// <summary>Row numbers, in the eliminated order, of all supernodes one after the other.</summary>
    public int[] Rows { get; private set; }

    /// <summary>First stored value of each supernode's block; length Count + 1.</summary>
    public long[] ValueStarts { get; }

    /// <summary>Entries of the lower triangle of the factor.</summary>
    public long NonZeroCount { get; private set; }

    /// <summary>Entries stored for it: those of the blocks' lower triangles, zeros of merged supernodes included.</summary>
    public long StoredCount { get; private set; }

    /// <summary>Multiplications and additions the factorization takes.</summary>
    public double OperationCount { get; private set; }

    /// <summary>Whether the factor and every update matrix can be held in arrays.</summary>
    public bool FitsInArrays { get; private set; } = true;

    public int ColumnCount(int supernode) => ColumnStarts[supernode + 1] - ColumnStarts[supernode];

    public int RowCount(int supernode) => RowStarts[supernode + 1] - RowStarts[supernode];

    public ReadOnlySpan<int> RowsOf(int supernode) => Rows.AsSpan(RowStarts[supernode], RowCount(supernode));

    /// <summary>
    /// Operations of one supernode: factoring its columns and forming what it passes on to its ancestors.
    /// </summary>
    public double Operations(int supernode)
    {
        double k = ColumnCount(supernode);
        double m = RowCount(supernode);

        // The sum of r² for r from m − k + 1 to m.
        double below = m - k;
        return ((m * (m + 1) * ((2 * m) + 1)) - (below * (below + 1) * ((2 * below) + 1))) / 6;
    }

    public static SupernodalStructure Analyze(AdjacencyGraph graph, int[] fillReducingOrder)
    {
        AdjacencyGraph eliminated = graph.Renumbered(fillReducingOrder, graph.VertexCount);
        int[] postorder = EliminationTree.Postorder(EliminationTree.Parents(eliminated));
        eliminated = eliminated.Renumbered(postorder, graph.VertexCount);
        int[] order = new int[postorder.Length];
        for (int k = 0; k < order.Length; k++)
        {
            order[k] = fillReducingOrder[postorder[k]];
        }

        int[] parent = EliminationTree.Parents(eliminated);
        int[] counts = EliminationTree.ColumnCounts(eliminated, parent);
        long nonZeroCount = 0;
        foreach (int count in counts)
        {
            nonZeroCount += count;
        }

        (int[] columnStarts, int[] supernodeParent) = Partition(parent, counts);
        SupernodalStructure structure = new(order, Inverse(order), columnStarts, supernodeParent)
        {
            NonZeroCount = nonZeroCount,
        };
        structure.FindRows(eliminated, counts);
        return structure;
    }

    private static int[] Inverse(int[] order)
    {
        int[] position = new int[order.Length];
        for (int k = 0; k < order.Length; k++)
        {
            position[order[k]] = k;
        }

        return position;
    }

    private static (int[] ColumnStarts, int[] Parent) Partition(int[] parent, int[] counts)
    {
        int size = parent.Length;
        int[] starts = new int[size + 1];
        int[] childCount = new int[size];
        for (int j = 0; j < size; j++)
        {
            if (parent[j] != -1)
            {
                childCount[parent[j]]++;
            }
        }

        // Supernodes being built lie on a stack; a finished one is merged with the one before it as long as that is
        // its child and the zeros this stores are few.
        int fundamental = 0;
        for (int j = 0; j < size; j++)
        {
            bool continues = j > 0
                && parent[j - 1] == j
                && childCount[j] == 1
                && counts[j] == counts[j - 1] - 1;
            if (!continues)
            {
                starts[fundamental++] = j;
            }
        }

        starts[fundamental] = size;
        int[] mergedStarts = new int[fundamental + 1];
        long[] zeros = new long[fundamental];
        int merged = 0;
        for (int s = 0; s < fundamental; s++)
        {
            int first = starts[s];
            int end = starts[s + 1];
            long ownZeros = 0;
            while (merged > 0 && parent[first - 1] == first)
            {
                int childFirst = mergedStarts[merged - 1];
                int childColumns = first - childFirst;
                long rows = counts[first] + childColumns;
                long childRows = counts[childFirst];
                long newZeros = zeros[merged - 1] + ownZeros + (childColumns * (rows - childRows));
                int columns = end - childFirst;
                long stored = (columns * rows) - ((long)columns * (columns - 1) / 2);
                if (!IsWorthMerging(columns, (double)newZeros / stored))
                {
                    break;
                }

                ownZeros = newZeros;
                first = childFirst;
                merged--;
                // A merged block has as many rows as its first column would have had in it.
                counts[first] = (int)rows;
            }

            mergedStarts[merged] = first;
            zeros[merged] = ownZeros;
            merged++;
        }

        mergedStarts[merged] = size;
        Array.Resize(ref mergedStarts, merged + 1);

        int[] owner = new int[size];
        for (int s = 0; s < merged; s++)
        {
            owner.AsSpan(mergedStarts[s]..mergedStarts[s + 1]).Fill(s);
        }

        int[] mergedParent = new int[merged];
        for (int s = 0; s < merged; s++)
        {
            int p = parent[mergedStarts[s + 1] - 1];
            mergedParent[s] = p == -1 ? -1 : owner[p];
        }

        return (mergedStarts, mergedParent);
    }

    /// <summary>The wider the block, the smaller the share of stored zeros it may have.</summary>
    private static bool IsWorthMerging(int columns, double zeroShare) => columns switch
    {
        <= 4 => true,
        <= 16 => zeroShare < 0.5,
        <= 48 => zeroShare < 0.1,
        _ => zeroShare < 0.05,
    };

    private void FindRows(AdjacencyGraph eliminated, int[] counts)
    {
        long totalRows = 0;
        for (int s = 0; s < Count; s++)
        {
            long rows = counts[ColumnStarts[s]];
            long columns = ColumnCount(s);
            totalRows += rows;
            RowStarts[s + 1] = (int)Math.Min(totalRows, Array.MaxLength);
            FitsInArrays &= (rows - columns) * (rows - columns) <= Array.MaxLength;
            ValueStarts[s + 1] = ValueStarts[s] + (rows * columns);
            StoredCount += (rows * columns) - (columns * (columns - 1) / 2);
        }

        FitsInArrays &= ValueStarts[Count] <= Array.MaxLength && totalRows < Array.MaxLength;
        if (!FitsInArrays)
        {
            return;
        }

        Rows = new int[totalRows];
        int[] lastSeenBy = new int[Size];
        Array.Fill(lastSeenBy, -1);
        int[] firstChild = new int[Count];
        int[] nextSibling = new int[Count];
        Array.Fill(firstChild, -1);
        for (int s = 0; s < Count; s++)
        {
            int write = RowStarts[s];
            int end = ColumnStarts[s + 1];
            for (int j = ColumnStarts[s]; j < end; j++)
            {
                Rows[write++] = j;
            }

            int below = write;
            for (int j = ColumnStarts[s]; j < end; j++)
            {
                foreach (int i in eliminated.NeighboursOf(j))
                {
                    if (i >= end && lastSeenBy[i] != s)
                    {
                        lastSeenBy[i] = s;
                        Rows[write++] = i;
                    }
                }
            }

            for (int child = firstChild[s]; child != -1; child = nextSibling[child])
            {
                foreach (int i in RowsOf(child)[ColumnCount(child)..])
                {
                    if (i >= end && lastSeenBy[i] != s)
                    {
                        lastSeenBy[i] = s;
                        Rows[write++] = i;
                    }
                }
            }

            Rows.AsSpan(below, write - below).Sort();
            OperationCount += Operations(s);
            int parent = Parent[s];
            if (parent != -1)
            {
                nextSibling[s] = firstChild[parent];
                firstChild[parent] = s;
            }
        }
    }
}
