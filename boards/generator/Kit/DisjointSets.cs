namespace CopperPath.DemoBoards.Kit;

/// <summary>Union-find over the numbers 0 to n - 1.</summary>
public sealed class DisjointSets(int count)
{
    private readonly int[] _parent = [.. Enumerable.Range(0, count)];

    public int RootOf(int item)
    {
        while (_parent[item] != item)
        {
            _parent[item] = _parent[_parent[item]];
            item = _parent[item];
        }

        return item;
    }

    public void Join(int first, int second) => _parent[RootOf(first)] = RootOf(second);
}
