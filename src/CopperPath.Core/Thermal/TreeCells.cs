namespace CopperPath.Thermal;

/// <summary>The leaves of a <see cref="CellTree"/> as columns.</summary>
internal sealed class TreeCells : HeatCells
{
    private readonly CellBox[] _boxes;
    private readonly int[] _cellOf;
    private readonly int[] _columnOf;

    /// <param name="tree">Cells; not to be changed afterwards.</param>
    /// <param name="planes">Levels, top to bottom.</param>
    public TreeCells(CellTree tree, IReadOnlyList<HeatPlane> planes)
        : base(planes)
    {
        Tree = tree;
        _cellOf = [.. tree.Leaves()];
        _columnOf = new int[tree.CellCount];
        Array.Fill(_columnOf, -1);
        for (int column = 0; column < _cellOf.Length; column++)
        {
            _columnOf[_cellOf[column]] = column;
        }

        _boxes = [.. _cellOf.Select(tree.BoxOf)];
        (Faces, SharedSides) = FacesOf();
    }

    public CellTree Tree { get; }

    public override int Count => _cellOf.Length;

    internal override IReadOnlyList<CellFace> Faces { get; }

    internal override IReadOnlyList<SharedSide> SharedSides { get; }

    /// <summary>Laminate below a level, counted from the top.</summary>
    public int LaminateBelow(int plane)
    {
        int laminate = -1;
        for (int p = 0; p <= plane; p++)
        {
            laminate += Planes[p].CopperLayer > 0 ? 1 : 0;
        }

        return laminate;
    }

    /// <summary>Cell of the tree that a column is.</summary>
    public int CellOf(int column) => _cellOf[column];

    /// <summary>Column that a leaf of the tree is.</summary>
    public int ColumnOf(int leaf) => _columnOf[leaf];

    public override CellBox BoxOf(int column) => _boxes[column];

    public override int ColumnAt(double xM, double yM) => _columnOf[Tree.LeafAt(xM, yM)];

    /// <summary>Again and again: four leaves of one cell become that cell.</summary>
    internal override IEnumerable<CellGroups> Coarsenings()
    {
        int[] cells = _cellOf;
        int[] columnOf = [.. _columnOf];
        while (cells.Length > 1)
        {
            List<int> wider = [];
            int[] groupOf = new int[cells.Length];
            Gather(CellTree.Root);
            yield return new CellGroups(groupOf, [.. wider.Select(Tree.BoxOf)]);
            Array.Fill(columnOf, -1);
            for (int group = 0; group < wider.Count; group++)
            {
                columnOf[wider[group]] = group;
            }

            cells = [.. wider];

            void Gather(int cell)
            {
                if (!Tree.IsThere(cell))
                {
                    return;
                }

                if (columnOf[cell] >= 0)
                {
                    groupOf[columnOf[cell]] = wider.Count;
                    wider.Add(cell);
                    return;
                }

                bool isGathered = true;
                for (int quarter = 0; quarter < 4; quarter++)
                {
                    int child = Tree.Child(cell, quarter);
                    isGathered &= !Tree.IsThere(child) || columnOf[child] >= 0;
                }

                for (int quarter = 0; quarter < 4; quarter++)
                {
                    int child = Tree.Child(cell, quarter);
                    if (!isGathered)
                    {
                        Gather(child);
                    }
                    else if (Tree.IsThere(child))
                    {
                        groupOf[columnOf[child]] = wider.Count;
                    }
                }

                if (isGathered)
                {
                    wider.Add(cell);
                }
            }
        }
    }

    private (List<CellFace> Faces, List<SharedSide> Shared) FacesOf()
    {
        List<CellFace> faces = [];
        List<(int Column, int Side)> besideWider = [];
        int[] faceAt = new int[4 * Count];
        for (int column = 0; column < Count; column++)
        {
            for (int side = 0; side < 4; side++)
            {
                // A side belongs to the narrower column; between two alike, to the western or southern one.
                int cell = _cellOf[column];
                int other = Tree.Neighbour(cell, side);
                if (other < 0 || !Tree.IsLeaf(other))
                {
                    continue;
                }

                bool isBesideWider = Tree.SplitsOf(other) < Tree.SplitsOf(cell);
                if ((side & 1) == 1 || isBesideWider)
                {
                    int next = _columnOf[other];
                    faceAt[(4 * column) + side] = faces.Count;
                    faces.Add((side & 1) == 1 ? new CellFace(column, next, side < 2) : new CellFace(next, column, side < 2));
                    if (isBesideWider)
                    {
                        besideWider.Add((column, side));
                    }
                }
            }
        }

        // The two on one side of a wider column come from one cell, so that the southern or western one knows the other.
        List<SharedSide> shared = [];
        foreach ((int column, int side) in besideWider)
        {
            int along = side < 2 ? 3 : 1;
            int next = Tree.Neighbour(_cellOf[column], along);
            if (next >= 0 && Tree.IsLeaf(next) && Tree.AreSiblings(_cellOf[column], next))
            {
                shared.Add(new SharedSide(
                    faceAt[(4 * column) + side], faceAt[(4 * _columnOf[next]) + side], faceAt[(4 * column) + along]));
            }
        }

        return (faces, shared);
    }
}
