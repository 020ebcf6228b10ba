using CopperPath.Geometry;

namespace CopperPath.Polygons;

/// <summary>How much one source changes its winding number across an edge: left side less right side.</summary>
internal readonly record struct Contribution(int Source, int Delta);

/// <summary>
/// Edges between grid points that meet at their ends only. Pieces of different segments that came to lie on each
/// other are one edge with their contributions added; pieces that cancel are gone.
/// </summary>
internal sealed class NodedEdges
{
    private NodedEdges(PointNm[] vertices, int[] from, int[] to, int[] firstContribution, Contribution[] contributions)
    {
        Vertices = vertices;
        From = from;
        To = to;
        FirstContribution = firstContribution;
        Contributions = contributions;
    }

    public PointNm[] Vertices { get; }

    public int Count => From.Length;

    /// <summary>Vertex where each edge starts.</summary>
    public int[] From { get; }

    /// <summary>Vertex where each edge ends.</summary>
    public int[] To { get; }

    /// <summary>Start of each edge's run in <see cref="Contributions"/>, with one closing entry.</summary>
    public int[] FirstContribution { get; }

    /// <summary>Contributions of all edges, by rising source within an edge.</summary>
    public Contribution[] Contributions { get; }

    /// <summary>All edges.</summary>
    public static NodedEdges Of(SegmentSet set)
    {
        Segment[] segments = set.ToSegments();
        return Of(segments, SnapRounding.Run(segments, null), static (segment, _) => new Contribution(segment.Source, segment.Delta));
    }

    /// <summary>The edges between covered and bare places; they contribute to one source, 0, whose area is the covered one.</summary>
    public static NodedEdges OfBorders(SegmentSet set, CoverageRule rule)
    {
        Segment[] segments = set.ToSegments();
        return Of(segments, SnapRounding.Run(segments, rule), static (_, change) => new Contribution(0, change));
    }

    private static NodedEdges Of(
        Segment[] segments, TileNoder[] parts, Func<Segment, int, Contribution> contributionOf)
    {
        PointNm[] vertices = new PointNm[parts.Sum(part => part.Vertices.Count)];
        int[] firstVertexOfPart = new int[parts.Length];
        for (int p = 0, first = 0; p < parts.Length; p++)
        {
            firstVertexOfPart[p] = first;
            parts[p].Vertices.CopyTo(vertices, first);
            first += parts[p].Vertices.Count;
        }

        (int[] firstPassage, Passage[] passages) = PassagesBySegment(segments.Length, parts, firstVertexOfPart);
        return Merge(vertices, Pieces(segments, vertices, firstPassage, passages, contributionOf));
    }

    private static (int[] FirstPassage, Passage[] Passages) PassagesBySegment(
        int segmentCount, TileNoder[] parts, int[] firstVertexOfPart)
    {
        int[] first = new int[segmentCount + 1];
        foreach (TileNoder part in parts)
        {
            foreach (Passage passage in part.Passages)
            {
                first[passage.Segment + 1]++;
            }
        }

        for (int s = 0; s < segmentCount; s++)
        {
            first[s + 1] += first[s];
        }

        int[] next = first[..^1];
        Passage[] passages = new Passage[first[^1]];
        for (int p = 0; p < parts.Length; p++)
        {
            foreach (Passage passage in parts[p].Passages)
            {
                passages[next[passage.Segment]++] = passage with { Vertex = firstVertexOfPart[p] + passage.Vertex };
            }
        }

        return (first, passages);
    }

    /// <summary>Cuts each segment at the vertices it passes.</summary>
    private static List<Piece> Pieces(Segment[] segments, PointNm[] vertices, int[] firstPassage, Passage[] passages,
        Func<Segment, int, Contribution> contributionOf)
    {
        List<Piece> pieces = [];
        for (int s = 0; s < segments.Length; s++)
        {
            Span<Passage> own = passages.AsSpan(firstPassage[s], firstPassage[s + 1] - firstPassage[s]);
            SortAlong(segments[s], vertices, own);
            for (int i = 1; i < own.Length; i++)
            {
                (int source, int delta) = contributionOf(segments[s], own[i - 1].Change);
                if (delta != 0)
                {
                    (int from, int to) = (own[i - 1].Vertex, own[i].Vertex);
                    pieces.Add(from < to ? new Piece(from, to, source, delta) : new Piece(to, from, source, -delta));
                }
            }
        }

        return pieces;
    }

    /// <summary>
    /// A segment rises or falls monotonically in both directions, so the pixels it meets form a staircase:
    /// their city-block distance from its start orders them.
    /// </summary>
    private static void SortAlong(in Segment segment, PointNm[] vertices, Span<Passage> passed)
    {
        int signY = segment.Dy >= 0 ? 1 : -1;
        if (passed.Length > 16)
        {
            passed.Sort((p, q) => DistanceOf(p.Vertex).CompareTo(DistanceOf(q.Vertex)));
            return;
        }

        for (int i = 1; i < passed.Length; i++)
        {
            Passage passage = passed[i];
            long distance = DistanceOf(passage.Vertex);
            int hole = i;
            while (hole > 0 && DistanceOf(passed[hole - 1].Vertex) > distance)
            {
                passed[hole] = passed[hole - 1];
                hole--;
            }

            passed[hole] = passage;
        }

        long DistanceOf(int vertex) => vertices[vertex].X + (signY * vertices[vertex].Y);
    }

    private static NodedEdges Merge(PointNm[] vertices, List<Piece> pieces)
    {
        int[] first = new int[vertices.Length + 1];
        foreach (Piece piece in pieces)
        {
            first[piece.From + 1]++;
        }

        for (int v = 0; v < vertices.Length; v++)
        {
            first[v + 1] += first[v];
        }

        int[] next = first[..^1];
        Piece[] sorted = new Piece[pieces.Count];
        foreach (Piece piece in pieces)
        {
            sorted[next[piece.From]++] = piece;
        }

        List<int> from = new(pieces.Count), to = new(pieces.Count), firstContribution = new(pieces.Count + 1);
        List<Contribution> contributions = new(pieces.Count);
        for (int v = 0; v < vertices.Length; v++)
        {
            Span<Piece> leaving = sorted.AsSpan(first[v], first[v + 1] - first[v]);
            Sort(leaving);
            for (int i = 0; i < leaving.Length;)
            {
                int start = contributions.Count, target = leaving[i].To;
                while (i < leaving.Length && leaving[i].To == target)
                {
                    int source = leaving[i].Source, delta = 0;
                    for (; i < leaving.Length && leaving[i].To == target && leaving[i].Source == source; i++)
                    {
                        delta += leaving[i].Delta;
                    }

                    if (delta != 0)
                    {
                        contributions.Add(new Contribution(source, delta));
                    }
                }

                if (contributions.Count > start)
                {
                    from.Add(v);
                    to.Add(target);
                    firstContribution.Add(start);
                }
            }
        }

        firstContribution.Add(contributions.Count);
        return new NodedEdges(vertices, [.. from], [.. to], [.. firstContribution], [.. contributions]);
    }

    private static void Sort(Span<Piece> pieces)
    {
        if (pieces.Length > 16)
        {
            pieces.Sort();
            return;
        }

        for (int i = 1; i < pieces.Length; i++)
        {
            Piece piece = pieces[i];
            int hole = i;
            while (hole > 0 && pieces[hole - 1].CompareTo(piece) > 0)
            {
                pieces[hole] = pieces[hole - 1];
                hole--;
            }

            pieces[hole] = piece;
        }
    }

    private readonly record struct Piece(int From, int To, int Source, int Delta) : IComparable<Piece>
    {
        public int CompareTo(Piece other) =>
            To != other.To ? To.CompareTo(other.To) : Source.CompareTo(other.Source);
    }
}
