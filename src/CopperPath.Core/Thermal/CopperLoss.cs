using CopperPath.Electrical;
using CopperPath.Meshing;
using CopperPath.Quantities;

namespace CopperPath.Thermal;

/// <summary>
/// The loss of the electrical solve as heat in the nodes: every triangle's and every barrel's, none lost. The current
/// is held as it was found at one temperature and in the nominal build; its loss follows resistivity and thickness.
/// </summary>
internal sealed class CopperLoss
{
    private readonly HeatGrid _grid;
    private readonly Stackup _nominal;

    // Watts in each node at the resistivity and in the build of the electrical solve.
    private readonly double[] _sheetW;
    private readonly double[] _barrelW;

    private CopperLoss(HeatGrid grid, Stackup nominal)
    {
        (_grid, _nominal) = (grid, nominal);
        (_sheetW, _barrelW) = (new double[grid.NodeCount], new double[grid.NodeCount]);
    }

    /// <param name="grid">Where the heat goes.</param>
    /// <param name="stretches">Solved stretches. Those of one net are parts of its current that add in power, such as direct and alternating.</param>
    /// <param name="nominal">Thicknesses and the resistivity of the solve.</param>
    public static CopperLoss Of(HeatGrid grid, IReadOnlyList<HeatingStretch> stretches, Stackup nominal)
    {
        CopperLoss loss = new(grid, nominal);
        (int Stretch, SheetField Sheet)[] sheets =
            [.. stretches.SelectMany((stretch, s) => stretch.Conduction.Sheets.Select(sheet => (s, sheet)))];
        double[][] cellsW = new double[sheets.Length][];
        Parallel.For(0, sheets.Length, k => cellsW[k] = OfSheet(grid, sheets[k].Sheet, 1 / nominal.SheetConductanceS(sheets[k].Sheet.Layer)));
        double[] scales = [.. stretches.Select((stretch, s) => ScaleOf(stretch, sheets.Zip(cellsW).Where(one => one.First.Stretch == s).Sum(one => one.Second.Sum())))];
        for (int k = 0; k < sheets.Length; k++)
        {
            int plane = grid.PlaneOf(sheets[k].Sheet.Layer);
            for (int cell = 0; cell < cellsW[k].Length; cell++)
            {
                loss._sheetW[(cell * grid.Planes.Count) + plane] += scales[sheets[k].Stretch] * cellsW[k][cell];
            }
        }

        for (int s = 0; s < stretches.Count; s++)
        {
            foreach (BarrelCurrent barrel in stretches[s].Conduction.Barrels)
            {
                loss.AddBarrel(barrel, scales[s]);
            }
        }

        return loss;
    }

    /// <summary>The heat under other conditions, referred to their ambient.</summary>
    public HeatSources At(HeatConditions conditions)
    {
        double atAmbient = CopperMaterial.Iacs.ResistivityOhmM(conditions.AmbientK);
        double scale = conditions.CurrentScale * conditions.CurrentScale * atAmbient / _nominal.ResistivityOhmM;

        // A wall is a ring as thick as the plating; how its circumference grows with it is left out.
        double barrelScale = scale * _nominal.PlatingM / conditions.Stack.PlatingM;
        double[] sheetScales = [.. _grid.Planes.Select(plane => plane.CopperLayer == 0 ? 0
            : scale * _nominal.ThicknessM[plane.CopperLayer - 1] / conditions.Stack.ThicknessM[plane.CopperLayer - 1])];
        HeatSources sources = new(_grid.NodeCount)
        {
            ResistivityGrowthPerK = (CopperMaterial.Iacs.ResistivityOhmM(conditions.AmbientK + 1) / atAmbient) - 1,
        };
        for (int n = 0; n < _sheetW.Length; n++)
        {
            sources.JouleAtAmbientW[n] = (sheetScales[n % sheetScales.Length] * _sheetW[n]) + (barrelScale * _barrelW[n]);
        }

        return sources;
    }

    /// <summary>The balanced current's loss lies at the upper bound: the heat handed on is the loss that is reported.</summary>
    private static double ScaleOf(HeatingStretch stretch, double sheetsW)
    {
        double balancedW = sheetsW + stretch.Conduction.Barrels.Sum(barrel => barrel.CurrentA * barrel.CurrentA * barrel.ResistanceOhm);
        return balancedW > 0 ? stretch.Share * stretch.Conduction.LossW / balancedW : 0;
    }

    /// <summary>Loss in each cell, watts.</summary>
    private static double[] OfSheet(HeatGrid grid, SheetField sheet, double sheetResistanceOhm)
    {
        double[] cellsW = new double[grid.X.Count * grid.Y.Count];
        SheetMesh mesh = sheet.Mesh;
        Span<(double X, double Y)> corners = stackalloc (double, double)[3];
        double powerW = 0;
        Action<int, int, double> add = (i, j, share) => cellsW[(j * grid.X.Count) + i] += share * powerW;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            // Copper and solder above it lie in parallel: the field is that of the copper's part of the current.
            double squared = sheet.SheetCurrentAPerM(t) * sheet.CopperCurrentAPerM(t);
            if (squared == 0)
            {
                continue;
            }

            for (int k = 0; k < 3; k++)
            {
                int vertex = mesh.Triangles[(3 * t) + k];
                corners[k] = (mesh.XM[vertex], mesh.YM[vertex]);
            }

            double areaM2 = (((corners[1].X - corners[0].X) * (corners[2].Y - corners[0].Y))
                - ((corners[2].X - corners[0].X) * (corners[1].Y - corners[0].Y))) / 2;
            powerW = squared * sheetResistanceOhm * areaM2;
            CellShares.Divide(grid, corners, add);
        }

        return cellsW;
    }

    /// <summary>A barrel's loss is spread evenly along its length: to each level the length nearest to it.</summary>
    private void AddBarrel(BarrelCurrent barrel, double scale)
    {
        double powerW = scale * barrel.CurrentA * barrel.CurrentA * barrel.ResistanceOhm;
        int upper = _grid.PlaneOf(barrel.UpperLayer);
        int lower = _grid.PlaneOf(barrel.LowerLayer);
        double lengthM = Enumerable.Range(upper, lower - upper).Sum(p => _grid.Planes[p].GapBelowM);
        IReadOnlyList<(int Node, double Share)> parts = CellShares.Of(_grid, upper, [barrel.Barrel.Outline]);
        for (int p = upper; p <= lower; p++)
        {
            double shareM = ((p > upper ? _grid.Planes[p - 1].GapBelowM : 0) + (p < lower ? _grid.Planes[p].GapBelowM : 0)) / 2;
            foreach ((int node, double share) in parts)
            {
                _barrelW[node + p - upper] += share * powerW * shareM / lengthM;
            }
        }
    }
}
