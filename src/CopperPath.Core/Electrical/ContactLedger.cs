namespace CopperPath.Electrical;

/// <summary>
/// Kirchhoff's books: what each group feeds into sheets and barrels, recovered from the field and compared with
/// what the terminals were told to feed in.
/// </summary>
internal sealed class ContactLedger
{
    private readonly NodeMap _nodes;
    private readonly IReadOnlyList<BoundTerminal> _terminals;
    private readonly double[] _outflowA;

    public ContactLedger(NodeMap nodes, IReadOnlyList<BoundTerminal> terminals)
    {
        _nodes = nodes;
        _terminals = terminals;
        _outflowA = new double[nodes.Size];
    }

    /// <summary>Largest |recovered - given| current of any terminal node, amperes; includes the reference, which nothing forces.</summary>
    public double LargestErrorA { get; private set; }

    public void CountVertex(int group, double outflowA) => _outflowA[group] += outflowA;

    public void CountLink(BarrelLink link, double currentA)
    {
        _outflowA[link.UpperGroup] += currentA;
        _outflowA[link.LowerGroup] -= currentA;
    }

    public IReadOnlyList<TerminalResult> Results(IReadOnlyList<double> terminalV)
    {
        List<TerminalResult> results = [];
        Dictionary<int, double> errorA = [];
        HashSet<int> counted = [];
        for (int t = 0; t < _terminals.Count; t++)
        {
            int first = _nodes.FirstContactOf(t);
            double[] currents = new double[_nodes.FirstContactOf(t + 1) - first];
            for (int c = 0; c < currents.Length; c++)
            {
                int group = _nodes.GroupOfContact(first + c);
                currents[c] = counted.Add(group) ? _outflowA[group] : 0;
                int node = _nodes.NodeOf(group);
                errorA[node] = errorA.GetValueOrDefault(node) + currents[c] - (_terminals[t].CurrentA / currents.Length);
            }

            results.Add(new TerminalResult(_terminals[t], terminalV[t], currents));
        }

        LargestErrorA = errorA.Values.Max(Math.Abs);
        return results;
    }
}
