using CopperPath.Electrical;

namespace CopperPath.Thermal;

/// <summary>
/// A board solved on cells that are split where heat is made and where temperature changes from cell to cell, until every place that is
/// judged is known well enough or the work it takes is too much.
/// </summary>
/// <remarks>
/// The last solution is on cells half as wide as those of the one before, everywhere and through the thickness: what the two differ by
/// is what cells of this width leave (<see cref="TemperatureField.EstimateK"/>).
/// </remarks>
internal static class RefinedHeat
{
    /// <summary>A peak is known well enough when its estimate is no more than this share of its rise, or <see cref="WantedK"/>.</summary>
    public const double WantedShare = 0.03;

    /// <summary>See <see cref="WantedShare"/>, kelvin.</summary>
    public const double WantedK = 0.5;

    /// <summary>Even cells a board begins with.</summary>
    private const int FirstCells = 3_000;

    /// <summary>Nodes of a solution that are not exceeded: the work a review may take.</summary>
    private const int MostNodes = 600_000;

    /// <summary>At first cells are split where temperature changes from one to the next by more than this many times what is wanted.</summary>
    private const double FirstFactor = 5.5;

    /// <summary>Below this the change from cell to cell is far below what is wanted.</summary>
    private const double LeastFactor = 1.0 / 16;

    /// <summary>Cells that are split once more are no narrower, metres: below the thickness of copper there is no sheet any more.</summary>
    private const double NarrowestM = 20e-6;

    /// <summary>
    /// Heat a solution may leave over, as a share of the heat put in: that moves a rise by about as much of itself, a hundredth of the
    /// smallest estimate that is given.
    /// </summary>
    public const double Tolerance = 1e-5;

    /// <summary>Where temperature changes by more than this many times what is allowed a cell is split twice at once.</summary>
    private const double TwiceFrom = 3;

    /// <summary>Rounds of splitting between two checks.</summary>
    private const int MostRounds = 8;

    /// <param name="scene">The board.</param>
    /// <param name="nominal">As stated.</param>
    /// <param name="mostNodes">Nodes of a solution that are not exceeded, as long as there is one that can be judged.</param>
    /// <returns>
    /// The board on the cells it began with, on those of its last solutions, widest first, and the last solution, with those before it.
    /// </returns>
    public static (HeatModel Widest, IReadOnlyList<HeatModel> Models, OwnRise Own) Solve(HeatScene scene, HeatConditions nominal, int mostNodes = MostNodes)
    {
        CellTree tree = new(scene.Extent, Math.Sqrt(scene.Extent.AreaM2 / FirstCells));
        SourceRefinement.Apply(scene, tree);
        HeatModel model = new(scene, tree.Copy());
        TemperatureField field = model.Solve(nominal, null, Tolerance);
        HeatModel widest = model;
        HeatModel? before = null;
        (HeatModel, IReadOnlyList<HeatModel>, OwnRise)? known = null;
        for (double factor = FirstFactor; field.Result.Status == ThermalStatus.Solved; factor /= 2)
        {
            bool isChanged = known is null;
            for (int round = 0; round < MostRounds && SplitWhereItChanges(scene, tree, model.Cells, field, factor); round++)
            {
                if (IsTooMuch(scene, tree, mostNodes) && known is { } enough)
                {
                    return enough;
                }

                (before, model) = (model, new HeatModel(scene, tree.Copy(), model));
                TemperatureField next = model.Solve(nominal, field, Tolerance);
                if (next.Result.Status != ThermalStatus.Solved)
                {
                    return (widest, [model], new OwnRise(next, null));
                }

                field = next with { Coarser = field with { Coarser = null } };
                isChanged = true;
            }

            if (!isChanged)
            {
                continue;
            }

            HeatModel halved = new(scene, tree.Finer(), model, halvings: 1);
            IReadOnlyList<HeatModel> models = before is null ? [model, halved] : [before, model, halved];
            TemperatureField fine = field;
            TemperatureField? without = null;
            TemperatureField coarser = field;
            Parallel.Invoke(
                () => fine = halved.Solve(nominal, coarser, Tolerance) with { Coarser = coarser },
                () => without = WithoutCopperLoss(scene, models, nominal, coarser));
            OwnRise own = new(fine, without);
            if (own.Result.Status != ThermalStatus.Solved || IsGood(scene, own) || factor < LeastFactor)
            {
                return (widest, models, own);
            }

            known = (widest, models, own);
        }

        return (widest, [model], new OwnRise(field, null));
    }

    /// <summary>
    /// The same board without the loss of its copper, on the cells that were found with it: what is subtracted has to have the same cells.
    /// Null where copper alone heats the board.
    /// </summary>
    private static TemperatureField? WithoutCopperLoss(
        HeatScene scene, IReadOnlyList<HeatModel> models, HeatConditions nominal, TemperatureField like)
    {
        if (!scene.HasOtherHeat(nominal.AmbientK))
        {
            return null;
        }

        TemperatureField? field = null;
        foreach (HeatModel model in models)
        {
            field = model.Solve(nominal with { CurrentScale = 0 }, field ?? like, Tolerance) with { Coarser = field };
        }

        return field;
    }

    /// <summary>Even cells, and two solutions on cells twice and four times as wide for the estimate.</summary>
    public static (HeatModel Widest, IReadOnlyList<HeatModel> Models, OwnRise Own) SolveEven(HeatScene scene, HeatConditions nominal, double cellM)
    {
        scene.UseClosestLevels();
        TemperatureField? field = null;
        List<HeatModel> models = [];
        foreach (double widthM in (double[])[4 * cellM, 2 * cellM, cellM])
        {
            models.Add(new HeatModel(scene, new CellTree(scene.Extent, widthM)));
            field = models[^1].Solve(nominal, field, Tolerance) with { Coarser = field };
        }

        return (models[0], models, new OwnRise(field!, WithoutCopperLoss(scene, models, nominal, field!)));
    }

    /// <summary>Whether what is judged is known: the hottest place with all heat, and what its own current adds to each stretch.</summary>
    private static bool IsGood(HeatScene scene, OwnRise own)
    {
        HottestPlace hottest = own.All.Hottest();
        return IsKnown(hottest.RiseK, hottest.EstimateK) && scene.Stretches.All(stretch =>
        {
            HottestPlace copper = HottestCopper.Of(stretch.Conduction, stretch.Net, own);
            return IsKnown(copper.RiseK, copper.EstimateK) && BarrelCurrent.BusiestOfEachHole(stretch.Conduction.Barrels)
                .OrderByDescending(hole => Math.Abs(hole.CurrentA)).Take(1)
                .All(hole => IsKnown(own.All.HottestOfHoleK(hole.Barrel), own.All.EstimateK(at => at.HottestOfHoleK(hole.Barrel))));
        });
    }

    private static bool IsKnown(double riseK, double estimateK) => estimateK <= Math.Max(WantedK, WantedShare * riseK);

    /// <summary>True when cells half as wide would be more than a solution may have.</summary>
    private static bool IsTooMuch(HeatScene scene, CellTree tree, int mostNodes)
    {
        CellTree finer = tree.Finer();
        return (long)finer.LeafCount * scene.LevelsFor(finer, halvings: 1).Count > mostNodes;
    }

    private static bool SplitWhereItChanges(HeatScene scene, CellTree tree, TreeCells cells, TemperatureField field, double factor)
    {
        double[] excess = new double[cells.Count];
        double[] rise = field.Result.RiseK;
        int planes = cells.Planes.Count;
        foreach (CellFace face in cells.Faces)
        {
            for (int p = 0; p < planes; p++)
            {
                double times = Times(rise[(face.Low * planes) + p], rise[(face.High * planes) + p]);
                excess[face.Low] = Math.Max(excess[face.Low], times);
                excess[face.High] = Math.Max(excess[face.High], times);
            }
        }

        bool isAny = false;
        double[] changes = new double[scene.Stack.ThicknessM.Count];
        for (int column = 0; column < cells.Count; column++)
        {
            for (int p = 0; p + 1 < planes; p++)
            {
                int laminate = cells.LaminateBelow(p);
                changes[laminate] = Math.Max(changes[laminate], Times(rise[(column * planes) + p], rise[(column * planes) + p + 1]));
            }

            if (excess[column] > 1)
            {
                isAny |= SplitOnce(cells.CellOf(column)) && (excess[column] <= TwiceFrom || SplitQuarters(cells.CellOf(column)));
            }
        }

        for (int laminate = 0; laminate < changes.Length; laminate++)
        {
            isAny |= changes[laminate] > 1 && scene.BringLevelsCloser(laminate);
        }

        return isAny;

        // How many times what is allowed.
        double Times(double a, double b) => Math.Abs(a - b) / (factor * Math.Max(WantedK, WantedShare * Math.Max(a, b)));

        bool SplitOnce(int cell)
        {
            bool isSplit = tree.WidthM(tree.SplitsOf(cell)) > 2 * NarrowestM;
            if (isSplit)
            {
                tree.Split(cell);
            }

            return isSplit;
        }

        bool SplitQuarters(int cell)
        {
            for (int quarter = 0; quarter < 4; quarter++)
            {
                SplitOnce(tree.Child(cell, quarter));
            }

            return true;
        }
    }
}
