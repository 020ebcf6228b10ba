namespace CopperPath.Thermal;

/// <summary>
/// Fits a grid to a solution on a coarser one: cells become narrow where temperature changes much from cell to cell, so
/// that it changes by about the same everywhere, as little as the number of nodes allows.
/// </summary>
internal static class GridFitting
{
    /// <summary>No cell narrower than this: half the gap between neighbouring nets of power boards (common practice, no source).</summary>
    private const double NarrowestM = 0.12e-3;

    /// <summary>Widths asked for grow by no more than this per metre of distance.</summary>
    private const double Growth = 0.12;

    /// <summary>Distance of the places at which a width is asked for.</summary>
    private const double StepM = 0.05e-3;

    private const int Halvings = 30;

    /// <param name="coarse">A grid and its solution.</param>
    /// <param name="widestM">Widest cell wanted anywhere.</param>
    /// <param name="nodes">Most nodes of the fitted grid.</param>
    public static (GridAxis X, GridAxis Y) Fit(TemperatureField coarse, double widestM, int nodes)
    {
        HeatGrid grid = coarse.Network.Grid;
        (double[] alongX, double[] alongY) = LargestSteps(grid, coarse.Result.RiseK);
        int columns = nodes / grid.Planes.Count;

        // The allowed change per cell, by halving its logarithm: more allowed, fewer cells.
        double low = 1e-6;
        double high = 1e3;
        for (int k = 0; k < Halvings; k++)
        {
            double middle = Math.Sqrt(low * high);
            (GridAxis x, GridAxis y) = With(middle);
            (low, high) = (long)x.Count * y.Count > columns ? (middle, high) : (low, middle);
        }

        return With(high);

        (GridAxis X, GridAxis Y) With(double allowedK) =>
            (Axis(grid.X, alongX, allowedK, widestM), Axis(grid.Y, alongY, allowedK, widestM));
    }

    /// <summary>Largest change of temperature across each line of the two axes, kelvin; 0 at the ends.</summary>
    private static (double[] AlongX, double[] AlongY) LargestSteps(HeatGrid grid, double[] riseK)
    {
        double[] alongX = new double[grid.X.Count + 1];
        double[] alongY = new double[grid.Y.Count + 1];
        for (int n = 0; n < riseK.Length; n++)
        {
            int cell = n / grid.Planes.Count;
            (int i, int j) = (cell % grid.X.Count, cell / grid.X.Count);
            if (i > 0)
            {
                alongX[i] = Math.Max(alongX[i], Math.Abs(riseK[n] - riseK[n - grid.Planes.Count]));
            }

            if (j > 0)
            {
                alongY[j] = Math.Max(alongY[j], Math.Abs(riseK[n] - riseK[n - (grid.Planes.Count * grid.X.Count)]));
            }
        }

        return (alongX, alongY);
    }

    private static GridAxis Axis(GridAxis axis, double[] stepsK, double allowedK, double widestM)
    {
        double fromM = axis.LinesM[0];
        double toM = axis.LinesM[^1];
        double[] widthsM = new double[Math.Max(2, (int)Math.Ceiling((toM - fromM) / StepM) + 1)];
        double spacingM = (toM - fromM) / (widthsM.Length - 1);
        for (int k = 0; k < widthsM.Length; k++)
        {
            int cell = axis.CellAt(fromM + (k * spacingM));
            double stepK = Math.Max(stepsK[cell], stepsK[cell + 1]);
            widthsM[k] = Math.Clamp(axis.WidthM(cell) * allowedK / Math.Max(stepK, 1e-12), Math.Min(NarrowestM, widestM), widestM);
        }

        for (int k = 1; k < widthsM.Length; k++)
        {
            widthsM[k] = Math.Min(widthsM[k], widthsM[k - 1] + (Growth * spacingM));
        }

        for (int k = widthsM.Length - 2; k >= 0; k--)
        {
            widthsM[k] = Math.Min(widthsM[k], widthsM[k + 1] + (Growth * spacingM));
        }

        return GridAxis.Fitted(fromM, toM, widthsM);
    }
}
