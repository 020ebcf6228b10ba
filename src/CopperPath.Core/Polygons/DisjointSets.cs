namespace CopperPath.Polygons;

/// <summary>Union-find over 0..n-1; the smallest member stands for its set, whatever the order of joining.</summary>
internal sealed class DisjointSets
{
    private readonly int[] _parent;

    public DisjointSets(int count)
    {
        _parent = new int[count];
        for (int i = 0; i < count; i++)
        {
            _parent[i] = i;
        }
    }

    public int Find(int member)
    {
        while (_parent[member] != member)
        {
            _parent[member] = _parent[_parent[member]];
            member = _parent[member];
        }

        return member;
    }

    public void Join(int a, int b)
    {
        a = Find(a);
        b = Find(b);
        if (a < b)
        {
            _parent[b] = a;
        }
        else
        {
            _parent[a] = b;
        }
    }
}
