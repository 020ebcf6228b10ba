using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Judging;
using CopperPath.Nets;
using CopperPath.Polygons;

namespace CopperPath.Core.Tests.Fuzzing;

/// <summary>Whether a changed folder still gives the board it was made from: the review of the whole one is the measure.</summary>
internal sealed class FolderOracle(Review whole)
{
    /// <summary>Shapes that differ by less are the same: 1 mm of border moved by 1 um.</summary>
    private const double SameMm2 = 1e-3;

    /// <summary>Losses that differ by less are the same copper meshed otherwise.</summary>
    private const double SameLoss = 0.02;

    /// <summary>True when copper, holes or outline are others.</summary>
    public bool IsAnotherBoard(Review review) =>
        !SameCopper(review.Board!) || !Holes(review.Board!).SequenceEqual(Holes(whole.Board!))
        || DifferenceMm2(review.Board!.Profile, whole.Board!.Profile) > SameMm2;

    /// <summary>True when the reviewed stretches themselves come out otherwise.</summary>
    public bool IsAnotherResult(Review review) => !review.Nets.Select(LossW).Zip(whole.Nets.Select(LossW))
        .All(pair => Math.Abs(pair.First - pair.Second) <= SameLoss * pair.Second);

    private bool SameCopper(Board board)
    {
        IReadOnlyList<CopperLayer> layers = board.Nets!.Layers;
        IReadOnlyList<CopperLayer> expected = whole.Board!.Nets!.Layers;
        return layers.Select(layer => layer.Number).SequenceEqual(expected.Select(layer => layer.Number))
            && layers.Zip(expected).All(pair => DifferenceMm2(pair.First.Islands, pair.Second.Islands) <= SameMm2);
    }

    private static double DifferenceMm2(IReadOnlyList<PolygonNm> a, IReadOnlyList<PolygonNm> b) =>
        PolygonOperations.SymmetricDifference(CopperBuilder.RingsOf(a), CopperBuilder.RingsOf(b)).Sum(piece => piece.AreaNm2) * 1e-12;

    private static IEnumerable<string> Holes(Board board) => board.Nets!.Holes.Select(Described).Order(StringComparer.Ordinal);

    private static string Described(HoleLanding hole)
    {
        DrilledFeature feature = hole.Feature;
        return $"{string.Join(' ', feature.Path)} {feature.ToolDiameterNm} {hole.IsPlated} {string.Join(' ', hole.Layers.Select(layer => layer.Layer))}";
    }

    private static double LossW(SolvedNet net) => net.Conduction.LossW;
}
