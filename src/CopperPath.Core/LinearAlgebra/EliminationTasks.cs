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
    private readonly int[] _childCount;

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
        _childCount = new int[_ranges.Count];
        for (int t = 0; t < _ranges.Count; t++)
        {
            int parent = structure.Parent[_ranges[t].Last];
            _parent[t] = parent == -1 ? -1 : taskOf[parent];
            if (parent != -1)
            {
                _childCount[_parent[t]]++;
            }
        }
    }

    /// <summary>Runs every task, giving each thread a workspace of its own.</summary>
    /// <param name="threads">Number of threads; one or more.</param>
    /// <param name="createWorkspace">Called once on each thread.</param>
    /// <param name="run">Processes the supernodes from the first to the last number given, in ascending order.</param>
    public void Run<TWorkspace>(int threads, Func<TWorkspace> createWorkspace, Action<TWorkspace, int, int> run)
    {
        if (threads <= 1)
        {
            TWorkspace workspace = createWorkspace();
            foreach ((int first, int last) in _ranges)
            {
                run(workspace, first, last);
            }

            return;
        }

        int[] waitingFor = [.. _childCount];
        Queue<int> ready = new();
        for (int t = 0; t < waitingFor.Length; t++)
        {
            if (waitingFor[t] == 0)
            {
                ready.Enqueue(t);
            }
        }

        object gate = new();
        int unfinished = _ranges.Count;
        bool isAbandoned = false;

        void Work()
        {
            TWorkspace workspace = createWorkspace();
            while (true)
            {
                int task;
                lock (gate)
                {
                    while (ready.Count == 0 && unfinished > 0 && !isAbandoned)
                    {
                        Monitor.Wait(gate);
                    }

                    if (unfinished == 0 || isAbandoned)
                    {
                        return;
                    }

                    task = ready.Dequeue();
                }

                bool completed = false;
                try
                {
                    run(workspace, _ranges[task].First, _ranges[task].Last);
                    completed = true;
                }
                finally
                {
                    lock (gate)
                    {
                        unfinished--;
                        isAbandoned |= !completed;
                        int parent = _parent[task];
                        if (parent != -1 && --waitingFor[parent] == 0)
                        {
                            ready.Enqueue(parent);
                        }

                        Monitor.PulseAll(gate);
                    }
                }
            }
        }

        Task[] others = new Task[threads - 1];
        for (int t = 0; t < others.Length; t++)
        {
            others[t] = Task.Factory.StartNew(
                Work, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        }

        Work();
        Task.WaitAll(others);
    }
}
