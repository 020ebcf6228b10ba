namespace CopperPath.Thermal;

/// <summary>
/// A board's temperatures through a load: the board with all its heat and, where other things heat it, the board without the loss of its
/// copper, taken through time together.
/// </summary>
/// <remarks>
/// Levels beside copper are as close as heat goes in the shortest time that counts; for that the cells in the plane are wider than those of
/// the last steady solution. What that leaves is estimated by the steady solution on the same cells (<see cref="WhatCellsLeave"/>).
/// </remarks>
internal static class HeatOfProfile
{
    /// <summary>Farther from copper levels are no farther apart than this share of their distance from it.</summary>
    public const double DistanceShare = 0.5;

    /// <summary>Levels beside copper are this share of the way heat has gone into laminate in the shortest time that counts.</summary>
    private const double LevelShare = 0.25;

    /// <summary>Pieces of a profile shorter than this share of it do not ask for closer levels.</summary>
    private const double ShortestShare = 1.0 / 500;

    /// <summary>Levels are no closer than this, metres.</summary>
    private const double ClosestM = 2e-6;

    /// <summary>Nodes that are not exceeded: the work that many steps may take.</summary>
    private const int MostNodes = 70_000;

    /// <summary>Distance of levels beside copper, metres, for times of a length, seconds.</summary>
    public static double LevelM(double shortestS, ThermalMaterials materials) =>
        Math.Max(ClosestM, LevelShare * Math.Sqrt(materials.LaminateThroughWPerMK / materials.LaminateJPerM3K * shortestS));

    /// <param name="scene">The board.</param>
    /// <param name="steady">Its steady solutions.</param>
    /// <param name="conditions">As stated.</param>
    /// <param name="load">Currents and heat of parts against time.</param>
    public static LoadedHeat Solve(HeatScene scene, SteadyHeat steady, HeatConditions conditions, LoadCase load)
    {
        double shortestS = Math.Max(ShortestShare * load.DurationS, load.Pieces.Min(piece => piece.ToS - piece.FromS));
        double levelM = LevelM(shortestS, BoardHeat.MaterialsOf(scene.Section.Laminate));
        CellTree[] trees = [.. steady.Models.Select(one => one.Cells.Tree)];
        int tree = trees.Length - 1;
        while (tree > 0 && NodesOf(trees[tree]) > MostNodes)
        {
            tree--;
        }

        while (NodesOf(trees[tree]) > MostNodes && levelM < MostLevelM)
        {
            levelM *= 2;
        }

        HeatModel model = new(scene, trees[tree], scene.LevelsWithin(levelM));
        return LoadedHeat.Of(scene, LoadRun.Of(scene, model, conditions, load), WhatCellsLeave.Of(model, conditions, steady, load));

        long NodesOf(CellTree cells) => (long)cells.LeafCount * scene.LevelsWithin(levelM).Count;
    }

    /// <summary>Levels farther apart than this are those of steady solutions, metres.</summary>
    private const double MostLevelM = 1e-3;
}

/// <summary>A board's steady solution.</summary>
/// <param name="Models">The board on the cells of its last solutions, widest first.</param>
/// <param name="Own">The last solution.</param>
internal sealed record SteadyHeat(IReadOnlyList<HeatModel> Models, OwnRise Own);
