using CopperPath.Electrical;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// One straight trace in the middle of an otherwise empty layer: the case of the published charts, and with the
/// layers, size and cooling of a real board the case those charts can not give.
/// </summary>
/// <param name="LengthM">Length of the trace, metres; its ends meet nothing that would cool them.</param>
/// <param name="BoardLengthM">Board along the trace, metres, longer than the trace.</param>
/// <param name="BoardWidthM">Board across the trace, metres.</param>
/// <param name="Stack">Thicknesses; its resistivity is not used.</param>
/// <param name="BaseM">Laminate below the last copper layer, metres; for a board with one copper layer.</param>
/// <param name="Layer">Layer of the trace, 1 = top.</param>
/// <param name="CopperShares">
/// Copper of each layer as a share of the board, 0 to 1, spread evenly: 1 is a whole plane. That of the trace's own
/// layer does not count.
/// </param>
/// <param name="Materials">Conductivities.</param>
/// <param name="Cooling">Air and faces.</param>
public sealed record StraightTrace(
    double LengthM,
    double BoardLengthM,
    double BoardWidthM,
    Stackup Stack,
    double BaseM,
    int Layer,
    IReadOnlyList<double> CopperShares,
    ThermalMaterials Materials,
    Cooling Cooling)
{
    /// <summary>Cells are this many times finer than normal; for showing that normal is fine enough.</summary>
    public int Fineness { get; init; } = 1;

    private const double ThickestGapM = 0.25e-3;
    private const int CellsAlong = 24;
    private const int CellsAcross = 6;
    private const double Growth = 1.35;
    private const double WidestCellM = 6e-3;
    private const double CurrentTolerance = 1e-3;
    private const int MostTrials = 20;

    /// <summary>Temperatures of the trace with a current.</summary>
    /// <param name="currentA">Amperes, not negative.</param>
    /// <param name="widthM">Width of the trace, metres, below that of the board.</param>
    public TraceTemperatures Solve(double currentA, double widthM)
    {
        GridAxis x = GridAxis.Graded(
            -BoardLengthM / 2, BoardLengthM / 2, -LengthM / 2, LengthM / 2, LengthM / (CellsAlong * Fineness), 1.1, WidestCellM / Fineness);
        GridAxis y = GridAxis.Graded(
            -BoardWidthM / 2, BoardWidthM / 2, -widthM / 2, widthM / 2, widthM / (CellsAcross * Fineness),
            Math.Pow(Growth, 1.0 / Fineness), WidestCellM / Fineness);
        HeatGrid grid = new(x, y, HeatPlane.Of(Stack, BaseM, ThickestGapM / Fineness));
        int plane = grid.PlaneOf(Layer);
        CopperRaster trace = CopperRaster.OfRectangle(-LengthM / 2, -widthM / 2, LengthM / 2, widthM / 2, x, y);
        CopperRaster?[] copper = [.. grid.Planes.Select(level => level.CopperLayer == 0 ? null
            : level.CopperLayer == Layer ? trace : CopperRaster.Even(CopperShares[level.CopperLayer - 1], x, y))];
        HeatNetwork network = new(grid, CopperRaster.Full(x, y), copper, Materials);
        double atAmbient = CopperMaterial.Iacs.ResistivityOhmM(Cooling.AmbientK);
        HeatSources sources = new(grid.NodeCount)
        {
            ResistivityGrowthPerK = (CopperMaterial.Iacs.ResistivityOhmM(Cooling.AmbientK + 1) / atAmbient) - 1,
        };
        double perAreaW = currentA * currentA * atAmbient / (widthM * widthM * Stack.ThicknessM[Layer - 1]);
        for (int j = 0; j < y.Count; j++)
        {
            for (int i = 0; i < x.Count; i++)
            {
                sources.JouleAtAmbientW[grid.Node(i, j, plane)] = perAreaW * trace.AreaM2(i, j);
            }
        }

        ThermalResult result = ThermalSolver.Solve(network, sources, Cooling, []);
        return result.Status == ThermalStatus.Solved ? Read(result, grid, trace, plane) : new TraceTemperatures(result, double.NaN, double.NaN);
    }

    /// <summary>
    /// Current that gives the trace a mean rise, amperes; null where no current below runaway does.
    /// </summary>
    /// <param name="riseK">Mean rise over the trace, kelvin, positive.</param>
    /// <param name="widthM">Width of the trace, metres.</param>
    public double? CurrentFor(double riseK, double widthM)
    {
        // Rise grows nearly as the square of the current: Newton's method in logarithms, between bounds once they exist.
        double current = 10 * Math.Sqrt(riseK / 20 * widthM / 5e-3);
        double low = 0;
        double high = double.PositiveInfinity;
        for (int trial = 0; trial < MostTrials; trial++)
        {
            double mean = Solve(current, widthM).MeanK;
            (low, high) = mean <= riseK ? (current, high) : (low, current);
            double next = double.IsFinite(mean) ? current * Math.Pow(riseK / mean, 0.55) : current / 2;
            if (double.IsFinite(mean) && Math.Abs(next - current) <= CurrentTolerance * current)
            {
                return next;
            }

            current = next > low && next < high ? next : (low + high) / 2;
        }

        return null;
    }

    private static TraceTemperatures Read(ThermalResult result, HeatGrid grid, CopperRaster trace, int plane)
    {
        double weighted = 0;
        double areaM2 = 0;
        double peak = 0;
        for (int j = 0; j < grid.Y.Count; j++)
        {
            for (int i = 0; i < grid.X.Count; i++)
            {
                double rise = result.RiseK[grid.Node(i, j, plane)];
                weighted += trace.AreaM2(i, j) * rise;
                areaM2 += trace.AreaM2(i, j);
                peak = trace.AreaM2(i, j) > 0 ? Math.Max(peak, rise) : peak;
            }
        }

        return new TraceTemperatures(result, weighted / areaM2, peak);
    }
}

/// <summary>Rises of a trace, kelvin; not numbers where there is no steady state.</summary>
public sealed record TraceTemperatures(ThermalResult Board, double MeanK, double PeakK);
