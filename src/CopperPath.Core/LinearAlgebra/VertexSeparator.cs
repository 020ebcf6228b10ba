namespace CopperPath.LinearAlgebra;

/// <summary>
/// A division of a graph into two sides without an edge between them and the separator that parts them, improved by
/// moving separator vertices to one side or the other.
/// </summary>
/// <remarks>
/// The moves follow Fiduccia and Mattheyses, "A linear-time heuristic for improving network partitions" (1982), applied
/// to vertex separators: a vertex that leaves the separator for one side pulls its neighbours on the other side in.
/// </remarks>
internal sealed class VertexSeparator
{
    public const byte Between = 2;

    /// <summary>Share of the whole that no side may exceed.</summary>
    private const double LargestSide = 0.57;
    private const int MaxPasses = 4;

    private readonly WeightedGraph _graph;
    private readonly byte[] _side;
    private readonly long[] _weights = new long[3];
    private readonly long _largestSideWeight;
    private readonly GainHeap[] _heaps;
    private readonly bool[] _isMoved;
    private readonly List<int> _separator = [];
    private bool _isGrowing;
    private readonly List<(int Vertex, byte From)> _log = [];

    /// <param name="graph">The graph to divide.</param>
    /// <param name="side">The side of each vertex: 0, 1 or <see cref="Between"/>; changed in place.</param>
    /// <param name="workspace">Scratch memory for at least as many vertices; left as it was found.</param>
    public VertexSeparator(WeightedGraph graph, byte[] side, DissectionWorkspace workspace)
    {
        _graph = graph;
        _side = side;
        _heaps = workspace.Heaps;
        _isMoved = workspace.IsMoved;
        for (int v = 0; v < graph.Count; v++)
        {
            _weights[side[v]] += graph.Weight(v);
            if (side[v] == Between)
            {
                _separator.Add(v);
            }
        }

        _largestSideWeight = (long)Math.Ceiling(LargestSide * (_weights[0] + _weights[1] + _weights[2]));
    }

    public byte[] Side => _side;

    /// <summary>Lower is better: the separator's weight, and a charge for sides that differ beyond what is allowed.</summary>
    public double Cost
    {
        get
        {
            long excess = Math.Max(0, Math.Max(_weights[0], _weights[1]) - _largestSideWeight);
            return _weights[2] + (4.0 * excess);
        }
    }

    /// <summary>
    /// Lets side 0 grow from a seed, always by the vertex that adds least to the separator, until it holds half.
    /// </summary>
    public static VertexSeparator Grow(WeightedGraph graph, int seed, DissectionWorkspace workspace)
    {
        byte[] side = new byte[graph.Count];
        Array.Fill(side, (byte)1);
        side[seed] = Between;
        VertexSeparator separator = new(graph, side, workspace) { _isGrowing = true };
        separator.GrowToHalf();
        separator._isGrowing = false;
        return separator;
    }

    /// <summary>The same division of a finer graph.</summary>
    public VertexSeparator Expand(WeightedGraph finer, int[] coarseOf, DissectionWorkspace workspace)
    {
        byte[] side = new byte[finer.Count];
        for (int v = 0; v < side.Length; v++)
        {
            side[v] = _side[coarseOf[v]];
        }

        return new VertexSeparator(finer, side, workspace);
    }

    private void GrowToHalf()
    {
        GainHeap heap = _heaps[0];
        heap.Add(_separator[0], Gain(_separator[0], 0));
        int unreached = 0;
        while (_weights[0] < _weights[1])
        {
            if (heap.Count == 0)
            {
                // A component is used up: go on in another.
                while (_side[unreached] != 1)
                {
                    unreached++;
                }

                _weights[1] -= _graph.Weight(unreached);
                _weights[2] += _graph.Weight(unreached);
                _side[unreached] = Between;
                _separator.Add(unreached);
                heap.Add(unreached, Gain(unreached, 0));
            }

            int vertex = heap.Top;
            heap.Remove(vertex);
            Move(vertex, 0);
        }

        heap.Clear();
        KeepSeparator();
    }

    private void KeepSeparator() => _separator.RemoveAll(vertex => _side[vertex] != Between);

    /// <summary>Improves the separator until a pass gains nothing.</summary>
    public void Refine()
    {
        for (int pass = 0; pass < MaxPasses && RunPass(); pass++)
        {
        }
    }

    /// <summary>
    /// Moves vertices one by one, each at most once, the best first even where it makes things worse for a while, and
    /// goes back to the best division seen. True when that is better than the one at the start.
    /// </summary>
    private bool RunPass()
    {
        double startCost = Cost;
        double bestCost = startCost;
        long bestDifference = Math.Abs(_weights[0] - _weights[1]);
        bool isBetter = false;
        int bestLength = 0;
        int patience = Math.Clamp(_separator.Count / 2, 20, 120);
        _log.Clear();
        foreach (int v in _separator)
        {
            _heaps[0].Add(v, Gain(v, 0));
            _heaps[1].Add(v, Gain(v, 1));
        }

        int movesSinceBest = 0;
        while (movesSinceBest < patience && ChooseSide() is int to && to >= 0)
        {
            int vertex = _heaps[to].Top;
            _heaps[0].Remove(vertex);
            _heaps[1].Remove(vertex);
            _isMoved[vertex] = true;
            Move(vertex, (byte)to);
            movesSinceBest++;

            double cost = Cost;
            long difference = Math.Abs(_weights[0] - _weights[1]);
            if (cost < bestCost || (cost == bestCost && difference < bestDifference))
            {
                isBetter |= cost < bestCost;
                bestCost = cost;
                bestDifference = difference;
                bestLength = _log.Count;
                movesSinceBest = 0;
            }
        }

        for (int k = _log.Count - 1; k >= 0; k--)
        {
            (int vertex, byte from) = _log[k];
            _isMoved[vertex] = false;
            if (k < bestLength)
            {
                continue;
            }

            _weights[_side[vertex]] -= _graph.Weight(vertex);
            _weights[from] += _graph.Weight(vertex);
            _side[vertex] = from;
        }

        _heaps[0].Clear();
        _heaps[1].Clear();
        KeepSeparator();
        return isBetter;
    }

    /// <summary>The side the best move leads to, −1 when no move is allowed.</summary>
    private int ChooseSide()
    {
        bool mayGo0 = IsAllowed(0);
        bool mayGo1 = IsAllowed(1);
        if (mayGo0 && mayGo1)
        {
            int gain0 = _heaps[0].TopGain;
            int gain1 = _heaps[1].TopGain;
            if (gain0 == gain1)
            {
                return _weights[0] <= _weights[1] ? 0 : 1;
            }

            return gain0 > gain1 ? 0 : 1;
        }

        return mayGo0 ? 0 : mayGo1 ? 1 : -1;
    }

    private bool IsAllowed(int to) => _heaps[to].Count > 0
        && (_weights[to] + _graph.Weight(_heaps[to].Top) <= _largestSideWeight || _weights[to] < _weights[1 - to]);

    /// <summary>How much lighter the separator becomes when the vertex leaves it for a side.</summary>
    private int Gain(int vertex, int to)
    {
        int gain = _graph.Weight(vertex);
        foreach (int neighbour in _graph.NeighboursOf(vertex))
        {
            if (_side[neighbour] == 1 - to)
            {
                gain -= _graph.Weight(neighbour);
            }
        }

        return gain;
    }

    private void Move(int vertex, byte to)
    {
        byte other = (byte)(1 - to);
        int weight = _graph.Weight(vertex);
        _weights[Between] -= weight;
        _weights[to] += weight;
        _side[vertex] = to;
        _log.Add((vertex, Between));
        foreach (int neighbour in _graph.NeighboursOf(vertex))
        {
            if (_side[neighbour] == Between)
            {
                if (_heaps[other].Contains(neighbour))
                {
                    _heaps[other].Change(neighbour, -weight);
                }
            }
            else if (_side[neighbour] == other)
            {
                PullIn(neighbour, to, other);
            }
        }
    }

    /// <summary>Takes a vertex of the other side into the separator.</summary>
    private void PullIn(int vertex, byte to, byte other)
    {
        int weight = _graph.Weight(vertex);
        _weights[other] -= weight;
        _weights[Between] += weight;
        _side[vertex] = Between;
        _log.Add((vertex, other));
        foreach (int neighbour in _graph.NeighboursOf(vertex))
        {
            if (_side[neighbour] == Between && _heaps[to].Contains(neighbour))
            {
                _heaps[to].Change(neighbour, weight);
            }
        }

        if (!_isMoved[vertex])
        {
            _separator.Add(vertex);
            _heaps[to].Add(vertex, Gain(vertex, to));
            if (!_isGrowing)
            {
                _heaps[other].Add(vertex, Gain(vertex, other));
            }
        }
    }
}
