namespace CopperPath.Thermal;

/// <summary>The board between lines along both axes: cells in the plane times levels through its thickness.</summary>
public sealed class HeatGrid : HeatCells
{
    /// <param name="x">Columns.</param>
    /// <param name="y">Rows.</param>
    /// <param name="planes">Levels, top to bottom.</param>
    public HeatGrid(GridAxis x, GridAxis y, IReadOnlyList<HeatPlane> planes)
        : base(planes)
    {
        (X, Y) = (x, y);
        List<CellFace> faces = [];
        for (int column = 0; column < Count; column++)
        {
            if ((column % x.Count) + 1 < x.Count)
            {
                faces.Add(new CellFace(column, column + 1, true));
            }

            if (column + x.Count < Count)
            {
                faces.Add(new CellFace(column, column + x.Count, false));
            }
        }

        Faces = faces;
    }

    public GridAxis X { get; }

    public GridAxis Y { get; }

    public override int Count => X.Count * Y.Count;

    internal override IReadOnlyList<CellFace> Faces { get; }

    /// <summary>The levels above one another are neighbours: they are coupled most strongly.</summary>
    public int Node(int i, int j, int plane) => (((j * X.Count) + i) * Planes.Count) + plane;

    /// <summary>Area of a cell, square metres.</summary>
    public double CellAreaM2(int i, int j) => X.WidthM(i) * Y.WidthM(j);

    public override CellBox BoxOf(int column)
    {
        (int i, int j) = (column % X.Count, column / X.Count);
        return new CellBox(X.LinesM[i], Y.LinesM[j], X.LinesM[i + 1], Y.LinesM[j + 1]);
    }

    public override int ColumnAt(double xM, double yM) => (Y.CellAt(yM) * X.Count) + X.CellAt(xM);

    /// <summary>Groups of two or more cells along each axis, as narrow as possible; a width that joins too few is doubled.</summary>
    internal override IEnumerable<CellGroups> Coarsenings()
    {
        const double MostLeft = 0.9;
        const double Doubling = 2.001;
        IReadOnlyList<double> xLines = X.LinesM;
        IReadOnlyList<double> yLines = Y.LinesM;
        while (xLines.Count > 2 || yLines.Count > 2)
        {
            (int columns, int rows) = (xLines.Count - 1, yLines.Count - 1);
            double widestM = Doubling * Math.Min(NarrowestOf(xLines), NarrowestOf(yLines));
            (AxisGroups x, AxisGroups y) = (AxisGroups.Within(xLines, widestM), AxisGroups.Within(yLines, widestM));
            while (x.Count * y.Count > MostLeft * columns * rows)
            {
                widestM *= Doubling;
                (x, y) = (AxisGroups.Within(xLines, widestM), AxisGroups.Within(yLines, widestM));
            }

            yield return new CellGroups(
                [.. Enumerable.Range(0, columns * rows).Select(column => (y.GroupOf[column / columns] * x.Count) + x.GroupOf[column % columns])],
                [.. Enumerable.Range(0, x.Count * y.Count).Select(group => new CellBox(
                    x.LinesM[group % x.Count], y.LinesM[group / x.Count], x.LinesM[(group % x.Count) + 1], y.LinesM[(group / x.Count) + 1]))]);
            (xLines, yLines) = (x.LinesM, y.LinesM);
        }
    }

    private static double NarrowestOf(IReadOnlyList<double> linesM)
    {
        double narrowestM = double.PositiveInfinity;
        for (int k = 1; k < linesM.Count; k++)
        {
            narrowestM = Math.Min(narrowestM, linesM[k] - linesM[k - 1]);
        }

        return narrowestM;
    }
}
