namespace CopperPath.Thermal;

/// <summary>Cells of an axis gathered into the cells of a coarser one.</summary>
/// <param name="LinesM">Lines of the coarser axis, metres.</param>
/// <param name="GroupOf">Coarser cell of each cell.</param>
internal sealed record AxisGroups(double[] LinesM, int[] GroupOf)
{
    public int Count => LinesM.Length - 1;

    /// <summary>Neighbours join while they stay within a width: narrow cells catch up with wide ones first.</summary>
    /// <param name="linesM">Lines of the axis, ascending.</param>
    /// <param name="widestM">Width no group of several cells passes.</param>
    public static AxisGroups Within(IReadOnlyList<double> linesM, double widestM)
    {
        List<double> lines = [linesM[0]];
        int[] groupOf = new int[linesM.Count - 1];
        for (int cell = 0; cell < groupOf.Length; cell++)
        {
            if (linesM[cell + 1] - lines[^1] > widestM && linesM[cell] > lines[^1])
            {
                lines.Add(linesM[cell]);
            }

            groupOf[cell] = lines.Count - 1;
        }

        lines.Add(linesM[^1]);
        return new AxisGroups([.. lines], groupOf);
    }
}
