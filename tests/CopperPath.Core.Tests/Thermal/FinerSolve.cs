using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// A board solved as a review does, and four times finer: cells a quarter as wide wherever temperature changes enough for it to count, as
/// far as the nodes reach, and levels near copper a quarter as far apart.
/// </summary>
internal static class FinerSolve
{
    /// <summary>Cells are split twice where temperature changes from one to the next by this many times what is wanted, or more where that is too many.</summary>
    private const double LeastChange = 0.25;

    /// <param name="review">The board; solved anew.</param>
    /// <param name="mostNodes">Nodes of a solution as a review makes it that are not exceeded.</param>
    /// <param name="finerNodes">Nodes of the finer one that are not exceeded.</param>
    /// <returns>Null where the board gets hotter than is solved.</returns>
    public static (OwnRise Own, OwnRise Finer)? Of(Review review, int mostNodes, int finerNodes)
    {
        HeatScene scene = new(review.Board!.Nets!, review.Board.Profile, review.Board.Bounds, review.Stack!,
            review.Brief!.Thermal with { Losses = review.PartsHeat!.Losses }, SharedHeat.StretchesOf(review.Nets, null));
        HeatConditions nominal = new(review.Stack!, review.Brief.AmbientK);
        OwnRise own = RefinedHeat.Solve(scene, nominal, mostNodes).Own;
        if (own.Result.Status == ThermalStatus.TooHot)
        {
            return null;
        }

        own.Result.Status.ShouldBe(ThermalStatus.Solved);
        HeatModel model = new(scene, Finer(scene, own.All, finerNodes), halvings: 3);
        OwnRise finer = new(
            model.Solve(nominal, own.All, 1e-6),
            own.WithoutCopperLoss is null ? null : model.Solve(nominal with { CurrentScale = 0 }, own.WithoutCopperLoss, 1e-6));
        finer.Result.Status.ShouldBe(ThermalStatus.Solved);
        return (own, finer);
    }

    private static CellTree Finer(HeatScene scene, TemperatureField field, int mostNodes)
    {
        TreeCells cells = (TreeCells)field.Network.Cells;
        double[] change = new double[cells.Count];
        double[] rise = field.Result.RiseK;
        foreach (CellFace face in cells.Faces)
        {
            for (int p = 0; p < cells.Planes.Count; p++)
            {
                (double a, double b) = (rise[(face.Low * cells.Planes.Count) + p], rise[(face.High * cells.Planes.Count) + p]);
                double times = Math.Abs(a - b) / Math.Max(RefinedHeat.WantedK, RefinedHeat.WantedShare * Math.Max(a, b));
                (change[face.Low], change[face.High]) = (Math.Max(change[face.Low], times), Math.Max(change[face.High], times));
            }
        }

        for (double least = LeastChange; ; least *= 1.4)
        {
            CellTree tree = cells.Tree.Copy();
            for (int column = 0; column < cells.Count; column++)
            {
                if (change[column] > least)
                {
                    int cell = cells.CellOf(column);
                    tree.Split(cell);
                    for (int quarter = 0; quarter < 4; quarter++)
                    {
                        tree.Split(tree.Child(cell, quarter));
                    }
                }
            }

            if (least > change.Max() || (long)tree.LeafCount * scene.LevelsFor(tree, halvings: 3).Count < mostNodes)
            {
                return tree;
            }
        }
    }
}
