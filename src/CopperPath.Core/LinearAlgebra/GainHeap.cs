namespace CopperPath.LinearAlgebra;

/// <summary>
/// A binary heap of vertices by gain, the largest first and the lowest number first among equals, in which the gain
/// of any vertex can be changed.
/// </summary>
internal sealed class GainHeap
{
    private readonly int[] _place;
    private readonly int[] _gain;
    private int[] _heap = new int[64];

    public GainHeap(int vertexCount)
    {
        _place = new int[vertexCount];
        _gain = new int[vertexCount];
        Array.Fill(_place, -1);
    }

    public int Count { get; private set; }

    public int Top => _heap[0];

    public int TopGain => _gain[_heap[0]];

    public bool Contains(int vertex) => _place[vertex] >= 0;

    public void Clear()
    {
        for (int k = 0; k < Count; k++)
        {
            _place[_heap[k]] = -1;
        }

        Count = 0;
    }

    public void Add(int vertex, int gain)
    {
        if (Count == _heap.Length)
        {
            Array.Resize(ref _heap, 2 * Count);
        }

        _gain[vertex] = gain;
        _heap[Count] = vertex;
        _place[vertex] = Count;
        Rise(Count++);
    }

    public void Change(int vertex, int difference)
    {
        _gain[vertex] += difference;
        if (difference > 0)
        {
            Rise(_place[vertex]);
        }
        else
        {
            Sink(_place[vertex]);
        }
    }

    public void Remove(int vertex)
    {
        int place = _place[vertex];
        _place[vertex] = -1;
        int last = _heap[--Count];
        if (last != vertex)
        {
            _heap[place] = last;
            _place[last] = place;
            Rise(place);
            Sink(_place[last]);
        }
    }

    private bool IsBefore(int left, int right) =>
        _gain[left] > _gain[right] || (_gain[left] == _gain[right] && left < right);

    private void Rise(int place)
    {
        int vertex = _heap[place];
        while (place > 0)
        {
            int above = (place - 1) / 2;
            if (!IsBefore(vertex, _heap[above]))
            {
                break;
            }

            _heap[place] = _heap[above];
            _place[_heap[place]] = place;
            place = above;
        }

        _heap[place] = vertex;
        _place[vertex] = place;
    }

    private void Sink(int place)
    {
        int vertex = _heap[place];
        while (true)
        {
            int below = (2 * place) + 1;
            if (below >= Count)
            {
                break;
            }

            if (below + 1 < Count && IsBefore(_heap[below + 1], _heap[below]))
            {
                below++;
            }

            if (!IsBefore(_heap[below], vertex))
            {
                break;
            }

            _heap[place] = _heap[below];
            _place[_heap[place]] = place;
            place = below;
        }

        _heap[place] = vertex;
        _place[vertex] = place;
    }
}
