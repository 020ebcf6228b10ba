using CopperPath.LinearAlgebra;

namespace CopperPath.Thermal;

/// <summary>
/// Multigrid on a grid of columns: cells are gathered two by two in the plane, narrow ones first, and levels are kept;
/// every column is solved as a whole, because through the board the coupling is strong on some grids and weak on others.
/// </summary>
/// <remarks>
/// Cell-centred grids with constant transfer and coarse couplings scaled by distance, as in Wesseling, An Introduction to
/// Multigrid Methods (1992), section 5.4 (from memory); columns of one colour after those of the other, forwards before and
/// backwards after the coarse correction. The whole is a symmetric positive definite operator.
/// </remarks>
internal sealed class ColumnMultigrid : IPreconditioner
{
    private const int CoarsestSize = 600;

    /// <summary>A grid that keeps more than this share of its columns is not worth having.</summary>
    private const double MostLeft = 0.9;

    /// <summary>Groups grow by two, and a little for rounding.</summary>
    private const double Doubling = 2.001;

    private readonly List<ColumnLevel> _levels;
    private readonly CholeskyFactor _coarsest;
    private readonly double[] _coarsestGiven;
    private readonly double[] _coarsestValues;

    private ColumnMultigrid(List<ColumnLevel> levels, CholeskyFactor coarsest)
    {
        (_levels, _coarsest) = (levels, coarsest);
        _coarsestGiven = new double[coarsest.Size];
        _coarsestValues = new double[coarsest.Size];
    }

    /// <summary>Null when the coarsest equations can not be factored: nothing ties the board to the ground.</summary>
    /// <param name="matrix">The matrix to approximate; it may change afterwards.</param>
    /// <param name="xLinesM">Lines of its columns, metres.</param>
    /// <param name="yLinesM">Lines of its rows, metres.</param>
    public static ColumnMultigrid? TryCreate(ColumnMatrix matrix, IReadOnlyList<double> xLinesM, IReadOnlyList<double> yLinesM)
    {
        List<ColumnLevel> levels = [];
        ColumnMatrix current = matrix;
        while (current.Size > CoarsestSize && current.Columns * current.Rows > 1)
        {
            (AxisGroups x, AxisGroups y) = Coarser(xLinesM, yLinesM);
            ColumnLevel level = new(current, x, y);
            levels.Add(level);
            current = level.CoarserMatrix(xLinesM, yLinesM);
            (xLinesM, yLinesM) = (x.LinesM, y.LinesM);
        }

        return CholeskyFactor.Factor(SparseOf(current)).Factor is { } coarsest ? new ColumnMultigrid(levels, coarsest) : null;
    }

    /// <inheritdoc/>
    public void Apply(ReadOnlySpan<double> residual, Span<double> result)
    {
        if (_levels.Count == 0)
        {
            _coarsest.Solve(residual, result);
            return;
        }

        residual.CopyTo(_levels[0].Given);
        Cycle(0);
        _levels[0].Values.CopyTo(result);
    }

    private void Cycle(int depth)
    {
        ColumnLevel level = _levels[depth];
        level.SweepFromZero();
        if (depth + 1 < _levels.Count)
        {
            level.Restrict(_levels[depth + 1].Given);
            Cycle(depth + 1);
            level.Prolong(_levels[depth + 1].Values);
        }
        else
        {
            level.Restrict(_coarsestGiven);
            _coarsest.Solve(_coarsestGiven, _coarsestValues);
            level.Prolong(_coarsestValues);
        }

        level.SweepBack();
    }

    /// <summary>Groups of two or more cells, as narrow as possible; a width that joins too few is doubled.</summary>
    private static (AxisGroups X, AxisGroups Y) Coarser(IReadOnlyList<double> xLinesM, IReadOnlyList<double> yLinesM)
    {
        double widestM = Doubling * Math.Min(NarrowestM(xLinesM), NarrowestM(yLinesM));
        while (true)
        {
            (AxisGroups x, AxisGroups y) = (AxisGroups.Within(xLinesM, widestM), AxisGroups.Within(yLinesM, widestM));
            if (x.Count * y.Count <= MostLeft * (xLinesM.Count - 1) * (yLinesM.Count - 1))
            {
                return (x, y);
            }

            widestM *= Doubling;
        }
    }

    private static double NarrowestM(IReadOnlyList<double> linesM)
    {
        double narrowestM = double.PositiveInfinity;
        for (int k = 1; k < linesM.Count; k++)
        {
            narrowestM = Math.Min(narrowestM, linesM[k] - linesM[k - 1]);
        }

        return narrowestM;
    }

    private static SymmetricSparseMatrix SparseOf(ColumnMatrix matrix)
    {
        SparseMatrixBuilder builder = new(matrix.Size, 4 * matrix.Size);
        for (int n = 0; n < matrix.Size; n++)
        {
            builder.Add(n, n, matrix.Diagonal[n]);
            AddCoupling(n, n + 1, matrix.Down[n]);
            AddCoupling(n, n + matrix.Planes, matrix.East[n]);
            AddCoupling(n, n + matrix.RowStride, matrix.North[n]);
        }

        return builder.Build();

        void AddCoupling(int from, int to, double coupling)
        {
            if (coupling > 0)
            {
                builder.Add(from, to, -coupling);
            }
        }
    }
}
