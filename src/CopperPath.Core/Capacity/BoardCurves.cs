using CopperPath.Electrical;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Capacity;

/// <summary>Current against width of one straight trace on one layer of a real board, beside the published relations.</summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="RiseK">Mean rise of the trace, kelvin.</param>
/// <param name="Points">From narrow to wide.</param>
public sealed record BoardCurve(int Layer, double RiseK, IReadOnlyList<BoardCurvePoint> Points);

/// <summary>One width of a curve.</summary>
/// <param name="WidthM">Width of the trace, metres.</param>
/// <param name="BoardA">Current by this board's own heat solve, amperes; null where none gives the rise.</param>
/// <param name="ByIpc2221">Current by the IPC-2221 relation.</param>
/// <param name="ByFit">Current by the IPC-2152-style fit, which is for outer layers without planes.</param>
public sealed record BoardCurvePoint(double WidthM, double? BoardA, CurrentEstimate ByIpc2221, CurrentEstimate ByFit);

/// <summary>Makes the curves of a board.</summary>
public static class BoardCurves
{
    /// <summary>Widths of the curves, metres.</summary>
    public static readonly IReadOnlyList<double> WidthsM = [0.25e-3, 0.5e-3, 1e-3, 2e-3, 5e-3, 10e-3, 20e-3];

    /// <summary>Rises of the curves, kelvin.</summary>
    public static readonly IReadOnlyList<double> RisesK = [10, 20, 30];

    /// <summary>Traces wider than this share of the board are left out.</summary>
    private const double WidestShare = 0.5;

    /// <param name="trace">Board and cooling; its layer is set to each asked for.</param>
    /// <param name="layers">Layers to make curves for.</param>
    public static IReadOnlyList<BoardCurve> Of(StraightTrace trace, IReadOnlyList<int> layers)
    {
        double[] widths = [.. WidthsM.Where(width => width <= WidestShare * trace.BoardWidthM)];
        (int Layer, double RiseK, double WidthM)[] wanted = [.. layers.SelectMany(layer => RisesK.SelectMany(rise => widths.Select(width => (layer, rise, width))))];
        double?[] currents = new double?[wanted.Length];
        Parallel.For(0, wanted.Length, k => currents[k] = (trace with { Layer = wanted[k].Layer }).CurrentFor(wanted[k].RiseK, wanted[k].WidthM));
        return [.. wanted.Zip(currents).GroupBy(pair => (pair.First.Layer, pair.First.RiseK))
            .Select(curve => new BoardCurve(curve.Key.Layer, curve.Key.RiseK,
                [.. curve.Select(pair => PointOf(trace.Stack, pair.First, pair.Second))]))];
    }

    private static BoardCurvePoint PointOf(Stackup stack, (int Layer, double RiseK, double WidthM) at, double? boardA)
    {
        double thicknessM = stack.ThicknessM[at.Layer - 1];
        return new BoardCurvePoint(at.WidthM, boardA,
            Ipc2221.Current(at.RiseK, at.WidthM * thicknessM, PlacementOf(stack, at.Layer)),
            Ipc2152StyleFit.Current(at.RiseK, at.WidthM, thicknessM));
    }

    private static ConductorPlacement PlacementOf(Stackup stack, int layer) =>
        layer == 1 || layer == stack.ThicknessM.Count ? ConductorPlacement.External : ConductorPlacement.Internal;
}
