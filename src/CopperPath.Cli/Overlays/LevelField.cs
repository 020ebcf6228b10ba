using CopperPath.Geometry;

namespace CopperPath.Cli.Overlays;

/// <summary>A quantity of the whole board, sampled at the nodes of a lattice, to draw lines of equal value through.</summary>
/// <param name="BoxNm">First and last nodes lie on its edges.</param>
/// <param name="Columns">Nodes from left to right, at least 2.</param>
/// <param name="Rows">Nodes from bottom to top, at least 2.</param>
/// <param name="Values">Values row by row from the bottom, in the unit of the picture's scale; no line passes where one is not finite.</param>
/// <param name="LeastStep">Lines are never nearer to each other in value.</param>
public sealed record LevelField(BoxNm BoxNm, int Columns, int Rows, double[] Values, double LeastStep)
{
    /// <summary>Abscissa of a column, which may lie between two, nanometres.</summary>
    public double XNm(double column) => BoxNm.MinX + (column / (Columns - 1) * BoxNm.WidthNm);

    /// <summary>Ordinate of a row, likewise.</summary>
    public double YNm(double row) => BoxNm.MinY + (row / (Rows - 1) * BoxNm.HeightNm);

    /// <summary>Samples a quantity at nodes about as far apart as asked.</summary>
    /// <param name="boxNm">What to cover; not empty.</param>
    /// <param name="pitchNm">Distance of nodes, positive.</param>
    /// <param name="leastStep">Least step between lines.</param>
    /// <param name="valueAt">The quantity at a place in nanometres.</param>
    public static LevelField Sample(BoxNm boxNm, double pitchNm, double leastStep, Func<double, double, double> valueAt)
    {
        int columns = 1 + Math.Max(1, (int)Math.Round(boxNm.WidthNm / pitchNm));
        int rows = 1 + Math.Max(1, (int)Math.Round(boxNm.HeightNm / pitchNm));
        LevelField field = new(boxNm, columns, rows, new double[columns * rows], leastStep);
        for (int row = 0; row < rows; row++)
        {
            for (int column = 0; column < columns; column++)
            {
                field.Values[(row * columns) + column] = valueAt(field.XNm(column), field.YNm(row));
            }
        }

        return field;
    }

    /// <summary>
    /// The same with each value mixed with its neighbours' in the parts 1, 2, 1 along both axes: lines then pass the steps
    /// of the solver's own grid without jags, and shift by less than the distance of two nodes.
    /// </summary>
    public LevelField Smoothed()
    {
        double[] along = new double[Values.Length];
        double[] across = new double[Values.Length];
        for (int row = 0; row < Rows; row++)
        {
            for (int column = 0; column < Columns; column++)
            {
                int node = (row * Columns) + column;
                along[node] = Mixed(Values, node, 1, column, Columns);
            }
        }

        for (int row = 0; row < Rows; row++)
        {
            for (int column = 0; column < Columns; column++)
            {
                int node = (row * Columns) + column;
                across[node] = Mixed(along, node, Columns, row, Rows);
            }
        }

        return this with { Values = across };
    }

    /// <summary>A value and its two neighbours along one axis; at the ends the missing one is taken like the value itself.</summary>
    private static double Mixed(double[] values, int node, int stride, int place, int count)
    {
        double before = values[place > 0 ? node - stride : node];
        double after = values[place < count - 1 ? node + stride : node];
        return (before + (2 * values[node]) + after) / 4;
    }
}
