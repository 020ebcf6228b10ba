using CopperPath.Cli.Overlays;
using CopperPath.Cli.Report.Html;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Judging;
using CopperPath.Nets;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>
/// Two pictures per layer on which current flows: current density and temperature rise of all reviewed nets,
/// findings numbered as in the summary.
/// </summary>
internal static class ReviewPictures
{
    private const int ShadeSteps = 6;

    /// <summary>Samples along the longer side from which lines of equal rise are drawn.</summary>
    private const int LevelNodes = 320;

    /// <summary>Lines nearer than this, kelvin, would claim more than a board's temperatures are known to.</summary>
    private const double LeastLevelStepK = 1;

    /// <summary>A largest value on a step, but for rounding, is its own top.</summary>
    private const double StepSlack = 1e-9;

    /// <summary>The pictures, not yet drawn, each with its file's name before the ending.</summary>
    /// <param name="review">A review with at least one net.</param>
    /// <param name="brief">The brief it was made from.</param>
    /// <param name="fields">What was solved.</param>
    /// <param name="scales">The scales of its fields.</param>
    /// <param name="theme">Their ground.</param>
    /// <param name="widthPx">Width of each, pixels.</param>
    public static IReadOnlyList<(string Name, OverlayScene Scene)> Of(
        Review review, BriefSource brief, IReadOnlyList<LayerField> fields, ReviewScales scales, OverlayTheme theme, int widthPx)
    {
        ScaleSpec density = scales.Density();
        BoxNm view = PicturedArea.Of(review, fields, density);
        BoxNm whole = PicturedArea.Whole(review);
        int[] layers = LayersShown(review, fields, density);
        string hash = FingerprintOf(review, brief);
        double? viaTopA = ViaScaleTopA(review);
        List<(string Name, OverlayScene Scene)> pictures = [];
        Add("layer", density, field => field.Density, [$"resistivity of copper at {QuantityText.Temperature(review.Brief!.ConductorK)}"], _ => null);
        if (fields.Any(field => field.Rise is not null))
        {
            string judge = ConductorRating.Shown(review.Brief.Limits.JudgeBy, review.Stack!).Name;
            Add("rise-layer", scales.Rise(), field => field.Rise!,
                [$"shades: the board's own temperatures; rises of call-outs: one long conductor by {judge}"], layer => RiseOf(review, layer, view));
        }

        return pictures;

        void Add(string name, ScaleSpec scale, Func<LayerField, ShadedSheet> sheetOf, IReadOnlyList<string> conditions, Func<int, LevelField?> levelsOf)
        {
            foreach (int layer in layers)
            {
                OverlayScene scene = SceneOf(
                    review, TitleOf(review, layer, conditions, hash), layer, view, [.. fields.Where(field => field.Layer == layer).Select(sheetOf)], scale, theme, widthPx);
                pictures.Add((FormattableString.Invariant($"{name}-{layer}"), scene with
                {
                    ViaScaleTopA = viaTopA,
                    Levels = levelsOf(layer),
                    WholeNm = view == whole ? null : whole,
                }));
            }
        }
    }

    /// <summary>Layers that want no picture: next to nothing flows there and no finding lies there.</summary>
    /// <param name="review">What was reviewed.</param>
    /// <param name="names">Names of the pictures, both those that were made and those that could not be.</param>
    public static IReadOnlyList<int> LayersWithoutPicture(Review review, IEnumerable<string> names) =>
        [.. review.Board!.Nets!.Layers.Select(layer => layer.Number)
            .Where(layer => !names.Any(name => name.StartsWith(FormattableString.Invariant($"layer-{layer}."), StringComparison.Ordinal)))];

    /// <summary>Layers on which any copper reaches the first shade of the scale, or a finding lies.</summary>
    private static int[] LayersShown(Review review, IReadOnlyList<LayerField> fields, ScaleSpec density) =>
        [.. fields.Where(field => Array.Exists(field.Density.Values, value => value >= density.Bottom)).Select(field => field.Layer)
            .Concat(review.Findings.Select(finding => finding.Layer).Where(layer => layer > 0)).Distinct().Order()];

    /// <summary>One top for the via currents of all layers, as for the densities: a shade means the same on each; null without vias.</summary>
    private static double? ViaScaleTopA(Review review)
    {
        double mostA = review.Nets.SelectMany(net => net.Conduction.Barrels)
            .Select(barrel => Math.Abs(barrel.CurrentA)).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        if (mostA == 0)
        {
            return null;
        }

        double stepA = RoundNumbers.Step(mostA, ShadeSteps);
        return RoundNumbers.Multiple((long)Math.Ceiling((mostA / stepA) - StepSlack), stepA);
    }

    private static OverlayScene SceneOf(
        Review review, TitleBlock title, int layer, BoxNm view, IReadOnlyList<ShadedSheet> sheets, ScaleSpec scale, OverlayTheme theme, int widthPx)
    {
        NetList board = review.Board!.Nets!;
        HashSet<Net> reviewed = [.. review.Nets.Select(net => net.Bound.Net)];
        int last = board.Layers[^1].Number;
        return new OverlayScene(
            title,
            view,
            review.Board.Profile,
            [.. board.Nets.Where(net => !reviewed.Contains(net)).SelectMany(net => net.SheetOn(layer)?.Islands ?? [])
                .Where(island => island.Bounds.Touches(view))],
            [.. reviewed.SelectMany(net => net.SheetOn(layer)?.Islands ?? [])],
            sheets,
            [.. ViasOf(review, layer).Where(via => view.Contains(via.CentreNm))],
            CallOutsOf(review, layer),
            scale,
            SeenFromBelow: layer == last && last > 1,
            theme,
            widthPx);
    }

    /// <summary>The board's own rise on a layer, whatever copper lies there.</summary>
    private static LevelField RiseOf(Review review, int layer, BoxNm view)
    {
        TemperatureField heat = review.Heat!;
        BoxNm board = review.Board!.Bounds;
        BoxNm seen = new(
            Math.Max(view.MinX, board.MinX), Math.Max(view.MinY, board.MinY), Math.Min(view.MaxX, board.MaxX), Math.Min(view.MaxY, board.MaxY));
        double pitchNm = (double)Math.Max(seen.WidthNm, seen.HeightNm) / LevelNodes;
        return LevelField.Sample(seen, pitchNm, LeastLevelStepK, (xNm, yNm) => heat.RiseK(layer, Units.MetresFromNm(xNm), Units.MetresFromNm(yNm)))
            .Smoothed().Smoothed();
    }

    private static TitleBlock TitleOf(Review review, int layer, IReadOnlyList<string> conditions, string hash)
    {
        int last = review.Board!.Nets!.Layers[^1].Number;
        string side = layer == 1 ? " (top)" : layer == last ? " (bottom)" : "";
        return new TitleBlock(
            review.Brief!.Board.Name,
            review.Brief.Board.Revision ?? "",
            FormattableString.Invariant($"Copper layer {layer}{side}, {QuantityText.Length(review.Stack!.ThicknessM[layer - 1])}"),
            "Reviewed nets",
            [
                $"Ambient {QuantityText.Temperature(review.Brief.AmbientK)}",
                .. conditions,
                $"allowed rise {QuantityText.TemperatureDifference(review.Brief.Limits.TemperatureRiseK)}",
            ],
            Product.NameAndVersion,
            hash);
    }

    private static List<ViaMark> ViasOf(Review review, int layer)
    {
        IReadOnlyList<ConductorRating> charts = ConductorRating.Judging(review.Brief!.Limits.JudgeBy, review.Stack!);
        return [.. review.Nets.SelectMany(net => BarrelCurrent
            .BusiestOfEachHole(net.Conduction.Barrels.Where(barrel => barrel.UpperLayer <= layer && layer <= barrel.LowerLayer))
            .Select(barrel => new ViaMark(
                barrel.Barrel.Centre,
                barrel.CurrentA,
                IsBeyond(barrel, net.Bound.Review.Limits.TemperatureRiseK))))];

        bool IsBeyond(BarrelCurrent barrel, double limitK) =>
            charts.Any(chart => chart.CanJudge(barrel) && chart.BarrelRiseK(barrel) > limitK)
            || (review.Own is { Result.Status: ThermalStatus.Solved } own && own.RiseK(
                barrel.UpperLayer, Units.MetresFromNm(barrel.Barrel.Centre.X), Units.MetresFromNm(barrel.Barrel.Centre.Y)) > limitK);
    }

    private static List<CallOut> CallOutsOf(Review review, int layer)
    {
        List<CallOut> callOuts = [];
        for (int i = 0; i < review.Findings.Count; i++)
        {
            Finding finding = review.Findings[i];
            if (finding.Layer == layer)
            {
                callOuts.Add(new CallOut(
                    i + 1,
                    PointNm.FromMetres(finding.XM, finding.YM),
                    FindingMark.IsBeyond(finding) ? CallOutRank.Fail : CallOutRank.Caution,
                    $"{finding.Subject}: {finding.Sentence}")
                {
                    ExtentNm = finding.Extent,
                });
            }
        }

        return callOuts;
    }

    /// <summary>Fingerprint of all that was read: the board's files and the brief.</summary>
    public static string FingerprintOf(Review review, BriefSource brief) => Fingerprint.Of(
        [.. review.Board!.Files.Select(file => (file.File.Name, file.File.Bytes)), (BriefSource.EntryName, brief.Bytes)]);
}
