using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// Splits cells in which more heat is made than their copper could spread without a hot spot that the cell would hide: a narrow
/// neck between two lines of the grid is invisible in its conductances, not in its loss.
/// </summary>
internal static class SourceRefinement
{
    /// <summary>What a cell may hide of the loss of copper, kelvin.</summary>
    private const double AllowedK = 0.25;

    /// <summary>
    /// The same of the heat of parts, kelvin: it is laid on their pads evenly, and where temperature changes beside them cells are split later. A
    /// large part has hundreds of pads.
    /// </summary>
    private const double AllowedOfPartsK = 1;

    /// <summary>Places at which a hole's loss is laid: all round, so that all cells its wall lies in are alike.</summary>
    private const int PointsOfWall = 8;

    public static void Apply(HeatScene scene, CellTree tree)
    {
        List<(int Layer, double X, double Y, double W, double SizeM2)> points = [];
        foreach (TriangleLoss t in scene.Loss.Triangles)
        {
            points.Add((t.Layer, (t.A.XM + t.B.XM + t.C.XM) / 3, (t.A.YM + t.B.YM + t.C.YM) / 3, t.PowerW, t.AreaM2));
        }

        foreach ((BarrelCurrent barrel, double w) in scene.Loss.Barrels)
        {
            // The wall of a hole is a ring: cells as wide as the hole would not know how wide it is.
            double size = Math.Abs(Ring.SignedAreaNm2(barrel.Barrel.Outline)) * 1e-18 / 8;
            LevelsAlong(scene, barrel, w);
            PointNm[] wall = barrel.Barrel.Outline;
            for (int k = 0; k < PointsOfWall; k++)
            {
                PointNm at = wall[k * wall.Length / PointsOfWall];
                points.Add((barrel.UpperLayer, Units.MetresFromNm(at.X), Units.MetresFromNm(at.Y), w / PointsOfWall, size));
            }
        }

        foreach ((HeatPlace place, double powerW) in scene.Components)
        {
            foreach ((int layer, PointNm[] outline) in place.Areas)
            {
                BoxNm box = BoxNm.Of(outline);
                double area = Ring.SignedAreaNm2(outline) * 1e-18;
                double padW = powerW * area / place.AreaM2 * (AllowedK / AllowedOfPartsK);
                points.Add((layer, Units.MetresFromNm(box.Centre.X), Units.MetresFromNm(box.Centre.Y), padW, area / 16));
            }
        }

        int layers = scene.Stack.ThicknessM.Count;
        List<int> open = [.. Enumerable.Range(0, points.Count)];
        while (open.Count > 0)
        {
            Dictionary<(int Cell, int Layer), (double W, double Size)> sums = [];
            int[] cellOf = new int[open.Count];
            for (int k = 0; k < open.Count; k++)
            {
                (int layer, double x, double y, double w, double size) = points[open[k]];
                int cell = tree.LeafAt(x, y);
                cellOf[k] = cell;
                (double W, double Size) sum = sums.GetValueOrDefault((cell, layer));
                sums[(cell, layer)] = (sum.W + w, sum.Size + (w * size));
            }

            HashSet<int> split = [];
            foreach (((int cell, int layer), (double w, double size)) in sums.OrderBy(s => s.Key))
            {
                double meanSize = size / w;
                if (w / (2 * Math.PI * scene.CopperWPerMK * scene.Stack.ThicknessM[layer - 1]) > AllowedK && tree.BoxOf(cell).AreaM2 > meanSize)
                {
                    split.Add(cell);
                }
            }

            foreach (int cell in split)
            {
                tree.Split(cell);
            }

            List<int> left = [];
            for (int k = 0; k < open.Count; k++)
            {
                if (split.Contains(cellOf[k]))
                {
                    left.Add(open[k]);
                }
            }

            open = left;
        }
    }

    /// <summary>
    /// Between two layers a wall that makes heat is warmer by q L^2 / (8 k A) in its middle, the parabola of a rod with even heat q held at
    /// both ends: where that counts the laminate has levels that see it.
    /// </summary>
    private static void LevelsAlong(HeatScene scene, BarrelCurrent barrel, double w)
    {
        double perM = w / scene.Stack.BarrelLengthM(barrel.UpperLayer, barrel.LowerLayer);
        double wallWM = scene.CopperWPerMK * BarrelSection.AreaM2(barrel.Barrel.Feature, scene.Stack);
        for (int layer = barrel.UpperLayer; layer < barrel.LowerLayer; layer++)
        {
            double lengthM = scene.Stack.DielectricM[layer - 1];
            if (!scene.HasLevelsIn(layer - 1) && perM * lengthM * lengthM / (8 * wallWM) > AllowedK)
            {
                scene.BringLevelsCloser(layer - 1);
            }
        }
    }
}
