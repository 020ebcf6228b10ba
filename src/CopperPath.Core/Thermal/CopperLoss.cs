using CopperPath.Electrical;
using CopperPath.Meshing;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// The loss of the electrical solve as heat: every triangle's and every barrel's, none lost. The current is held as it was
/// found at one temperature and in the nominal build; its loss follows resistivity and thickness.
/// </summary>
internal sealed class CopperLoss
{
    private readonly Stackup _nominal;

    private readonly TriangleLoss[][] _byLayer;

    private CopperLoss(Stackup nominal, IReadOnlyList<TriangleLoss> triangles, IReadOnlyList<(BarrelCurrent Barrel, double PowerW)> barrels)
    {
        (_nominal, Triangles, Barrels) = (nominal, triangles, barrels);
        ILookup<int, TriangleLoss> byLayer = triangles.ToLookup(triangle => triangle.Layer);
        _byLayer = [.. Enumerable.Range(0, nominal.ThicknessM.Count + 1).Select(layer => byLayer[layer].ToArray())];
    }

    /// <summary>Loss of every triangle, at the resistivity and in the build of the electrical solve.</summary>
    public IReadOnlyList<TriangleLoss> Triangles { get; }

    /// <summary>Loss of every stretch of plated hole, likewise, watts.</summary>
    public IReadOnlyList<(BarrelCurrent Barrel, double PowerW)> Barrels { get; }

    /// <param name="stretches">Solved stretches. Those of one net are parts of its current that add in power, such as direct and alternating.</param>
    /// <param name="nominal">Thicknesses and the resistivity of the solve.</param>
    public static CopperLoss Of(IReadOnlyList<HeatingStretch> stretches, Stackup nominal)
    {
        List<TriangleLoss> triangles = [];
        List<(BarrelCurrent, double)> barrels = [];
        foreach (HeatingStretch stretch in stretches)
        {
            TriangleLoss[][] sheets = new TriangleLoss[stretch.Conduction.Sheets.Count][];
            Parallel.For(0, sheets.Length, k =>
            {
                SheetField sheet = stretch.Conduction.Sheets[k];
                sheets[k] = [.. TrianglesOf(sheet, 1 / nominal.SheetConductanceS(sheet.Layer))];
            });
            double scale = ScaleOf(stretch, sheets.Sum(sheet => sheet.Sum(triangle => triangle.PowerW)));
            triangles.AddRange(sheets.SelectMany(sheet => sheet).Select(triangle => triangle with { PowerW = scale * triangle.PowerW }));
            barrels.AddRange(stretch.Conduction.Barrels.Select(barrel => (barrel, scale * barrel.CurrentA * barrel.CurrentA * barrel.ResistanceOhm)));
        }

        return new CopperLoss(nominal, triangles, barrels);
    }

    /// <summary>The loss in the nodes of columns.</summary>
    /// <param name="cells">The columns.</param>
    /// <param name="walls">Shares of the walls of plated holes by columns.</param>
    /// <param name="before">The same on cells of which these are made by splitting, where there is one: it tells where to look.</param>
    public LossOnCells On(
        TreeCells cells, IReadOnlyDictionary<Barrel, IReadOnlyList<(int Column, double Share)>> walls, LossOnCells? before)
    {
        int layers = _nominal.ThicknessM.Count;
        double[][] sheetW = [.. Enumerable.Range(0, layers + 1).Select(_ => new double[cells.Count])];
        int[][] holders = [.. _byLayer.Select(triangles => new int[triangles.Length])];
        Parallel.For(1, layers + 1, layer =>
        {
            double[] inCellW = new double[cells.Tree.CellCount];
            TriangleDivider divider = new(cells.Tree, inCellW);
            TriangleLoss[] triangles = _byLayer[layer];
            for (int t = 0; t < triangles.Length; t++)
            {
                holders[layer][t] = divider.Divide(triangles[t], before?.Holders[layer][t] ?? CellTree.Root);
            }

            for (int column = 0; column < cells.Count; column++)
            {
                sheetW[layer][column] = inCellW[cells.CellOf(column)];
            }
        });

        double[] barrelW = new double[cells.NodeCount];
        foreach ((BarrelCurrent barrel, double powerW) in Barrels)
        {
            AddBarrel(cells, walls[barrel.Barrel], barrel, powerW, barrelW);
        }

        return new LossOnCells(cells, _nominal, sheetW, barrelW) { Holders = holders };
    }

    /// <summary>The heat handed on is the loss that is reported, whatever the pattern of the current adds up to.</summary>
    private static double ScaleOf(HeatingStretch stretch, double sheetsW)
    {
        double balancedW = sheetsW + stretch.Conduction.Barrels.Sum(barrel => barrel.CurrentA * barrel.CurrentA * barrel.ResistanceOhm);
        return balancedW > 0 ? stretch.Share * stretch.Conduction.LossW / balancedW : 0;
    }

    private static IEnumerable<TriangleLoss> TrianglesOf(SheetField sheet, double sheetResistanceOhm)
    {
        SheetMesh mesh = sheet.Mesh;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            // Copper and solder above it lie in parallel: the field is that of the copper's part of the current.
            double squared = sheet.CopperShare(t) * MeanSquare(sheet, t);
            if (squared > 0)
            {
                TriangleLoss triangle = new(sheet.Layer, At(mesh, 3 * t), At(mesh, (3 * t) + 1), At(mesh, (3 * t) + 2), 0);
                yield return triangle with { PowerW = squared * sheetResistanceOhm * triangle.AreaM2 };
            }
        }

        static (double XM, double YM) At(SheetMesh mesh, int corner) => (mesh.XM[mesh.Triangles[corner]], mesh.YM[mesh.Triangles[corner]]);
    }

    /// <summary>
    /// Mean square of the sheet current over a triangle, (A/m)2: from its corners, between which it is linear, where they are known, since
    /// they tell better than the balanced current where in a constriction the loss lies; the sum is set right by <see cref="ScaleOf"/>.
    /// </summary>
    private static double MeanSquare(SheetField sheet, int triangle)
    {
        if (sheet.CornerCurrentAPerM.Length == 0)
        {
            return sheet.SheetCurrentAPerM(triangle) * sheet.SheetCurrentAPerM(triangle);
        }

        ReadOnlySpan<double> at = sheet.CornerCurrentAPerM.AsSpan(3 * triangle, 3);
        return ((at[0] * (at[0] + at[1])) + (at[1] * (at[1] + at[2])) + (at[2] * (at[2] + at[0]))) / 6;
    }

    /// <summary>A barrel's loss is spread evenly along its length: to each level the length nearest to it.</summary>
    private static void AddBarrel(
        TreeCells cells, IReadOnlyList<(int Column, double Share)> wall, BarrelCurrent barrel, double powerW, double[] barrelW)
    {
        int planes = cells.Planes.Count;
        int upper = cells.PlaneOf(barrel.UpperLayer);
        int lower = cells.PlaneOf(barrel.LowerLayer);
        double lengthM = Enumerable.Range(upper, lower - upper).Sum(p => cells.Planes[p].GapBelowM);
        foreach ((int column, double share) in wall)
        {
            for (int p = upper; p <= lower; p++)
            {
                double shareM = ((p > upper ? cells.Planes[p - 1].GapBelowM : 0) + (p < lower ? cells.Planes[p].GapBelowM : 0)) / 2;
                barrelW[(column * planes) + p] += share * powerW * shareM / lengthM;
            }
        }
    }
}

/// <summary>Loss of a triangle of copper.</summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="A">Corner, metres; counter-clockwise.</param>
/// <param name="B">Corner.</param>
/// <param name="C">Corner.</param>
/// <param name="PowerW">Watts.</param>
internal readonly record struct TriangleLoss(
    int Layer, (double XM, double YM) A, (double XM, double YM) B, (double XM, double YM) C, double PowerW)
{
    public double AreaM2 => (((B.XM - A.XM) * (C.YM - A.YM)) - ((C.XM - A.XM) * (B.YM - A.YM))) / 2;
}

/// <summary>The loss of copper in the nodes of columns, at the resistivity and in the build of the electrical solve.</summary>
internal sealed class LossOnCells(TreeCells cells, Stackup nominal, double[][] sheetW, double[] barrelW)
{
    /// <summary>By layer, the narrowest cell that holds the whole of each triangle.</summary>
    public required int[][] Holders { get; init; }

    /// <summary>The heat under other conditions, referred to their ambient.</summary>
    public HeatSources At(HeatConditions conditions)
    {
        double atAmbient = CopperMaterial.Iacs.ResistivityOhmM(conditions.AmbientK);
        double scale = conditions.CurrentScale * conditions.CurrentScale * atAmbient / nominal.ResistivityOhmM;

        // A wall is a ring as thick as the plating; how its circumference grows with it is left out.
        double barrelScale = scale * nominal.PlatingM / conditions.Stack.PlatingM;
        HeatSources sources = new(cells.NodeCount)
        {
            ResistivityGrowthPerK = (CopperMaterial.Iacs.ResistivityOhmM(conditions.AmbientK + 1) / atAmbient) - 1,
        };
        for (int n = 0; n < barrelW.Length; n++)
        {
            sources.JouleAtAmbientW[n] = barrelScale * barrelW[n];
        }

        for (int layer = 1; layer < sheetW.Length; layer++)
        {
            double sheetScale = scale * nominal.ThicknessM[layer - 1] / conditions.Stack.ThicknessM[layer - 1];
            for (int column = 0; column < cells.Count; column++)
            {
                sources.JouleAtAmbientW[cells.NodeOn(layer, column)] += sheetScale * sheetW[layer][column];
            }
        }

        return sources;
    }
}
