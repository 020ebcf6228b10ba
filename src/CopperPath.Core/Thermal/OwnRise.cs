using CopperPath.Electrical;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// What the copper's own current adds to a board's temperatures: the board with all its heat, less the same board
/// without the loss of its copper.
/// </summary>
/// <param name="All">All heat.</param>
/// <param name="WithoutCopperLoss">Parts and warm sinks alone, on the same cells; null where copper alone heats the board.</param>
public sealed record OwnRise(TemperatureField All, TemperatureField? WithoutCopperLoss)
{
    /// <summary>The solve that failed, or else that of all heat.</summary>
    public ThermalResult Result => WithoutCopperLoss is { Result: { Status: not ThermalStatus.Solved } failed } ? failed : All.Result;

    /// <summary>What the copper's loss adds at a point of a layer, kelvin.</summary>
    /// <inheritdoc cref="TemperatureField.RiseK" path="/param"/>
    public double RiseK(int layer, double xM, double yM, Net? net = null) =>
        All.RiseK(layer, xM, yM, net) - (WithoutCopperLoss?.RiseK(layer, xM, yM, net) ?? 0);

    /// <summary>What it adds at the vertices of a net's mesh.</summary>
    public double[] AtVertices(SheetField sheet, Net? net = null) =>
        [.. Enumerable.Range(0, sheet.Mesh.VertexCount).Select(v => RiseK(sheet.Layer, sheet.Mesh.XM[v], sheet.Mesh.YM[v], net))];

    /// <summary>
    /// How far a difference may be off for the width of cells: from the same difference on the wider cells, which both solutions share
    /// (<see cref="CellEstimate"/>). Infinite where there is nothing to hold it against.
    /// </summary>
    /// <param name="reading">The value, from any solution of the same board.</param>
    public double EstimateK(Func<OwnRise, double> reading) => Coarser is not { } coarser ? double.PositiveInfinity
        : CellEstimate.Of(reading(this), reading(coarser), coarser.Coarser is { } coarsest ? reading(coarsest) : null);

    /// <summary>The same on the wider cells; null where there are none.</summary>
    internal OwnRise? Coarser => All.Coarser is not { } all ? null
        : WithoutCopperLoss is null ? new OwnRise(all, null)
        : WithoutCopperLoss.Coarser is { } without ? new OwnRise(all, without) : null;

    /// <summary>What a sentence about a chart relation adds: what the copper's loss adds on this board; nothing where none was solved.</summary>
    public string Beside(int layer, double xM, double yM) => Result.Status == ThermalStatus.Solved
        ? $", on this board the copper's own loss adds {QuantityText.TemperatureDifference(RiseK(layer, xM, yM))}" : "";

    /// <summary>Mean and largest of what it adds along a cut, kelvin.</summary>
    public (double MeanK, double PeakK) RiseAlong(Section section)
    {
        const int Samples = 9;
        double sum = 0;
        double peak = double.NegativeInfinity;
        for (int k = 0; k < Samples; k++)
        {
            double at = (k + 0.5) / Samples;
            double rise = RiseK(section.Layer,
                section.FromXM + (at * (section.ToXM - section.FromXM)), section.FromYM + (at * (section.ToYM - section.FromYM)));
            sum += rise;
            peak = Math.Max(peak, rise);
        }

        return (sum / Samples, peak);
    }
}
