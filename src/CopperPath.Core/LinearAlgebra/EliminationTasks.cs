namespace CopperPath.LinearAlgebra;

/// <summary>
/// Cuts the supernode tree into tasks that may run at the same time: whole subtrees near the leaves, single supernodes
/// near the root. A task starts when the tasks below it are done.
/// </summary>
/// <remarks>
/// Which thread runs a task, and when, changes nothing in the result: a task reads only what its own subtree left.
/// </remarks>
internal sealed class EliminationTasks
{
    /// <summary>Subtrees are cut off where they hold about this share of all operations.</summary>
    private const double SubtreeShare = 1.0 / 64;

    private readonly List<(int First, int Last)> _ranges = [];
    private readonly int[] _parent;
    private readonly List<int>[] _branches;

    public EliminationTasks(SupernodalStructure structure)
    {
        int count = structure.Count;
        int[] firstDescendant = new int[count];
        double[] operations = new double[count];
        for (int s = 0; s < count; s++)
        {
            firstDescendant[s] = s;
        }

        for (int s = 0; s < count; s++)
        {
            operations[s] += structure.Operations(s);
            int parent = structure.Parent[s];
            if (parent != -1)
            {
                operations[parent] += operations[s];
                firstDescendant[parent] = Math.Min(firstDescendant[parent], firstDescendant[s]);
            }
        }

        double limit = structure.OperationCount * SubtreeShare;
        int[] taskOf = new int[count];
        for (int s = 0; s < count; s++)
        {
            int parent = structure.Parent[s];
            bool isWhole = operations[s] <= limit;
            if (isWhole && parent != -1 && operations[parent] <= limit)
            {
                continue;
            }

            taskOf[s] = _ranges.Count;
            _ranges.Add((isWhole ? firstDescendant[s] : s, s));
        }

        _parent = new int[_ranges.Count];
        _branches = new List<int>[_ranges.Count];
        for (int t = 0; t < _ranges.Count; t++)
        {
            _branches[t] = [];
            int parent = structure.Parent[_ranges[t].Last];
            _parent[t] = parent == -1 ? -1 : taskOf[parent];
        }

        for (int t = 0; t < _ranges.Count; t++)
        {
            if (_parent[t] != -1)
            {
                _branches[_parent[t]].Add(t);
            }
        }
    }

    /// <summary>Number of tasks, numbered branches before what they hang on.</summary>
    public int Count => _ranges.Count;

    /// <summary>First and last supernode of a task; the last is the one all others hang on.</summary>
    public (int First, int Last) RangeOf(int task) => _ranges[task];

    /// <summary>The tasks that hang on a task, ascending.</summary>
    public IReadOnlyList<int> BranchesOf(int task) => _branches[task];

    /// <summary>Runs every task after its branches.</summary>
    /// <param name="threads">Number of threads; one or more.</param>
    /// <param name="createWorkspace">Called on each thread that finds work, for something of its own to work with.</param>
    /// <param name="run">Does the task of the given number.</param>
    public void RunUpwards<TWorkspace>(int threads, Func<TWorkspace> createWorkspace, Action<TWorkspace, int> run)
        where TWorkspace : IDisposable =>
        Run([.. _branches.Select(branches => branches.Count)], task => _parent[task] == -1 ? [] : [_parent[task]], threads, createWorkspace, run);

    /// <summary>Runs every task before its branches; otherwise as <see cref="RunUpwards"/>.</summary>
    public void RunDownwards<TWorkspace>(int threads, Func<TWorkspace> createWorkspace, Action<TWorkspace, int> run)
        where TWorkspace : IDisposable =>
        Run([.. _parent.Select(parent => parent == -1 ? 0 : 1)], BranchesOf, threads, createWorkspace, run);

    private static void Run<TWorkspace>(
        int[] waitingFor, Func<int, IReadOnlyList<int>> followers, int threads, Func<TWorkspace> createWorkspace, Action<TWorkspace, int> run)
        where TWorkspace : IDisposable
    {
        Queue<int> ready = new(Enumerable.Range(0, waitingFor.Length).Where(task => waitingFor[task] == 0));
        object gate = new();
        int unfinished = waitingFor.Length;
        bool isAbandoned = false;
        Task[] others = new Task[threads - 1];
        for (int t = 0; t < others.Length; t++)
        {
            others[t] = Task.Run(Work);
        }

        Work();
        Task.WaitAll(others);

        void Work()
        {
            if (!TryTake(out int task))
            {
                return;
            }

            using TWorkspace workspace = createWorkspace();
            do
            {
                bool isCompleted = false;
                try
                {
                    run(workspace, task);
                    isCompleted = true;
                }
                finally
                {
                    Finish(task, isCompleted);
                }
            }
            while (TryTake(out task));
        }

        bool TryTake(out int task)
        {
            lock (gate)
            {
                while (ready.Count == 0 && unfinished > 0 && !isAbandoned)
                {
                    Monitor.Wait(gate);
                }

                bool isTaken = unfinished > 0 && !isAbandoned;
                task = isTaken ? ready.Dequeue() : -1;
                return isTaken;
            }
        }

        void Finish(int task, bool isCompleted)
        {
            lock (gate)
            {
                unfinished--;
                isAbandoned |= !isCompleted;
                foreach (int follower in followers(task))
                {
                    if (--waitingFor[follower] == 0)
                    {
                        ready.Enqueue(follower);
                    }
                }

                Monitor.PulseAll(gate);
            }
        }
    }
}
