namespace CopperPath.Electrical;

/// <summary>
/// A straight cut across one layer of a net, square to the local current, from edge to edge of the copper.
/// </summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="FromXM">One end on the edge of the copper, metres.</param>
/// <param name="FromYM">One end, metres.</param>
/// <param name="ToXM">The other end, metres.</param>
/// <param name="ToYM">The other end, metres.</param>
/// <param name="AtXM">The point the cut was made through: the densest current nearby, metres.</param>
/// <param name="AtYM">The same point, metres.</param>
/// <param name="WidthM">Copper crossed, plated holes of the net and contacts left out, metres.</param>
/// <param name="CurrentA">Current through the cut, amperes, positive.</param>
/// <param name="PeakSheetCurrentAPerM">Largest sheet current in the copper along the cut, amperes per metre.</param>
public sealed record Section(
    int Layer,
    double FromXM,
    double FromYM,
    double ToXM,
    double ToYM,
    double AtXM,
    double AtYM,
    double WidthM,
    double CurrentA,
    double PeakSheetCurrentAPerM)
{
    /// <summary>Conducting thickness over that of the copper alone, mean over the cut: above 1 where solder carries a part.</summary>
    public double ThicknessRatio { get; init; } = 1;

    /// <summary>Triangle of the layer's mesh that holds the point the cut was made through; -1 for a section of no mesh.</summary>
    internal int Triangle { get; init; } = -1;
}
