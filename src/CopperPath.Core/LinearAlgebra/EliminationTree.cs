namespace CopperPath.LinearAlgebra;

/// <summary>
/// The elimination tree of a symmetric matrix whose unknowns are numbered in the order of elimination: the parent of a
/// column is the row of the first off-diagonal entry of that column in the Cholesky factor.
/// </summary>
/// <remarks>
/// Tree and path compression after Liu, "The role of elimination trees in sparse factorization", SIAM J. Matrix Anal.
/// Appl. 11 (1990); column counts after Gilbert, Ng and Peyton, "An efficient algorithm to compute row and column
/// counts for sparse Cholesky factorization", SIAM J. Matrix Anal. Appl. 15 (1994).
/// </remarks>
internal static class EliminationTree
{
    /// <summary>The parent of every column, −1 for a root.</summary>
    public static int[] Parents(AdjacencyGraph graph)
    {
        int size = graph.VertexCount;
        int[] parent = new int[size];
        int[] ancestor = new int[size];
        for (int k = 0; k < size; k++)
        {
            parent[k] = -1;
            ancestor[k] = -1;
            foreach (int neighbour in graph.NeighboursOf(k))
            {
                int i = neighbour;
                while (i != -1 && i < k)
                {
                    int next = ancestor[i];
                    ancestor[i] = k;
                    if (next == -1)
                    {
                        parent[i] = k;
                    }

                    i = next;
                }
            }
        }

        return parent;
    }

    /// <summary>Lists the columns so that every subtree is contiguous and ends with its root.</summary>
    public static int[] Postorder(int[] parent)
    {
        int size = parent.Length;
        int[] firstChild = new int[size];
        int[] nextSibling = new int[size];
        Array.Fill(firstChild, -1);
        int firstRoot = -1;
        for (int j = size - 1; j >= 0; j--)
        {
            ref int list = ref firstRoot;
            if (parent[j] != -1)
            {
                list = ref firstChild[parent[j]];
            }

            nextSibling[j] = list;
            list = j;
        }

        int[] postorder = new int[size];
        int[] stack = new int[size];
        int count = 0;
        for (int root = firstRoot; root != -1; root = nextSibling[root])
        {
            int depth = 0;
            stack[0] = root;
            while (depth >= 0)
            {
                int top = stack[depth];
                int child = firstChild[top];
                if (child == -1)
                {
                    postorder[count++] = top;
                    depth--;
                }
                else
                {
                    firstChild[top] = nextSibling[child];
                    stack[++depth] = child;
                }
            }
        }

        return postorder;
    }

    /// <summary>
    /// Number of entries, diagonal included, in every column of the factor. The columns must be in postorder.
    /// </summary>
    public static int[] ColumnCounts(AdjacencyGraph graph, int[] parent)
    {
        int size = graph.VertexCount;
        int[] count = new int[size];
        int[] firstDescendant = new int[size];
        Array.Fill(firstDescendant, -1);
        for (int j = 0; j < size; j++)
        {
            if (firstDescendant[j] == -1)
            {
                firstDescendant[j] = j;
                count[j] = 1;
            }

            int p = parent[j];
            if (p != -1 && firstDescendant[p] == -1)
            {
                firstDescendant[p] = firstDescendant[j];
            }
        }

        // A column j adds an entry to row i only where it is a leaf of the row's subtree; the path two leaves share
        // is counted twice and taken off again at their least common ancestor.
        int[] lastFirst = new int[size];
        int[] previousLeaf = new int[size];
        int[] ancestor = new int[size];
        Array.Fill(lastFirst, -1);
        Array.Fill(previousLeaf, -1);
        for (int j = 0; j < size; j++)
        {
            ancestor[j] = j;
        }

        for (int j = 0; j < size; j++)
        {
            if (parent[j] != -1)
            {
                count[parent[j]]--;
            }

            foreach (int i in graph.NeighboursOf(j))
            {
                if (i <= j || firstDescendant[j] <= lastFirst[i])
                {
                    continue;
                }

                count[j]++;
                if (previousLeaf[i] != -1)
                {
                    count[Root(ancestor, previousLeaf[i])]--;
                }

                previousLeaf[i] = j;
                lastFirst[i] = firstDescendant[j];
            }

            if (parent[j] != -1)
            {
                ancestor[j] = parent[j];
            }
        }

        for (int j = 0; j < size; j++)
        {
            if (parent[j] != -1)
            {
                count[parent[j]] += count[j];
            }
        }

        return count;
    }

    private static int Root(int[] ancestor, int vertex)
    {
        int root = vertex;
        while (ancestor[root] != root)
        {
            root = ancestor[root];
        }

        while (ancestor[vertex] != root)
        {
            int next = ancestor[vertex];
            ancestor[vertex] = root;
            vertex = next;
        }

        return root;
    }
}
