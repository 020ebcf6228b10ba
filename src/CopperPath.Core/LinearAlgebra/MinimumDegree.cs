namespace CopperPath.LinearAlgebra;

/// <summary>
/// Minimum degree ordering on a quotient graph with approximate degrees.
/// </summary>
/// <remarks>
/// After George and Liu, "The evolution of the minimum degree ordering algorithm", SIAM Review 31 (1989), and Amestoy,
/// Davis and Duff, "An approximate minimum degree ordering algorithm", SIAM J. Matrix Anal. Appl. 17 (1996): eliminated
/// vertices become elements, vertices with equal neighbourhoods are merged and eliminated together, and the degree is
/// an upper bound that costs no set union. Vertices of the halo (Pellegrini, Roman and Amestoy, "Hybridizing nested
/// dissection and halo approximate minimum degree for efficient sparse matrix ordering", 2000) count in the degrees
/// but are never eliminated: they stand for the separators around the piece being ordered.
/// </remarks>
internal sealed class MinimumDegree
{
    private const int None = -1;

    private readonly int _count;
    private readonly int _interiorCount;

    // The quotient graph. The list of a variable names first its elements, then its variables; the list of an element
    // names its variables. A weight of zero marks a vertex that is gone; a negative weight one in the current element.
    private readonly int[] _start;
    private readonly int[] _length;
    private readonly int[] _elementCount;
    private readonly int[] _weight;
    private readonly int[] _degree;
    private readonly bool[] _isLiveElement;
    private int[] _lists;
    private int _listsEnd;

    // Vertices merged into one another or eliminated together, as chains.
    private readonly int[] _chainNext;
    private readonly int[] _chainEnd;

    // Variables by degree, as doubly linked lists; the same links hold the hash buckets of the current element.
    private readonly int[] _head;
    private readonly int[] _next;
    private readonly int[] _previous;
    private int _smallestDegree;

    private readonly long[] _mark;
    private long _markBase = 1;
    private readonly int[] _hashHead;
    private readonly int[] _hashNext;
    private readonly int[] _hash;
    private int _eliminated;

    private MinimumDegree(int[] starts, int[] neighbours, int vertexCount, int interiorCount)
    {
        _count = vertexCount;
        _interiorCount = interiorCount;
        _start = new int[vertexCount];
        _length = new int[vertexCount];
        _elementCount = new int[vertexCount];
        _weight = new int[vertexCount];
        _degree = new int[vertexCount];
        _isLiveElement = new bool[vertexCount];
        _lists = new int[starts[vertexCount] + (starts[vertexCount] / 2) + 64];
        neighbours.AsSpan(0, starts[vertexCount]).CopyTo(_lists);
        _listsEnd = starts[vertexCount];
        _chainNext = new int[vertexCount];
        _chainEnd = new int[vertexCount];
        _head = new int[vertexCount + 1];
        _next = new int[vertexCount];
        _previous = new int[vertexCount];
        _mark = new long[vertexCount];
        _hashHead = new int[vertexCount];
        _hashNext = new int[vertexCount];
        _hash = new int[vertexCount];
        Array.Fill(_head, None);
        Array.Fill(_hashHead, None);
        for (int v = 0; v < vertexCount; v++)
        {
            _start[v] = starts[v];
            _length[v] = starts[v + 1] - starts[v];
            _weight[v] = 1;
            _degree[v] = _length[v];
            _chainNext[v] = None;
            _chainEnd[v] = v;
        }

        // Filed backwards so that equal degrees are taken in ascending order.
        for (int v = interiorCount - 1; v >= 0; v--)
        {
            File(v);
        }
    }

    /// <summary>
    /// Orders the first <paramref name="interiorCount"/> vertices of a graph; the others are its halo.
    /// </summary>
    /// <param name="starts">Start of each vertex's neighbours; length at least <paramref name="vertexCount"/> + 1.</param>
    /// <param name="neighbours">Neighbours without the vertex itself, each named once; every edge at both ends.</param>
    /// <param name="vertexCount">All vertices, halo included.</param>
    /// <param name="interiorCount">Vertices to order; they come first.</param>
    /// <param name="order">Receives the interior vertices in order of elimination.</param>
    public static void Order(
        int[] starts, int[] neighbours, int vertexCount, int interiorCount, Span<int> order)
    {
        new MinimumDegree(starts, neighbours, vertexCount, interiorCount).Run(order);
    }

    private void Run(Span<int> order)
    {
        int written = 0;
        while (_eliminated < _interiorCount)
        {
            int pivot = TakeSmallest();
            Eliminate(pivot);
            for (int v = pivot; v != None; v = _chainNext[v])
            {
                order[written++] = v;
            }
        }
    }

    private int TakeSmallest()
    {
        while (_head[_smallestDegree] == None)
        {
            _smallestDegree++;
        }

        int pivot = _head[_smallestDegree];
        Unfile(pivot);
        return pivot;
    }

    private void File(int variable)
    {
        int degree = _degree[variable];
        int first = _head[degree];
        _next[variable] = first;
        _previous[variable] = None;
        if (first != None)
        {
            _previous[first] = variable;
        }

        _head[degree] = variable;
        _smallestDegree = Math.Min(_smallestDegree, degree);
    }

    private void Unfile(int variable)
    {
        if (variable >= _interiorCount)
        {
            return;
        }

        int next = _next[variable];
        int previous = _previous[variable];
        if (next != None)
        {
            _previous[next] = previous;
        }

        if (previous != None)
        {
            _next[previous] = next;
        }
        else
        {
            _head[_degree[variable]] = next;
        }
    }

    private void Eliminate(int pivot)
    {
        int pivotWeight = _weight[pivot];
        int elementWeight = FormElement(pivot);
        int elementStart = _start[pivot];
        int elementLength = _length[pivot];

        MeasureElementsOutside(elementStart, elementLength);
        for (int k = elementStart; k < elementStart + elementLength; k++)
        {
            int variable = _lists[k];
            int weight = -_weight[variable];
            if (UpdateVariable(variable, pivot))
            {
                // Nothing but this element is left next to it: it goes with the pivot at no further fill.
                Append(pivot, variable);
                pivotWeight += weight;
                elementWeight -= weight;
                _weight[variable] = 0;
            }
        }

        MergeTwins(elementStart, elementLength);
        _markBase += _count + 1;

        _eliminated += pivotWeight;
        int kept = elementStart;
        int remaining = _count - _eliminated;
        for (int k = elementStart; k < elementStart + elementLength; k++)
        {
            int variable = _lists[k];
            _hashHead[_hash[variable]] = None;
            int weight = -_weight[variable];
            if (weight <= 0)
            {
                continue;
            }

            _weight[variable] = weight;
            _lists[kept++] = variable;
            _degree[variable] = Math.Min(_degree[variable] + elementWeight - weight, remaining - weight);
            if (variable < _interiorCount)
            {
                File(variable);
            }
        }

        _weight[pivot] = 0;
        _length[pivot] = kept - elementStart;
        _degree[pivot] = elementWeight;
        _isLiveElement[pivot] = _length[pivot] > 0;
    }

    /// <summary>
    /// Turns the pivot into an element: the union of its variables and those of its elements, which it absorbs.
    /// Returns the number of vertices in it.
    /// </summary>
    private int FormElement(int pivot)
    {
        int start = _start[pivot];
        int elements = _elementCount[pivot];
        int length = _length[pivot];
        int bound = length;
        for (int k = start; k < start + elements; k++)
        {
            bound += _length[_lists[k]];
        }

        Reserve(bound);
        int end = _listsEnd;
        int total = 0;
        _weight[pivot] = -_weight[pivot];
        for (int k = start; k < start + elements; k++)
        {
            int element = _lists[k];
            if (_isLiveElement[element])
            {
                end = Collect(_start[element], _length[element], end, ref total);
                _isLiveElement[element] = false;
            }
        }

        end = Collect(start + elements, length - elements, end, ref total);
        _start[pivot] = _listsEnd;
        _length[pivot] = end - _listsEnd;
        _elementCount[pivot] = 0;
        _listsEnd = end;
        return total;
    }

    private int Collect(int from, int length, int end, ref int total)
    {
        for (int k = from; k < from + length; k++)
        {
            int variable = _lists[k];
            int weight = _weight[variable];
            if (weight > 0)
            {
                total += weight;
                _weight[variable] = -weight;
                _lists[end++] = variable;
                Unfile(variable);
            }
        }

        return end;
    }

    private void Reserve(int more)
    {
        if (_listsEnd + more > _lists.Length)
        {
            Array.Resize(ref _lists, Math.Max(_listsEnd + more, _lists.Length + (_lists.Length / 2)));
        }
    }

    /// <summary>
    /// Leaves in the mark of each element next to the current one, above the base, how much of it lies outside.
    /// </summary>
    private void MeasureElementsOutside(int elementStart, int elementLength)
    {
        for (int k = elementStart; k < elementStart + elementLength; k++)
        {
            int variable = _lists[k];
            int weight = -_weight[variable];
            int from = _start[variable];
            for (int e = from; e < from + _elementCount[variable]; e++)
            {
                int element = _lists[e];
                if (!_isLiveElement[element])
                {
                    continue;
                }

                if (_mark[element] < _markBase)
                {
                    _mark[element] = _markBase + _degree[element];
                }

                _mark[element] -= weight;
            }
        }
    }

    /// <summary>
    /// Drops from the variable's list what the new element covers and bounds its degree (still without the element
    /// itself). True when nothing else is left and the variable may go with the pivot.
    /// </summary>
    private bool UpdateVariable(int variable, int pivot)
    {
        int start = _start[variable];
        int elementsEnd = start + _elementCount[variable];
        int end = start + _length[variable];
        int write = start;
        long degree = 0;
        uint hash = 0;
        for (int k = start; k < elementsEnd; k++)
        {
            int element = _lists[k];
            if (!_isLiveElement[element])
            {
                continue;
            }

            long outside = _mark[element] - _markBase;
            if (outside > 0)
            {
                degree += outside;
                _lists[write++] = element;
                hash += (uint)element;
            }
            else
            {
                // The new element covers this one entirely.
                _isLiveElement[element] = false;
            }
        }

        int elements = write - start;
        int writtenVariables = write;
        for (int k = elementsEnd; k < end; k++)
        {
            int neighbour = _lists[k];
            int weight = _weight[neighbour];
            if (weight > 0)
            {
                degree += weight;
                _lists[writtenVariables++] = neighbour;
                hash += (uint)neighbour;
            }
        }

        if (degree == 0 && variable < _interiorCount)
        {
            _hash[variable] = 0;
            return true;
        }

        // The pivot, or an element it absorbed, was in the list, so there is room for one name more. It goes behind the
        // elements; the variable there moves to the end.
        if (writtenVariables > write)
        {
            _lists[writtenVariables] = _lists[write];
        }

        _lists[write] = pivot;
        _elementCount[variable] = elements + 1;
        _length[variable] = writtenVariables + 1 - start;
        _degree[variable] = (int)Math.Min(_degree[variable], degree);

        int bucket = (int)(hash % (uint)_count);
        _hash[variable] = bucket;
        _hashNext[variable] = _hashHead[bucket];
        _hashHead[bucket] = variable;
        return false;
    }

    /// <summary>Merges variables of the current element whose lists are equal.</summary>
    private void MergeTwins(int elementStart, int elementLength)
    {
        for (int k = elementStart; k < elementStart + elementLength; k++)
        {
            int leader = _lists[k];
            if (_weight[leader] == 0)
            {
                continue;
            }

            int bucket = _hash[leader];
            for (int first = _hashHead[bucket]; first != None && _hashNext[first] != None; first = _hashNext[first])
            {
                MergeTwinsOf(first);
            }

            _hashHead[bucket] = None;
        }
    }

    private void MergeTwinsOf(int variable)
    {
        _markBase += _count + 1;
        int start = _start[variable];
        int length = _length[variable];
        for (int k = start; k < start + length; k++)
        {
            _mark[_lists[k]] = _markBase;
        }

        int previous = variable;
        for (int other = _hashNext[variable]; other != None; other = _hashNext[other])
        {
            if (IsTwin(variable, other))
            {
                _weight[variable] += _weight[other];
                _weight[other] = 0;
                Append(variable, other);
                _hashNext[previous] = _hashNext[other];
            }
            else
            {
                previous = other;
            }
        }
    }

    private bool IsTwin(int variable, int other)
    {
        if (_length[variable] != _length[other]
            || _elementCount[variable] != _elementCount[other]
            || (variable < _interiorCount) != (other < _interiorCount))
        {
            return false;
        }

        int start = _start[other];
        for (int k = start; k < start + _length[other]; k++)
        {
            if (_mark[_lists[k]] != _markBase)
            {
                return false;
            }
        }

        return true;
    }

    private void Append(int leader, int follower)
    {
        _chainNext[_chainEnd[leader]] = follower;
        _chainEnd[leader] = _chainEnd[follower];
    }
}
