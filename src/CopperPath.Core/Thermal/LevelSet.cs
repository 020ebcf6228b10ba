using CopperPath.Electrical;

namespace CopperPath.Thermal;

/// <summary>
/// Where the levels of a board lie, top to bottom: on every copper layer, and inside laminates, there the closer the nearer they are to
/// copper. It is kept apart from thicknesses, so that a build a little thicker or thinner has the same levels.
/// </summary>
public sealed class LevelSet
{
    /// <summary>A laminate, counted from the top, and the part of it between two levels.</summary>
    private readonly (int Laminate, double Share)[] _gaps;

    private LevelSet(int[] copperLayers, (int Laminate, double Share)[] gaps) => (CopperLayers, _gaps) = (copperLayers, gaps);

    /// <summary>Number of levels.</summary>
    public int Count => CopperLayers.Length;

    /// <summary>Copper layer of each level, 1 = top; 0 inside laminate.</summary>
    private int[] CopperLayers { get; }

    /// <param name="stack">Copper and dielectric thicknesses.</param>
    /// <param name="belowM">Laminate below the last copper layer, metres: the carrier of a board with one copper layer; else 0.</param>
    /// <param name="finestM">
    /// For each laminate from the top, and the one below: a gap between levels is halved while it is wider than this and than a share of its
    /// distance from the nearest copper, metres.
    /// </param>
    /// <param name="thickestGapM">No gap is wider than this, metres.</param>
    /// <param name="distanceShare">That share.</param>
    public static LevelSet Of(Stackup stack, double belowM, IReadOnlyList<double> finestM, double thickestGapM, double distanceShare = 1)
    {
        List<int> layers = [];
        List<(int, double)> gaps = [];
        for (int layer = 1; layer <= stack.ThicknessM.Count; layer++)
        {
            layers.Add(layer);
            bool isLast = layer == stack.ThicknessM.Count;
            double laminateM = LaminateM(stack, belowM, layer - 1);
            if (laminateM > 0)
            {
                double[] shares = SharesOf(laminateM, hasCopperBelow: !isLast, finestM[layer - 1], thickestGapM, distanceShare);
                foreach (double share in shares)
                {
                    gaps.Add((layer - 1, share));
                    layers.Add(0);
                }

                if (!isLast)
                {
                    layers.RemoveAt(layers.Count - 1);
                }
            }
        }

        return new LevelSet([.. layers], [.. gaps]);
    }

    /// <summary>The levels in a build-up.</summary>
    /// <param name="stack">Copper and dielectric thicknesses.</param>
    /// <param name="belowM">Laminate below the last copper layer, metres; else 0.</param>
    public IReadOnlyList<HeatPlane> In(Stackup stack, double belowM)
    {
        double[] gapsM = [.. _gaps.Select(gap => gap.Share * LaminateM(stack, belowM, gap.Laminate)), 0];
        return [.. CopperLayers.Select((layer, p) => new HeatPlane(
            layer, layer > 0 ? stack.ThicknessM[layer - 1] : 0, ((p > 0 ? gapsM[p - 1] : 0) + gapsM[p]) / 2, gapsM[p]))];
    }

    private static double LaminateM(Stackup stack, double belowM, int laminate) =>
        laminate < stack.DielectricM.Count ? stack.DielectricM[laminate] : belowM;

    /// <summary>Parts of a laminate from the top, as shares of it.</summary>
    private static double[] SharesOf(double laminateM, bool hasCopperBelow, double finestM, double thickestGapM, double distanceShare)
    {
        int parts = Math.Max(1, (int)Math.Ceiling((laminateM / thickestGapM) - 1e-9));
        List<double> shares = [.. Enumerable.Repeat(1.0 / parts, parts)];
        for (bool isHalved = true; isHalved;)
        {
            isHalved = false;
            List<double> halved = [];
            double above = 0;
            foreach (double share in shares)
            {
                double fromCopper = hasCopperBelow ? Math.Min(above, 1 - above - share) : above;
                above += share;
                if (share * laminateM > (1 + 1e-9) * Math.Max(finestM, distanceShare * fromCopper * laminateM))
                {
                    halved.AddRange([share / 2, share / 2]);
                    isHalved = true;
                }
                else
                {
                    halved.Add(share);
                }
            }

            shares = halved;
        }

        return [.. shares];
    }
}
