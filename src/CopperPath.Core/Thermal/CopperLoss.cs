using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Meshing;

namespace CopperPath.Thermal;

/// <summary>
/// The loss of the electrical solve as heat in the nodes: every triangle's and every barrel's, none lost. The current
/// is held as it was found at one temperature; its loss follows the resistivity of each node.
/// </summary>
public static class CopperLoss
{
    /// <param name="grid">Where the heat goes.</param>
    /// <param name="solutions">Solved stretches. Stretches of one net are parts of its current that add in power, such as direct and alternating.</param>
    /// <param name="stack">Thicknesses and the resistivity of the solve.</param>
    /// <param name="resistivityAtAmbientOhmM">Resistivity the heat is referred to.</param>
    /// <param name="growthPerK">Growth of resistivity per kelvin of rise, as a share of that.</param>
    public static HeatSources Of(
        HeatGrid grid, IEnumerable<ConductionResult> solutions, Stackup stack, double resistivityAtAmbientOhmM, double growthPerK)
    {
        HeatSources sources = new(grid.NodeCount) { ResistivityGrowthPerK = growthPerK };
        double scale = resistivityAtAmbientOhmM / stack.ResistivityOhmM;
        foreach (ConductionResult solution in solutions)
        {
            foreach (SheetField sheet in solution.Sheets)
            {
                AddSheet(sources, grid, sheet, scale / stack.SheetConductanceS(sheet.Layer));
            }

            foreach (BarrelCurrent barrel in solution.Barrels)
            {
                AddBarrel(sources, grid, barrel, scale);
            }
        }

        return sources;
    }

    private static void AddSheet(HeatSources sources, HeatGrid grid, SheetField sheet, double sheetResistanceOhm)
    {
        int plane = grid.PlaneOf(sheet.Layer);
        SheetMesh mesh = sheet.Mesh;
        Span<(double X, double Y)> corners = stackalloc (double, double)[3];
        double powerW = 0;
        Action<int, int, double> add = (i, j, share) => sources.JouleAtAmbientW[grid.Node(i, j, plane)] += share * powerW;
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
    }

    /// <summary>A barrel's loss is spread evenly along its length: to each level the length nearest to it.</summary>
    private static void AddBarrel(HeatSources sources, HeatGrid grid, BarrelCurrent barrel, double scale)
    {
        double powerW = scale * barrel.CurrentA * barrel.CurrentA * barrel.ResistanceOhm;
        int upper = grid.PlaneOf(barrel.UpperLayer);
        int lower = grid.PlaneOf(barrel.LowerLayer);
        double lengthM = Enumerable.Range(upper, lower - upper).Sum(p => grid.Planes[p].GapBelowM);
        IReadOnlyList<PointNm[]> outline = [barrel.Barrel.Outline];
        for (int p = upper; p <= lower; p++)
        {
            double shareM = ((p > upper ? grid.Planes[p - 1].GapBelowM : 0) + (p < lower ? grid.Planes[p].GapBelowM : 0)) / 2;
            foreach ((int node, double share) in CellShares.Of(grid, p, outline))
            {
                sources.JouleAtAmbientW[node] += share * powerW * shareM / lengthM;
            }
        }
    }
}
