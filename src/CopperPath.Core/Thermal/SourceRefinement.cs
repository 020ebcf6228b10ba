using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// Splits cells in which more heat is made than their copper could spread without a hot spot that the cell would hide: a narrow
/// neck between two lines of the grid is invisible in its conductances, not in its loss.
/// </summary>
internal static class SourceRefinement
{
    /// <summary>What a cell may hide, kelvin.</summary>
    private const double AllowedK = 0.25;

    public static void Apply(HeatScene scene, CellTree tree)
    {
        List<(int Layer, double X, double Y, double W, double SizeM2)> points = [];
        foreach (TriangleLoss t in scene.Loss.Triangles)
        {
            points.Add((t.Layer, (t.A.XM + t.B.XM + t.C.XM) / 3, (t.A.YM + t.B.YM + t.C.YM) / 3, t.PowerW, t.AreaM2));
        }

        foreach ((CopperPath.Electrical.BarrelCurrent barrel, double w) in scene.Loss.Barrels)
        {
            // The wall of a hole is a ring: cells as wide as the hole would not know how wide it is.
            double size = Math.Abs(Ring.SignedAreaNm2(barrel.Barrel.Outline)) * 1e-18 / 8;
            points.Add((barrel.UpperLayer, Units.MetresFromNm(barrel.Barrel.Centre.X), Units.MetresFromNm(barrel.Barrel.Centre.Y), w, size));
        }

        foreach ((HeatPlace place, double powerW) in scene.Components)
        {
            foreach ((int layer, PointNm[] outline) in place.Areas)
            {
                BoxNm box = BoxNm.Of(outline);
                double area = Ring.SignedAreaNm2(outline) * 1e-18;
                points.Add((layer, Units.MetresFromNm(box.Centre.X), Units.MetresFromNm(box.Centre.Y), powerW * area / place.AreaM2, area / 16));
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
                if (w / (2 * Math.PI * 385 * scene.Stack.ThicknessM[layer - 1]) > AllowedK && tree.BoxOf(cell).AreaM2 > meanSize)
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
}
