namespace CopperPath.LinearAlgebra;

/// <summary>
/// An undirected graph whose vertices and edges stand for several of a finer graph.
/// </summary>
/// <param name="Count">Number of vertices.</param>
/// <param name="Starts">Start of each vertex's neighbours; length Count + 1.</param>
/// <param name="Neighbours">Neighbours of all vertices; may be longer than used.</param>
/// <param name="EdgeWeights">Finer edges behind each neighbour; null when all are one.</param>
/// <param name="VertexWeights">Finer vertices behind each vertex; null when all are one.</param>
internal sealed record WeightedGraph(
    int Count, int[] Starts, int[] Neighbours, int[]? EdgeWeights, int[]? VertexWeights)
{
    public int Weight(int vertex) => VertexWeights is null ? 1 : VertexWeights[vertex];

    public ReadOnlySpan<int> NeighboursOf(int vertex) =>
        Neighbours.AsSpan(Starts[vertex], Starts[vertex + 1] - Starts[vertex]);

    /// <summary>
    /// Joins each vertex with the free neighbour it is tied to most strongly for its weight, and contracts the pairs.
    /// </summary>
    /// <remarks>
    /// Heavy-edge matching: Karypis and Kumar, "A fast and high quality multilevel scheme for partitioning irregular
    /// graphs", SIAM J. Sci. Comput. 20 (1998); edges are rated by weight squared over the weights of their ends after
    /// Holtgrewe, Sanders and Schulz, "Engineering a scalable high quality graph partitioner", IPDPS (2010).
    /// </remarks>
    /// <param name="largestWeight">No vertex heavier than this is formed by joining.</param>
    /// <returns>The contracted graph and, for each vertex of this one, the vertex it became part of.</returns>
    public (WeightedGraph Coarse, int[] CoarseOf) Contract(int largestWeight)
    {
        int[] coarseOf = new int[Count];
        int[] partner = new int[Count];
        Array.Fill(coarseOf, -1);
        int coarseCount = 0;
        Array.Fill(partner, -1);
        for (int k = 0; k < Count; k++)
        {
            int v = Scattered(k);
            if (partner[v] < 0)
            {
                int best = BestPartner(v, partner, largestWeight - Weight(v));
                partner[v] = best;
                partner[best] = v;
            }
        }

        for (int v = 0; v < Count; v++)
        {
            if (coarseOf[v] < 0)
            {
                coarseOf[v] = coarseCount;
                coarseOf[partner[v]] = coarseCount;
                coarseCount++;
            }
        }

        int[] starts = new int[coarseCount + 1];
        int[] weights = new int[coarseCount];
        int[] neighbours = new int[Starts[Count]];
        int[] edgeWeights = new int[Starts[Count]];
        int[] slot = new int[coarseCount];
        Array.Fill(slot, -1);
        int written = 0;
        int coarse = 0;
        for (int v = 0; v < Count; v++)
        {
            if (coarseOf[v] != coarse)
            {
                continue;
            }

            int from = written;
            weights[coarse] = Weight(v);
            AddEdges(v);
            if (partner[v] != v)
            {
                weights[coarse] += Weight(partner[v]);
                AddEdges(partner[v]);
            }

            starts[++coarse] = written;

            void AddEdges(int member)
            {
                for (int k = Starts[member]; k < Starts[member + 1]; k++)
                {
                    int target = coarseOf[Neighbours[k]];
                    int edgeWeight = EdgeWeights is null ? 1 : EdgeWeights[k];
                    if (target == coarse)
                    {
                        continue;
                    }

                    int place = slot[target];
                    if (place >= from)
                    {
                        edgeWeights[place] += edgeWeight;
                    }
                    else
                    {
                        slot[target] = written;
                        neighbours[written] = target;
                        edgeWeights[written++] = edgeWeight;
                    }
                }
            }
        }

        return (new WeightedGraph(coarseCount, starts, neighbours, edgeWeights, weights), coarseOf);
    }

    /// <summary>
    /// Visits each block of vertices in a scattered order: going through them in line would join all pairs along the
    /// same direction, and a wholly random order would leave the caches.
    /// </summary>
    private int Scattered(int k)
    {
        const int block = 256;
        int start = k & ~(block - 1);
        return start + block <= Count ? start + ((k * 91) & (block - 1)) : k;
    }

    private int BestPartner(int vertex, int[] partner, int room)
    {
        int best = vertex;
        double bestRating = 0;
        for (int k = Starts[vertex]; k < Starts[vertex + 1]; k++)
        {
            int neighbour = Neighbours[k];
            if (partner[neighbour] >= 0 || Weight(neighbour) > room)
            {
                continue;
            }

            double edgeWeight = EdgeWeights is null ? 1 : EdgeWeights[k];
            double rating = edgeWeight * edgeWeight / Weight(neighbour);
            if (rating > bestRating)
            {
                best = neighbour;
                bestRating = rating;
            }
        }

        return best;
    }
}
