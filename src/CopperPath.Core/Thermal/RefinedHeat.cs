namespace CopperPath.Thermal;

/// <summary>A board solved on cells that are split until its hottest places no longer change.</summary>
internal sealed record RefinedHeat(HeatModel Coarse, TemperatureField CoarseField, TemperatureField Field, IReadOnlyList<HotPlace> Places)
{
    public static double StartCells = 12_000;
    public static double Factor = 1.0;
    public static int MostNodes = 400_000;
    public static Action<string>? Log;

    public static RefinedHeat Solve(HeatScene scene, HeatConditions nominal)
    {
        double startM = Math.Sqrt(scene.Extent.AreaM2 / StartCells);
        CellTree tree = new(scene.Extent, startM);
        SourceRefinement.Apply(scene, tree);
        TemperatureField? like = null;
        double factor = Factor;
        double cpu0 = System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime.TotalMilliseconds;
        double Cpu() => System.Diagnostics.Process.GetCurrentProcess().TotalProcessorTime.TotalMilliseconds - cpu0;
        while (true)
        {
            HeatModel model;
            TemperatureField field;
            for (int round = 0; ; round++)
            {
                model = new HeatModel(scene, tree.Copy());
                Log?.Invoke($"  laid {model.Cells.Count} cols {model.Cells.NodeCount} nodes {Cpu()}");
                field = model.Solve(nominal, like, 1e-5);
                Log?.Invoke($"  solved max {(field.Result.RiseK.Length > 0 ? field.Result.RiseK.Max() : -1):F3} {Cpu()} {field.Result.Status} rounds {field.Result.Rounds} its {ThermalSolver.Iterations}");
                if (field.Result.Status != ThermalStatus.Solved)
                {
                    return new RefinedHeat(model, field, field, []);
                }

                like = field;
                if (round == 6 || model.Cells.NodeCount > MostNodes / 4 || !SplitWhereItChanges(scene, tree, model.Cells, field, factor))
                {
                    break;
                }
            }

            HeatModel finer = new(scene, tree.Finer());
            Log?.Invoke($"  laid finer {finer.Cells.Count} cols {finer.Cells.NodeCount} nodes {Cpu()}");
            TemperatureField fine = finer.Solve(nominal, field);
            Log?.Invoke($"  solved max {(fine.Result.RiseK.Length > 0 ? fine.Result.RiseK.Max() : -1):F3} {Cpu()} rounds {fine.Result.Rounds} its {ThermalSolver.Iterations}");
            IReadOnlyList<HotPlace> places = HotPlaces.Of(scene, fine, field);
            bool isGood = places.All(place => place.EstimateK <= Math.Max(0.5, 0.03 * place.RiseK));
            foreach (HotPlace place in places)
            {
                Log?.Invoke($"     {place}");
            }

            if (isGood || finer.Cells.NodeCount > MostNodes)
            {
                return new RefinedHeat(model, field, fine, places);
            }

            factor /= 2;
            if (!SplitWhereItChanges(scene, tree, model.Cells, field, factor))
            {
                factor /= 2;
            }
        }
    }

    private static bool SplitWhereItChanges(HeatScene scene, CellTree tree, TreeCells cells, TemperatureField field, double factor)
    {
        bool[] isMarked = new bool[cells.Count];
        double[] rise = field.Result.RiseK;
        int planes = cells.Planes.Count;
        foreach (CellFace face in cells.Faces)
        {
            for (int p = 0; p < planes; p++)
            {
                double a = rise[(face.Low * planes) + p];
                double b = rise[(face.High * planes) + p];
                if (Math.Abs(a - b) > factor * Math.Max(0.5, 0.03 * Math.Max(a, b)))
                {
                    isMarked[face.Low] = true;
                    isMarked[face.High] = true;
                }
            }
        }

        bool any = false;
        for (int column = 0; column < cells.Count; column++)
        {
            for (int laminate = 1; laminate < scene.IsActive.Length; laminate++)
            {
                (double a, double b) = (rise[cells.NodeOn(laminate, column)], rise[cells.NodeOn(laminate + 1, column)]);
                if (!scene.IsActive[laminate - 1] && Math.Abs(a - b) > factor * Math.Max(0.5, 0.03 * Math.Max(a, b)))
                {
                    scene.IsActive[laminate - 1] = true;
                    any = true;
                    Log?.Invoke($"  laminate {laminate} active");
                }
            }
        }

        for (int column = 0; column < cells.Count; column++)
        {
            int cell = cells.CellOf(column);
            if (isMarked[column] && tree.WidthM(tree.SplitsOf(cell)) > 2 * 15e-6)
            {
                tree.Split(cell);
                any = true;
            }
        }

        return any;
    }
}

/// <summary>A place of the board that is judged.</summary>
internal sealed record HotPlace(string Name, int Layer, double XM, double YM, double RiseK, double EstimateK);

internal static class HotPlaces
{
    public static IReadOnlyList<HotPlace> Of(HeatScene scene, TemperatureField fine, TemperatureField coarse)
    {
        List<HotPlace> places = [];
        int s = 0;
        foreach (HeatingStretch stretch in scene.Stretches)
        {
            s++;
            HotPlace hottest = new("", 0, 0, 0, double.NegativeInfinity, 0);
            foreach (CopperPath.Electrical.SheetField sheet in stretch.Conduction.Sheets)
            {
                for (int v = 0; v < sheet.Mesh.VertexCount; v++)
                {
                    double rise = fine.RiseK(sheet.Layer, sheet.Mesh.XM[v], sheet.Mesh.YM[v]);
                    if (rise > hottest.RiseK)
                    {
                        hottest = new HotPlace($"stretch {s}", sheet.Layer, sheet.Mesh.XM[v], sheet.Mesh.YM[v], rise, 0);
                    }
                }
            }

            places.Add(hottest with { EstimateK = Math.Abs(hottest.RiseK - coarse.RiseK(hottest.Layer, hottest.XM, hottest.YM)) });
        }

        int node = 0;
        double[] all = fine.Result.RiseK;
        for (int n = 0; n < all.Length; n++)
        {
            node = all[n] > all[node] ? n : node;
        }

        int column = node / fine.Network.Cells.Planes.Count;
        CellBox box = fine.Network.Cells.BoxOf(column);
        places.Add(new HotPlace("board", 0, box.CentreXM, box.CentreYM, all[node], Math.Abs(all[node] - coarse.Result.RiseK.Max())));
        return places;
    }
}
