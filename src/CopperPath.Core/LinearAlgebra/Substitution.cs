using System.Buffers;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace CopperPath.LinearAlgebra;

/// <summary>
/// Solves with a factor, L y = b from the leaves of the elimination tree to its root and Lᵀ x = y back again, branches
/// side by side on all threads.
/// </summary>
/// <remarks>
/// A branch keeps to itself what it takes from the unknowns above it, in a block its parent adds in; branches are added
/// in ascending order and are the same for any number of threads, so the sums are too.
/// </remarks>
internal sealed class Substitution<TKernel>
    where TKernel : struct, ISubstitutionKernel
{
    private readonly SupernodalStructure _structure;
    private readonly double[] _values;
    private readonly EliminationTasks _tasks;
    private readonly double[] _y;

    /// <summary>For each branch, by its last supernode: what it adds to that supernode's rows above it.</summary>
    private readonly double[]?[] _passedUp;
    private readonly int _mostRows;

    private Substitution(SupernodalStructure structure, double[] values, EliminationTasks tasks, double[] y)
    {
        _structure = structure;
        _values = values;
        _tasks = tasks;
        _y = y;
        _passedUp = new double[tasks.Count][];
        for (int s = 0; s < structure.Count; s++)
        {
            _mostRows = Math.Max(_mostRows, structure.RowCount(s));
        }
    }

    /// <summary>Solves in place.</summary>
    /// <param name="structure">Shape of the factor.</param>
    /// <param name="values">Its values.</param>
    /// <param name="tasks">Its branches.</param>
    /// <param name="y">Rows of right-hand sides in the eliminated order; the solutions on return.</param>
    /// <param name="threads">Number of threads; one or more.</param>
    public static void Run(
        SupernodalStructure structure, double[] values, EliminationTasks tasks, double[] y, int threads)
    {
        Substitution<TKernel> substitution = new(structure, values, tasks, y);
        tasks.RunUpwards(threads, substitution.NewWorkspace, substitution.Forward);
        tasks.RunDownwards(threads, substitution.NewWorkspace, substitution.Backward);
    }

    private Workspace NewWorkspace() => new(_structure.Size, _mostRows * TKernel.Width);

    private void Forward(Workspace workspace, int task)
    {
        (int first, int last) = _tasks.RangeOf(task);
        int end = _structure.ColumnStarts[last + 1];
        ReadOnlySpan<int> above = RowsAbove(last);
        double[] passedUp = ArrayPool<double>.Shared.Rent(above.Length * TKernel.Width);
        Array.Clear(passedUp, 0, above.Length * TKernel.Width);
        int[] place = workspace.Place;
        for (int t = 0; t < above.Length; t++)
        {
            place[above[t]] = t;
        }

        ref double outside = ref MemoryMarshal.GetArrayDataReference(passedUp);
        AddBranches(task, end, place, ref outside);
        for (int s = first; s <= last; s++)
        {
            Forward(s, end, place, ref outside, workspace);
        }

        _passedUp[task] = passedUp;
    }

    private void AddBranches(int task, int end, int[] place, ref double outside)
    {
        ref double y = ref MemoryMarshal.GetArrayDataReference(_y);
        foreach (int branch in _tasks.BranchesOf(task))
        {
            double[] passed = _passedUp[branch]!;
            ReadOnlySpan<int> rows = RowsAbove(_tasks.RangeOf(branch).Last);
            for (int i = 0; i < rows.Length; i++)
            {
                ref double target = ref rows[i] < end ? ref RowOf(ref y, rows[i]) : ref RowOf(ref outside, place[rows[i]]);
                TKernel.Add(ref passed[i * TKernel.Width], ref target);
            }

            ArrayPool<double>.Shared.Return(passed);
            _passedUp[branch] = null;
        }
    }

    private void Forward(int supernode, int end, int[] place, ref double outside, Workspace workspace)
    {
        ReadOnlySpan<int> rows = _structure.RowsOf(supernode);
        int columns = _structure.ColumnCount(supernode);
        ref double y = ref MemoryMarshal.GetArrayDataReference(_y);
        ref double sums = ref MemoryMarshal.GetArrayDataReference(workspace.Rows);
        TKernel.Forward(ref BlockOf(supernode), rows.Length, columns, ref RowOf(ref y, rows[0]), ref sums);
        int i = columns;
        for (; i < rows.Length && rows[i] < end; i++)
        {
            TKernel.Subtract(ref sums, ref RowOf(ref y, rows[i]));
            sums = ref Unsafe.Add(ref sums, TKernel.Width);
        }

        for (; i < rows.Length; i++)
        {
            TKernel.Subtract(ref sums, ref RowOf(ref outside, place[rows[i]]));
            sums = ref Unsafe.Add(ref sums, TKernel.Width);
        }
    }

    private void Backward(Workspace workspace, int task)
    {
        (int first, int last) = _tasks.RangeOf(task);
        for (int s = last; s >= first; s--)
        {
            Backward(s, workspace);
        }
    }

    private void Backward(int supernode, Workspace workspace)
    {
        ReadOnlySpan<int> rows = _structure.RowsOf(supernode);
        int columns = _structure.ColumnCount(supernode);
        ref double y = ref MemoryMarshal.GetArrayDataReference(_y);
        ref double gathered = ref MemoryMarshal.GetArrayDataReference(workspace.Rows);
        for (int i = 0; i < rows.Length; i++)
        {
            TKernel.Copy(ref RowOf(ref y, rows[i]), ref RowOf(ref gathered, i));
        }

        TKernel.Backward(ref BlockOf(supernode), rows.Length, columns, ref gathered);
        int own = columns * TKernel.Width;
        workspace.Rows.AsSpan(0, own).CopyTo(_y.AsSpan(rows[0] * TKernel.Width, own));
    }

    private ReadOnlySpan<int> RowsAbove(int supernode) => _structure.RowsOf(supernode)[_structure.ColumnCount(supernode)..];

    private ref double BlockOf(int supernode) => ref Unsafe.Add(
        ref MemoryMarshal.GetArrayDataReference(_values), (nint)_structure.ValueStarts[supernode]);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ref double RowOf(ref double rows, int row) => ref Unsafe.Add(ref rows, (nint)row * TKernel.Width);

    /// <summary>What one thread needs to itself; given back when the thread is done.</summary>
    private sealed class Workspace(int size, int numbers) : IDisposable
    {
        /// <summary>Place of each row in the block the branch passes up; meaningful for its rows only.</summary>
        public int[] Place { get; } = ArrayPool<int>.Shared.Rent(size);

        public double[] Rows { get; } = ArrayPool<double>.Shared.Rent(numbers);

        public void Dispose()
        {
            ArrayPool<int>.Shared.Return(Place);
            ArrayPool<double>.Shared.Return(Rows);
        }
    }
}
