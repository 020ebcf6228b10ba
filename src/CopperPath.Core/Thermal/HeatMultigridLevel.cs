namespace CopperPath.Thermal;

/// <summary>One set of columns of a <see cref="HeatMultigrid"/>, its way to the next wider ones, and room to work in.</summary>
internal sealed class HeatMultigridLevel
{
    /// <summary>Fewer nodes of a colour than this are not worth a second thread.</summary>
    private const int LeastParallelNodes = 8_000;

    private const int ColumnsAtATime = 256;

    private readonly HeatMatrix _matrix;
    private readonly CellGroups _groups;
    private readonly double[] _inversePivots;

    // Coupling to the next level over the pivot: what a value hands on to the next, and takes back from it.
    private readonly double[] _handedOn;

    // Columns of one colour are not coupled to each other.
    private readonly int[][] _colours;
    private readonly double[] _left;

    /// <param name="matrix">Its equations.</param>
    /// <param name="groups">The wider columns.</param>
    public HeatMultigridLevel(HeatMatrix matrix, CellGroups groups)
    {
        _matrix = matrix.Dominant();
        _groups = groups;
        Given = new double[matrix.Size];
        Values = new double[matrix.Size];
        _left = new double[matrix.Size];
        _inversePivots = InversePivots(_matrix);
        _handedOn = new double[matrix.Size];
        for (int n = 0; n < matrix.Size; n++)
        {
            _handedOn[n] = matrix.Down[n] * _inversePivots[n];
        }

        _colours = ColoursOf(matrix);
    }

    /// <summary>Right-hand side, to be filled in before a cycle.</summary>
    public double[] Given { get; }

    /// <summary>What the cycle made of it.</summary>
    public double[] Values { get; }

    /// <summary>The equations of the wider columns: couplings that cross from one to the other, over the longer way between their centres.</summary>
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

                double scale = DistanceM(boxes[column], boxes[other]) / DistanceM(_groups.Boxes[group], _groups.Boxes[otherGroup]);
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

    /// <summary>One sweep from zero, colour after colour.</summary>
    public void SweepFromZero()
    {
        Array.Clear(Values);
        foreach (int[] colour in _colours)
        {
            Sweep(colour);
        }
    }

    /// <summary>The sweep in the other order, from what is there.</summary>
    public void SweepBack()
    {
        for (int colour = _colours.Length - 1; colour >= 0; colour--)
        {
            Sweep(_colours[colour]);
        }
    }

    /// <summary>What is left over, gathered in the wider columns.</summary>
    public void Restrict(double[] wider)
    {
        _matrix.Multiply(Values, _left);
        Array.Clear(wider);
        int planes = _matrix.Planes;
        for (int column = 0; column < _groups.GroupOf.Length; column++)
        {
            int wide = _groups.GroupOf[column] * planes;
            for (int p = 0, n = column * planes; p < planes; p++, n++)
            {
                wider[wide + p] += Given[n] - _left[n];
            }
        }
    }

    /// <summary>Adds to each node what its wider column was given.</summary>
    public void Prolong(double[] wider)
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

    /// <summary>The way between the centres of two columns across the line they share.</summary>
    private static double DistanceM(CellBox a, CellBox b)
    {
        double rounding = 1e-6 * a.WidthM;
        bool isAcrossX = a.EastM <= b.WestM + rounding || b.EastM <= a.WestM + rounding;
        return isAcrossX ? Math.Abs(a.CentreXM - b.CentreXM) : Math.Abs(a.CentreYM - b.CentreYM);
    }

    private void Sweep(int[] columns)
    {
        if (columns.Length * _matrix.Planes < LeastParallelNodes)
        {
            foreach (int column in columns)
            {
                SolveColumn(column);
            }

            return;
        }

        Parallel.For(0, (columns.Length + ColumnsAtATime - 1) / ColumnsAtATime, chunk =>
        {
            int last = Math.Min(columns.Length, (chunk + 1) * ColumnsAtATime);
            for (int k = chunk * ColumnsAtATime; k < last; k++)
            {
                SolveColumn(columns[k]);
            }
        });
    }

    /// <summary>Solves the equations along one column with its neighbours as they are.</summary>
    private void SolveColumn(int column)
    {
        int planes = _matrix.Planes;
        int first = column * planes;
        Span<double> values = Values.AsSpan(first, planes);
        Given.AsSpan(first, planes).CopyTo(values);
        for (int k = _matrix.Start[column]; k < _matrix.Start[column + 1]; k++)
        {
            HeatMatrix.AddProduct(
                _matrix.Coupling.AsSpan(k * planes, planes), Values.AsSpan(_matrix.Neighbour[k] * planes, planes), 1, values);
        }

        ReadOnlySpan<double> inverse = _inversePivots.AsSpan(first, planes);
        ReadOnlySpan<double> handedOn = _handedOn.AsSpan(first, planes);
        for (int p = 1; p < values.Length; p++)
        {
            values[p] += handedOn[p - 1] * values[p - 1];
        }

        values[^1] *= inverse[^1];
        for (int p = values.Length - 2; p >= 0; p--)
        {
            values[p] = (inverse[p] * values[p]) + (handedOn[p] * values[p + 1]);
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

    /// <summary>Each column takes the first colour that no neighbour before it has.</summary>
    private static int[][] ColoursOf(HeatMatrix matrix)
    {
        int[] colour = new int[matrix.Columns];
        Array.Fill(colour, -1);
        List<List<int>> colours = [];
        for (int column = 0; column < matrix.Columns; column++)
        {
            long taken = 0;
            for (int k = matrix.Start[column]; k < matrix.Start[column + 1]; k++)
            {
                int other = colour[matrix.Neighbour[k]];
                taken |= other >= 0 ? 1L << other : 0;
            }

            int own = System.Numerics.BitOperations.TrailingZeroCount(~taken);
            colour[column] = own;
            if (own == colours.Count)
            {
                colours.Add([]);
            }

            colours[own].Add(column);
        }

        return [.. colours.Select(list => list.ToArray())];
    }
}
