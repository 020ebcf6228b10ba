using CopperPath.LinearAlgebra;

namespace CopperPath.Thermal;

/// <summary>
/// Multigrid on columns of cells: columns are gathered into wider ones, and every column is solved as a whole, because
/// through the board the coupling is strong in some places and weak in others.
/// </summary>
/// <remarks>
/// Cell-centred grids with constant transfer and coarse couplings scaled by distance, as in Wesseling, An Introduction to
/// Multigrid Methods (1992), section 5.4 (from memory); columns one after the other, forwards before and backwards after the coarse
/// correction. Columns of one wider cell that copper parts are gathered apart (<see cref="ColumnGathering"/>): without that the demo
/// board takes a third more steps. The whole is a symmetric positive definite operator, to the rounding of single precision.
/// </remarks>
internal sealed class HeatMultigrid : IPreconditioner
{
    private const int CoarsestSize = 600;

    private readonly List<HeatMultigridLevel> _levels;
    private readonly CholeskyFactor _coarsest;
    private readonly double[] _coarsestGiven;
    private readonly double[] _coarsestValues;
    private readonly float[] _coarsestRight;

    private HeatMultigrid(List<HeatMultigridLevel> levels, CholeskyFactor coarsest)
    {
        (_levels, _coarsest) = (levels, coarsest);
        _coarsestGiven = new double[coarsest.Size];
        _coarsestValues = new double[coarsest.Size];
        _coarsestRight = new float[coarsest.Size];
    }

    /// <summary>Null when the coarsest equations can not be factored: nothing ties the board to the ground.</summary>
    /// <param name="matrix">The matrix to approximate; its diagonal may change afterwards.</param>
    /// <param name="cells">The columns it is of.</param>
    public static HeatMultigrid? TryCreate(HeatMatrix matrix, HeatCells cells)
    {
        List<HeatMultigridLevel> levels = [];
        HeatMatrix current = matrix;
        CellBox[] boxes = [.. Enumerable.Range(0, cells.Count).Select(cells.BoxOf)];
        int[] cellOf = [.. Enumerable.Range(0, cells.Count)];
        foreach (CellGroups groups in cells.Coarsenings())
        {
            if (current.Size <= CoarsestSize)
            {
                break;
            }

            (int[] groupOf, cellOf) = ColumnGathering.Of(current, [.. cellOf.Select(cell => groups.GroupOf[cell])]);
            CellBox[] wider = [.. cellOf.Select(cell => groups.Boxes[cell])];
            HeatMultigridLevel level = new(current, new CellGroups(groupOf, wider));
            levels.Add(level);
            current = level.WiderMatrix(boxes);
            boxes = wider;
        }

        return CholeskyFactor.Factor(SparseOf(current)).Factor is { } coarsest ? new HeatMultigrid(levels, coarsest) : null;
    }

    /// <inheritdoc/>
    public void Apply(ReadOnlySpan<double> residual, Span<double> result)
    {
        if (_levels.Count == 0)
        {
            _coarsest.Solve(residual, result);
            return;
        }

        HeatMultigridLevel.Narrow(residual, _levels[0].Given);
        Cycle(0);
        Widen(_levels[0].Values, result);
    }

    private void Cycle(int depth)
    {
        HeatMultigridLevel level = _levels[depth];
        level.SweepFromZero();
        if (depth + 1 < _levels.Count)
        {
            level.Restrict(_levels[depth + 1].Given);
            Cycle(depth + 1);
            level.Prolong(_levels[depth + 1].Values);
        }
        else
        {
            level.Restrict(_coarsestRight);
            Widen(_coarsestRight, _coarsestGiven);
            _coarsest.Solve(_coarsestGiven, _coarsestValues);
            HeatMultigridLevel.Narrow(_coarsestValues, _coarsestRight);
            level.Prolong(_coarsestRight);
        }

        level.SweepBack();
    }

    private static void Widen(ReadOnlySpan<float> from, Span<double> to)
    {
        for (int n = 0; n < from.Length; n++)
        {
            to[n] = from[n];
        }
    }

    private static SymmetricSparseMatrix SparseOf(HeatMatrix matrix)
    {
        SparseMatrixBuilder builder = new(matrix.Size, 4 * matrix.Size);
        for (int n = 0; n < matrix.Size; n++)
        {
            builder.Add(n, n, matrix.Diagonal[n]);
            if (matrix.Down[n] > 0)
            {
                builder.Add(n, n + 1, -matrix.Down[n]);
            }
        }

        for (int column = 0; column < matrix.Columns; column++)
        {
            for (int k = matrix.Start[column]; k < matrix.Start[column + 1]; k++)
            {
                for (int p = 0; matrix.Neighbour[k] > column && p < matrix.Planes; p++)
                {
                    if (matrix.Coupling[(k * matrix.Planes) + p] is var coupling && coupling > 0)
                    {
                        builder.Add((column * matrix.Planes) + p, (matrix.Neighbour[k] * matrix.Planes) + p, -coupling);
                    }
                }
            }
        }

        return builder.Build();
    }
}
