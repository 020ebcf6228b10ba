namespace CopperPath.Thermal;

/// <summary>One set of columns of a <see cref="HeatMultigrid"/>, its way to the next wider ones, and room to work in.</summary>
/// <remarks>
/// In single precision: what is only meant to be near the solution needs no more, and its speed is that of memory. Columns are swept in
/// their order, those of one part after the other and all parts at once, each from what the others held before; the parts are the same
/// however many threads there are.
/// </remarks>
internal sealed class HeatMultigridLevel
{
    /// <summary>Nodes of a part: enough that its way to a thread is not felt, few enough to stay in the nearest memory.</summary>
    private const int NodesAtATime = 8_192;

    /// <summary>
    /// Wider columns are coupled less than all that crosses from one to the other, as one value for each is too stiff, but not by the whole
    /// of the longer way between their centres, since what is between is not all on the way: by this power of it, for which the steps of
    /// the iteration were measured to be fewest on boards of whole planes and of many pieces alike.
    /// </summary>
    private const double DistancePower = 0.7;

    private readonly HeatMatrix _matrix;
    private readonly CellGroups _groups;
    private readonly int _columnsAtATime;
    private readonly int _parts;

    // Neighbours of each column in their order: those of earlier parts, those before it in its own, those after it there, those of later parts.
    private readonly int[] _neighbour;
    private readonly float[] _coupling;
    private readonly int[] _firstInside;
    private readonly int[] _firstAfter;
    private readonly int[] _endInside;
    private readonly float[] _inversePivots;

    // Coupling to the next level over the pivot: what a value hands on to the next, and takes back from it.
    private readonly float[] _handedOn;
    private readonly float[] _left;
    private readonly float[] _none;

    /// <param name="matrix">Its equations.</param>
    /// <param name="groups">The wider columns.</param>
    public HeatMultigridLevel(HeatMatrix matrix, CellGroups groups)
    {
        _matrix = matrix.Dominant();
        _groups = groups;
        _columnsAtATime = Math.Max(1, NodesAtATime / matrix.Planes);
        _parts = (matrix.Columns + _columnsAtATime - 1) / _columnsAtATime;
        Given = new float[matrix.Size];
        Values = new float[matrix.Size];
        _left = new float[matrix.Size];
        _none = new float[matrix.Planes];
        double[] inverse = InversePivots(_matrix);
        _inversePivots = new float[matrix.Size];
        _handedOn = new float[matrix.Size];
        for (int n = 0; n < matrix.Size; n++)
        {
            (_inversePivots[n], _handedOn[n]) = ((float)inverse[n], (float)(matrix.Down[n] * inverse[n]));
        }

        (_neighbour, _coupling) = (new int[matrix.Neighbour.Length], new float[matrix.Coupling.Length]);
        (_firstInside, _firstAfter, _endInside) = (new int[matrix.Columns], new int[matrix.Columns], new int[matrix.Columns]);
        int[] others = new int[matrix.Neighbour.Length];
        int[] order = new int[matrix.Neighbour.Length];
        for (int column = 0; column < matrix.Columns; column++)
        {
            int count = matrix.Start[column + 1] - matrix.Start[column];
            Arrange(column, others.AsSpan(0, count), order.AsSpan(0, count));
        }
    }

    /// <summary>Right-hand side, to be filled in before a cycle.</summary>
    public float[] Given { get; }

    /// <summary>What the cycle made of it.</summary>
    public float[] Values { get; }

    /// <summary>The equations of the wider columns: couplings that cross from one to the other, less for the longer way between their centres.</summary>
    /// <param name="boxes">Places of these columns.</param>
    public HeatMatrix WiderMatrix(CellBox[] boxes)
    {
        int planes = _matrix.Planes;
        int groups = _groups.Boxes.Length;
        List<(int, int)> pairs = [];
        Dictionary<(int, int), int> numbers = [];
        List<double> couplings = [];
        double[] down = new double[groups * planes];
        double[] ground = new double[down.Length];
        bool[] isFree = new bool[down.Length];
        double[] sums = _matrix.CouplingsOfAll();
        for (int column = 0; column < boxes.Length; column++)
        {
            int group = _groups.GroupOf[column];
            for (int p = 0; p < planes; p++)
            {
                (int n, int wide) = ((column * planes) + p, (group * planes) + p);
                down[wide] += _matrix.Down[n];
                if (_matrix.IsFree[n])
                {
                    isFree[wide] = true;
                    ground[wide] += Math.Max(0, _matrix.Diagonal[n] - sums[n]);
                }
            }

            for (int k = _matrix.Start[column]; k < _matrix.Start[column + 1]; k++)
            {
                int other = _matrix.Neighbour[k];
                int otherGroup = _groups.GroupOf[other];
                if (other < column || otherGroup == group)
                {
                    continue;
                }

                (int, int) pair = group < otherGroup ? (group, otherGroup) : (otherGroup, group);
                if (!numbers.TryGetValue(pair, out int number))
                {
                    number = pairs.Count;
                    numbers.Add(pair, number);
                    pairs.Add(pair);
                    for (int p = 0; p < planes; p++)
                    {
                        couplings.Add(0);
                    }
                }

                double scale = boxes[column] == boxes[other] || _groups.Boxes[group] == _groups.Boxes[otherGroup] ? 1
                    : Math.Pow(DistanceM(boxes[column], boxes[other]) / DistanceM(_groups.Boxes[group], _groups.Boxes[otherGroup]), DistancePower);
                for (int p = 0; p < planes; p++)
                {
                    couplings[(number * planes) + p] += scale * _matrix.Coupling[(k * planes) + p];
                }
            }
        }

        HeatMatrix wider = HeatMatrix.Of(groups, planes, pairs, [.. couplings], down);
        double[] wideSums = wider.CouplingsOfAll();
        for (int n = 0; n < wider.Size; n++)
        {
            wider.IsFree[n] = isFree[n];
            wider.Diagonal[n] = isFree[n] && wideSums[n] + ground[n] > 0 ? wideSums[n] + ground[n] : 1;
        }

        return wider;
    }

    /// <summary>One sweep from zero.</summary>
    public void SweepFromZero() => EachPart((first, end) =>
    {
        for (int column = first; column < end; column++)
        {
            Span<float> values = Values.AsSpan(column * _matrix.Planes, _matrix.Planes);
            ColumnSums.Add(_coupling, _neighbour, _firstInside[column], _firstAfter[column], Values, Given.AsSpan(column * _matrix.Planes, _matrix.Planes), values);
            SolveColumn(column, values);
        }
    });

    /// <summary>The sweep in the other order, from what is there.</summary>
    public void SweepBack()
    {
        int planes = _matrix.Planes;
        bool hasOthers = _parts > 1;
        if (hasOthers)
        {
            Values.CopyTo(_left, 0);
        }

        EachPart((first, end) =>
        {
            for (int column = end - 1; column >= first; column--)
            {
                Span<float> values = Values.AsSpan(column * planes, planes);
                ColumnSums.Add(_coupling, _neighbour, _firstInside[column], _endInside[column], Values, Given.AsSpan(column * planes, planes), values);
                if (hasOthers)
                {
                    AddOthers(column, _left, values);
                }

                SolveColumn(column, values);
            }
        });
    }

    /// <summary>What <see cref="SweepFromZero"/> left over, gathered in the wider columns: what was not known yet when a column was solved.</summary>
    public void Restrict(float[] wider)
    {
        int planes = _matrix.Planes;
        EachPart((first, end) =>
        {
            for (int column = first; column < end; column++)
            {
                Span<float> left = _left.AsSpan(column * planes, planes);
                ColumnSums.Add(_coupling, _neighbour, _firstAfter[column], _endInside[column], Values, _none, left);
                AddOthers(column, Values, left);
            }
        });
        Array.Clear(wider);
        for (int column = 0; column < _groups.GroupOf.Length; column++)
        {
            int wide = _groups.GroupOf[column] * planes;
            for (int p = 0, n = column * planes; p < planes; p++, n++)
            {
                wider[wide + p] += _left[n];
            }
        }
    }

    /// <summary>Adds to each node what its wider column was given.</summary>
    public void Prolong(float[] wider)
    {
        int planes = _matrix.Planes;
        for (int column = 0; column < _groups.GroupOf.Length; column++)
        {
            int wide = _groups.GroupOf[column] * planes;
            for (int p = 0, n = column * planes; p < planes; p++, n++)
            {
                Values[n] += wider[wide + p];
            }
        }
    }

    /// <summary>Numbers in single precision.</summary>
    public static void Narrow(ReadOnlySpan<double> from, Span<float> to)
    {
        for (int n = 0; n < from.Length; n++)
        {
            to[n] = (float)from[n];
        }
    }

    /// <summary>The way between the centres of two columns across the line they share.</summary>
    private static double DistanceM(CellBox a, CellBox b)
    {
        double rounding = 1e-6 * a.WidthM;
        bool isAcrossX = a.EastM <= b.WestM + rounding || b.EastM <= a.WestM + rounding;
        return isAcrossX ? Math.Abs(a.CentreXM - b.CentreXM) : Math.Abs(a.CentreYM - b.CentreYM);
    }

    private void EachPart(Action<int, int> work)
    {
        if (_parts == 1)
        {
            work(0, _matrix.Columns);
            return;
        }

        Parallel.For(0, _parts, part => work(part * _columnsAtATime, Math.Min(_matrix.Columns, (part + 1) * _columnsAtATime)));
    }

    /// <summary>Adds what neighbours of other parts bring.</summary>
    private void AddOthers(int column, float[] values, Span<float> sum)
    {
        for (int k = _matrix.Start[column]; k < _matrix.Start[column + 1]; k++)
        {
            if (k < _firstInside[column] || k >= _endInside[column])
            {
                int planes = sum.Length;
                ReadOnlySpan<float> coupling = _coupling.AsSpan(k * planes, planes);
                ReadOnlySpan<float> other = values.AsSpan(_neighbour[k] * planes, planes);
                for (int p = 0; p < planes; p++)
                {
                    sum[p] += coupling[p] * other[p];
                }
            }
        }
    }

    /// <summary>Solves the equations along one column with its neighbours as they are.</summary>
    private void SolveColumn(int column, Span<float> values)
    {
        ReadOnlySpan<float> inverse = _inversePivots.AsSpan(column * values.Length, values.Length);
        ReadOnlySpan<float> handedOn = _handedOn.AsSpan(column * values.Length, values.Length);
        float above = values[0];
        for (int p = 1; p < values.Length; p++)
        {
            above = values[p] + (handedOn[p - 1] * above);
            values[p] = above;
        }

        float below = 0;
        for (int p = values.Length - 1; p >= 0; p--)
        {
            below = (inverse[p] * values[p]) + (handedOn[p] * below);
            values[p] = below;
        }
    }

    private void Arrange(int column, Span<int> others, Span<int> order)
    {
        int planes = _matrix.Planes;
        int start = _matrix.Start[column];
        _matrix.Neighbour.AsSpan(start, others.Length).CopyTo(others);
        for (int place = 0; place < order.Length; place++)
        {
            order[place] = start + place;
        }

        others.Sort(order);
        int firstOfPart = column / _columnsAtATime * _columnsAtATime;
        (_firstInside[column], _firstAfter[column], _endInside[column]) = (start, start, start);
        for (int place = 0; place < order.Length; place++)
        {
            int other = others[place];
            _neighbour[start + place] = other;
            Narrow(_matrix.Coupling.AsSpan(order[place] * planes, planes), _coupling.AsSpan((start + place) * planes, planes));
            _firstInside[column] += other < firstOfPart ? 1 : 0;
            _firstAfter[column] += other < column ? 1 : 0;
            _endInside[column] += other < firstOfPart + _columnsAtATime ? 1 : 0;
        }
    }

    private static double[] InversePivots(HeatMatrix matrix)
    {
        double[] inverse = new double[matrix.Size];
        for (int n = 0; n < inverse.Length; n++)
        {
            double pivot = matrix.Diagonal[n];
            if (n % matrix.Planes > 0)
            {
                pivot -= matrix.Down[n - 1] * matrix.Down[n - 1] * inverse[n - 1];
            }

            inverse[n] = 1 / pivot;
        }

        return inverse;
    }
}
