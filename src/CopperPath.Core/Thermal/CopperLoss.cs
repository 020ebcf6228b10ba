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
    private readonly IReadOnlyList<StretchLoss> _stretches;

    private CopperLoss(Stackup nominal, IReadOnlyList<StretchLoss> stretches) => (_nominal, _stretches) = (nominal, stretches);

    /// <summary>Loss of every triangle, at the resistivity and in the build of the electrical solve.</summary>
    public IEnumerable<TriangleLoss> Triangles => _stretches.SelectMany(stretch => stretch.ByLayer).SelectMany(layer => layer);

    /// <summary>Loss of every stretch of plated hole, likewise, watts.</summary>
    public IEnumerable<(BarrelCurrent Barrel, double PowerW)> Barrels => _stretches.SelectMany(stretch => stretch.Barrels);

    /// <param name="stretches">
    /// Solved stretches. Those of one net are parts of its current that add in power, such as direct and alternating, or alternatives.
    /// </param>
    /// <param name="nominal">Thicknesses and the resistivity of the solve.</param>
    public static CopperLoss Of(IReadOnlyList<HeatingStretch> stretches, Stackup nominal)
    {
        List<StretchLoss> losses = [];
        foreach (HeatingStretch stretch in stretches)
        {
            TriangleLoss[][] sheets = new TriangleLoss[stretch.Conduction.Sheets.Count][];
            Parallel.For(0, sheets.Length, k =>
            {
                SheetField sheet = stretch.Conduction.Sheets[k];
                sheets[k] = [.. TrianglesOf(sheet, 1 / nominal.SheetConductanceS(sheet.Layer))];
            });
            double scale = ScaleOf(stretch, sheets.Sum(sheet => sheet.Sum(triangle => triangle.PowerW)));
            losses.Add(new StretchLoss(
                stretch,
                [.. Enumerable.Range(0, nominal.ThicknessM.Count + 1).Select(layer => sheets.SelectMany(sheet => sheet)
                    .Where(triangle => triangle.Layer == layer).Select(triangle => triangle with { PowerW = scale * triangle.PowerW }).ToArray())],
                [.. stretch.Conduction.Barrels.Select(barrel => (barrel, scale * barrel.CurrentA * barrel.CurrentA * barrel.ResistanceOhm))]));
        }

        return new CopperLoss(nominal, losses);
    }

    /// <summary>The loss in the nodes of columns.</summary>
    /// <param name="cells">The columns.</param>
    /// <param name="walls">Shares of the walls of plated holes by columns.</param>
    /// <param name="before">The same on cells of which these are made by splitting, where there is one: it tells where to look.</param>
    public LossOnCells On(
        TreeCells cells, IReadOnlyDictionary<Barrel, IReadOnlyList<(int Column, double Share)>> walls, LossOnCells? before)
    {
        int layers = _nominal.ThicknessM.Count;
        (int Node, double PowerW)[][] sheets = new (int, double)[_stretches.Count * (layers + 1)][];
        int[][] holders = new int[sheets.Length][];
        Parallel.For(0, sheets.Length, k =>
        {
            (int stretch, int layer) = (k / (layers + 1), k % (layers + 1));
            TriangleLoss[] triangles = _stretches[stretch].ByLayer[layer];
            holders[k] = new int[triangles.Length];
            if (triangles.Length == 0)
            {
                sheets[k] = [];
                return;
            }

            double[] inCellW = new double[cells.Tree.CellCount];
            TriangleDivider divider = new(cells.Tree, inCellW);
            for (int t = 0; t < triangles.Length; t++)
            {
                holders[k][t] = divider.Divide(triangles[t], before?.Holders[k][t] ?? CellTree.Root);
            }

            sheets[k] = [.. Enumerable.Range(0, cells.Count).Where(column => inCellW[cells.CellOf(column)] != 0)
                .Select(column => (cells.NodeOn(layer, column), inCellW[cells.CellOf(column)]))];
        });

        StretchOnCells[] onCells = [.. _stretches.Select((stretch, s) => new StretchOnCells(
            stretch.Stretch, sheets[(s * (layers + 1))..((s + 1) * (layers + 1))], BarrelsOn(cells, walls, stretch)))];
        return new LossOnCells(cells, _nominal, onCells) { Holders = holders };
    }

    private static (int Node, double PowerW)[] BarrelsOn(
        TreeCells cells, IReadOnlyDictionary<Barrel, IReadOnlyList<(int Column, double Share)>> walls, StretchLoss stretch)
    {
        SortedDictionary<int, double> sums = [];
        foreach ((BarrelCurrent barrel, double powerW) in stretch.Barrels)
        {
            AddBarrel(cells, walls[barrel.Barrel], barrel, powerW, (node, partW) => sums[node] = sums.GetValueOrDefault(node) + partW);
        }

        return [.. sums.Select(sum => (sum.Key, sum.Value))];
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
    /// Mean square of the sheet current over a triangle, (A/m)2: that of the current midway between the two that bound the loss, since it
    /// tells better than the uniform one where in a constriction the loss lies; the sum is set right by <see cref="ScaleOf"/>.
    /// </summary>
    private static double MeanSquare(SheetField sheet, int triangle) => sheet.MeanSquareA2PerM2.Length > 0
        ? sheet.MeanSquareA2PerM2[triangle] : sheet.SheetCurrentAPerM(triangle) * sheet.SheetCurrentAPerM(triangle);

    /// <summary>A barrel's loss is spread evenly along its length: to each level the length nearest to it.</summary>
    private static void AddBarrel(
        TreeCells cells, IReadOnlyList<(int Column, double Share)> wall, BarrelCurrent barrel, double powerW, Action<int, double> add)
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
                add((column * planes) + p, share * powerW * shareM / lengthM);
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

/// <summary>Loss of one stretch.</summary>
/// <param name="Stretch">The stretch.</param>
/// <param name="ByLayer">Its triangles by number of layer.</param>
/// <param name="Barrels">Its stretches of plated hole, watts.</param>
internal sealed record StretchLoss(
    HeatingStretch Stretch, TriangleLoss[][] ByLayer, IReadOnlyList<(BarrelCurrent Barrel, double PowerW)> Barrels);

/// <summary>Loss of one stretch in the nodes of columns.</summary>
/// <param name="Stretch">The stretch.</param>
/// <param name="Sheets">By number of layer: nodes and watts, ascending.</param>
/// <param name="Barrels">Nodes and watts of the walls of plated holes, ascending.</param>
internal sealed record StretchOnCells(HeatingStretch Stretch, (int Node, double PowerW)[][] Sheets, (int Node, double PowerW)[] Barrels);

/// <summary>The loss of copper in the nodes of columns, at the resistivity and in the build of the electrical solve.</summary>
internal sealed class LossOnCells(TreeCells cells, Stackup nominal, IReadOnlyList<StretchOnCells> stretches)
{
    /// <summary>The stretches, in their order.</summary>
    public IReadOnlyList<StretchOnCells> Stretches => stretches;

    /// <summary>By stretch and layer, the narrowest cell that holds the whole of each triangle.</summary>
    public required int[][] Holders { get; init; }

    /// <summary>The heat under other conditions, referred to their ambient.</summary>
    public HeatSources At(HeatConditions conditions)
    {
        HeatSources sources = SourcesAt(conditions);
        Fill(sources.JouleAtAmbientW, conditions, _ => conditions.CurrentScale * conditions.CurrentScale);
        return sources;
    }

    /// <summary>Sources without heat yet, for those conditions.</summary>
    public HeatSources SourcesAt(HeatConditions conditions)
    {
        double atAmbient = CopperMaterial.Iacs.ResistivityOhmM(conditions.AmbientK);
        return new HeatSources(cells.NodeCount)
        {
            ResistivityGrowthPerK = (CopperMaterial.Iacs.ResistivityOhmM(conditions.AmbientK + 1) / atAmbient) - 1,
        };
    }

    /// <summary>
    /// Heat of all stretches were they at ambient, watts. Of stretches that are alternatives of each other every node has the one that
    /// heats it most: no alternative by itself makes any place hotter than that.
    /// </summary>
    /// <param name="jouleW">Filled in, one for each node.</param>
    /// <param name="conditions">Build and surroundings.</param>
    /// <param name="squareOf">Square of the factor on the current of a stretch, by its number.</param>
    public void Fill(double[] jouleW, HeatConditions conditions, Func<int, double> squareOf)
    {
        Array.Clear(jouleW);
        foreach (int s in Enumerable.Range(0, stretches.Count).Where(s => stretches[s].Stretch.Alternative is null))
        {
            AddTo(jouleW, stretches[s], conditions, squareOf(s));
        }

        foreach (IGrouping<object?, int> net in Enumerable.Range(0, stretches.Count)
            .Where(s => stretches[s].Stretch.Alternative is not null).GroupBy(s => (object?)stretches[s].Stretch.Net, ReferenceEqualityComparer.Instance))
        {
            double[] most = new double[jouleW.Length];
            foreach (IGrouping<string, int> alternative in net.GroupBy(s => stretches[s].Stretch.Alternative!))
            {
                double[] own = new double[jouleW.Length];
                foreach (int s in alternative)
                {
                    AddTo(own, stretches[s], conditions, squareOf(s));
                }

                for (int n = 0; n < most.Length; n++)
                {
                    most[n] = Math.Max(most[n], own[n]);
                }
            }

            for (int n = 0; n < most.Length; n++)
            {
                jouleW[n] += most[n];
            }
        }
    }

    private void AddTo(double[] jouleW, StretchOnCells stretch, HeatConditions conditions, double square)
    {
        double scale = square * CopperMaterial.Iacs.ResistivityOhmM(conditions.AmbientK) / nominal.ResistivityOhmM;

        // A wall is a ring as thick as the plating; how its circumference grows with it is left out.
        double barrelScale = scale * nominal.PlatingM / conditions.Stack.PlatingM;
        foreach ((int node, double powerW) in stretch.Barrels)
        {
            jouleW[node] += barrelScale * powerW;
        }

        for (int layer = 1; layer < stretch.Sheets.Length; layer++)
        {
            double sheetScale = scale * nominal.ThicknessM[layer - 1] / conditions.Stack.ThicknessM[layer - 1];
            foreach ((int node, double powerW) in stretch.Sheets[layer])
            {
                jouleW[node] += sheetScale * powerW;
            }
        }
    }
}
