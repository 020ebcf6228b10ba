namespace CopperPath.Thermal;

/// <summary>
/// How far temperatures in time may be off: twice what the steady rises on the same cells lack to those of the last steady solution, times
/// the largest square of the factor on the current there, and what steps and levels leave.
/// </summary>
/// <remarks>
/// A place that is hot for a short time only has not yet what wide cells leave in its steady state, and never more than they hide of its
/// heat; that is taken to be no more than <see cref="MostShare"/> of its rise.
/// </remarks>
internal sealed class WhatCellsLeave
{
    /// <summary>What steps in time and levels leave: the closed forms of ExactTransientTests are met within it.</summary>
    private const double StepsShare = 0.01;

    private const double MostShare = 0.2;

    private readonly double[] _allK;
    private readonly double[] _ownK;

    private WhatCellsLeave(double[] allK, double[] ownK) => (_allK, _ownK) = (allK, ownK);

    /// <param name="model">The cells that are taken through time.</param>
    /// <param name="conditions">As stated.</param>
    /// <param name="steady">Steady solutions.</param>
    /// <param name="load">Factors.</param>
    public static WhatCellsLeave Of(HeatModel model, HeatConditions conditions, SteadyHeat steady, LoadCase load)
    {
        OwnRise own = steady.Own;
        TemperatureField all = model.Solve(conditions, own.All);
        TemperatureField? without = own.WithoutCopperLoss is null ? null : model.Solve(conditions with { CurrentScale = 0 }, own.WithoutCopperLoss);
        HeatCells cells = model.Cells;
        double square = load.LargestSquare();
        double[] allK = new double[cells.NodeCount];
        double[] ownK = new double[cells.NodeCount];
        for (int column = 0; column < cells.Count; column++)
        {
            // Laminate is read as the copper layer above it.
            (double ofAllK, double ofOwnK) = (0, 0);
            CellBox box = cells.BoxOf(column);
            for (int p = 0; p < cells.Planes.Count; p++)
            {
                int node = (column * cells.Planes.Count) + p;
                if (cells.Planes[p].CopperLayer is > 0 and var layer)
                {
                    double hereK = all.Result.RiseK[node];
                    double besidesK = without?.Result.RiseK[node] ?? 0;
                    ofAllK = square * Math.Abs(own.All.RiseK(layer, box.CentreXM, box.CentreYM) - hereK);
                    ofOwnK = square * Math.Abs(own.RiseK(layer, box.CentreXM, box.CentreYM) - (hereK - besidesK));
                }

                (allK[node], ownK[node]) = (2 * ofAllK, 2 * ofOwnK);
            }
        }

        return new WhatCellsLeave(allK, ownK);
    }

    /// <summary>The field with all heat and how far it may be off.</summary>
    public TemperatureField OfAll(TemperatureField field) => With(field, _allK);

    /// <summary>The same of what the copper's own loss adds.</summary>
    public TemperatureField OfOwn(TemperatureField field) => With(field, _ownK);

    /// <summary>Beside the field one on the same cells that lies off it by the estimate, as <see cref="CellEstimate"/> reads it: twice the difference.</summary>
    private static TemperatureField With(TemperatureField field, double[] offK)
    {
        double[] riseK = field.Result.RiseK;
        double[] other = new double[riseK.Length];
        for (int n = 0; n < other.Length; n++)
        {
            double size = Math.Abs(riseK[n]);
            other[n] = riseK[n] - ((Math.Min(offK[n], MostShare * size) + (StepsShare * size)) / 2);
        }

        return field with { Coarser = field with { Result = field.Result with { RiseK = other } } };
    }
}
