using System.Security.Cryptography;
using System.Text;
using CopperPath.Cli.Overlays;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Judging;
using CopperPath.Nets;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>
/// Two pictures per layer that carries reviewed copper: current density and temperature rise of all reviewed nets,
/// findings numbered as in the summary.
/// </summary>
public static class ReviewPictures
{
    /// <summary>Room left around the copper shown, share of its larger side.</summary>
    private const double MarginShare = 0.04;

    /// <summary>Densities below this share of the top of the scale all take the first shade.</summary>
    private const double BottomShare = 0.01;

    /// <summary>A logarithmic scale needs a top above zero, also where no current flows.</summary>
    private const double LeastTopAPerMm2 = 1e-12;

    /// <summary>A board of one temperature still needs a scale with two ends, kelvin.</summary>
    private const double LeastRangeK = 0.01;

    private const int ShadeSteps = 6;

    /// <summary>A largest value on a step, but for rounding, is its own top.</summary>
    private const double StepSlack = 1e-9;

    /// <summary>The pictures, not yet drawn, each with its file's name before the ending.</summary>
    /// <param name="review">A review with at least one net.</param>
    /// <param name="widthPx">Width of each, pixels.</param>
    public static IReadOnlyList<(string Name, OverlayScene Scene)> Of(Review review, int widthPx)
    {
        string hash = HashOf(review);
        double? viaTopA = ViaScaleTopA(review);
        return [.. Densities(review, hash, widthPx).Concat(Rises(review, hash, widthPx))
            .Select(picture => (picture.Name, picture.Scene with { ViaScaleTopA = viaTopA }))];
    }

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
        return Math.Ceiling((mostA / stepA) - StepSlack) * stepA;
    }

    private static IEnumerable<(string Name, OverlayScene Scene)> Densities(Review review, string hash, int widthPx)
    {
        List<(int Layer, ShadedSheet Sheet)> fields = [.. review.Nets.SelectMany(net => net.Conduction.Sheets)
            .Select(sheet => (sheet.Layer, new ShadedSheet(sheet.Mesh, DensityAPerMm2(sheet, review.Stack!), FieldShading.PerCorner)))];
        double peakAPerMm2 = fields.Select(field => PeakAPerMm2(field.Sheet.Values)).DefaultIfEmpty(1).Max();
        double topAPerMm2 = RoundNumbers.AtLeast(Math.Max(peakAPerMm2, LeastTopAPerMm2));
        ScaleSpec scale = new("Current density", "A/mm²", ScaleKind.Logarithmic, topAPerMm2, topAPerMm2 * BottomShare);
        return LayersOf(review).Select(layer =>
            (FormattableString.Invariant($"layer-{layer}"), SceneOf(review, layer, fields, scale, hash, widthPx)));
    }

    /// <summary>Temperature rise of the reviewed copper, all layers on one scale; none where no temperatures were solved.</summary>
    private static IEnumerable<(string Name, OverlayScene Scene)> Rises(Review review, string hash, int widthPx)
    {
        if (review.Heat is not { Result.Status: ThermalStatus.Solved } heat)
        {
            return [];
        }

        List<(int Layer, ShadedSheet Sheet)> fields = [.. review.Nets.SelectMany(net => net.Conduction.Sheets)
            .Select(sheet => (sheet.Layer, new ShadedSheet(sheet.Mesh, heat.AtVertices(sheet), FieldShading.PerVertex)))];
        double leastK = fields.SelectMany(field => field.Sheet.Values).DefaultIfEmpty(0).Min();
        double mostK = fields.SelectMany(field => field.Sheet.Values).DefaultIfEmpty(1).Max();
        double stepK = RoundNumbers.Step(Math.Max(mostK - leastK, LeastRangeK), ShadeSteps);
        ScaleSpec scale = new("Temperature rise", "K", ScaleKind.Linear, Math.Ceiling(mostK / stepK) * stepK, Math.Floor(leastK / stepK) * stepK);
        return LayersOf(review).Select(layer =>
            (FormattableString.Invariant($"rise-layer-{layer}"), SceneOf(review, layer, fields, scale, hash, widthPx)));
    }

    private static IEnumerable<int> LayersOf(Review review) =>
        review.Nets.SelectMany(net => net.Bound.Net.Sheets).Select(sheet => sheet.Layer).Distinct().Order();

    private static OverlayScene SceneOf(
        Review review, int layer, List<(int Layer, ShadedSheet Sheet)> fields, ScaleSpec scale, string hash, int widthPx)
    {
        NetList board = review.Board!.Nets!;
        HashSet<Net> reviewed = [.. review.Nets.Select(net => net.Bound.Net)];
        BoxNm box = review.Board.Bounds;
        int last = board.Layers[^1].Number;
        return new OverlayScene(
            TitleOf(review, layer, last, hash),
            box.GrownBy((long)(MarginShare * Math.Max(box.WidthNm, box.HeightNm))),
            review.Board.Profile,
            [.. board.Nets.Where(net => !reviewed.Contains(net)).SelectMany(net => net.SheetOn(layer)?.Islands ?? [])],
            [.. reviewed.SelectMany(net => net.SheetOn(layer)?.Islands ?? [])],
            [.. fields.Where(field => field.Layer == layer).Select(field => field.Sheet)],
            ViasOf(review, layer),
            CallOutsOf(review, layer),
            scale,
            SeenFromBelow: layer == last && last > 1,
            OverlayTheme.Light,
            widthPx);
    }

    private static TitleBlock TitleOf(Review review, int layer, int last, string hash)
    {
        string side = layer == 1 ? " (top)" : layer == last ? " (bottom)" : "";
        return new TitleBlock(
            review.Brief!.Board.Name,
            review.Brief.Board.Revision ?? "",
            FormattableString.Invariant($"Copper layer {layer}{side}, {QuantityText.Length(review.Stack!.ThicknessM[layer - 1])}"),
            "Reviewed nets",
            [
                $"Ambient {QuantityText.Temperature(review.Brief.AmbientK)}",
                $"copper at {QuantityText.Temperature(review.Brief.ConductorK)}",
                $"allowed rise {QuantityText.TemperatureDifference(review.Brief.Limits.TemperatureRiseK)}",
            ],
            Product.NameAndVersion,
            hash);
    }

    private static List<ViaMark> ViasOf(Review review, int layer)
    {
        ConductorRating rating = new(review.Brief!.Limits.JudgeBy, review.Stack!);
        return [.. review.Nets.SelectMany(net => BarrelCurrent
            .BusiestOfEachHole(net.Conduction.Barrels.Where(barrel => barrel.UpperLayer <= layer && layer <= barrel.LowerLayer))
            .Select(barrel => new ViaMark(
                barrel.Barrel.Centre,
                barrel.Barrel.Feature.ToolDiameterNm,
                barrel.CurrentA,
                rating.BarrelRiseK(barrel) > net.Bound.Review.Limits.TemperatureRiseK)))];
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
                    new PointNm((long)Math.Round(Units.NmFromMetres(finding.XM)), (long)Math.Round(Units.NmFromMetres(finding.YM))),
                    finding.Level == FindingLevel.Remark || finding.Waiver is not null ? CallOutRank.Caution : CallOutRank.Fail,
                    $"{finding.Subject}: {finding.Sentence}"));
            }
        }

        return callOuts;
    }

    private static double[] DensityAPerMm2(SheetField sheet, Stackup stack) =>
        Array.ConvertAll(sheet.CornerDensityAPerM2(stack.ThicknessM[sheet.Layer - 1]), density => density * 1e-6);

    /// <summary>The density that 99.8 % of the copper stays below: corners are singular and would take the whole scale.</summary>
    private static double PeakAPerMm2(double[] densitiesAPerMm2)
    {
        double[] densities = [.. densitiesAPerMm2.Where(double.IsFinite)];
        return densities.Length == 0 ? 0 : OrderStatistic.At<double>(densities, (int)(0.998 * (densities.Length - 1)));
    }

    /// <summary>Fingerprint of the inputs: names and contents of the board's files.</summary>
    private static string HashOf(Review review)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        foreach (Reading.BoardFiles.IdentifiedFile file in review.Board!.Files)
        {
            hash.AppendData(Encoding.UTF8.GetBytes(file.File.Name));
            hash.AppendData(file.File.Bytes.Span);
        }

        return Convert.ToHexStringLower(hash.GetHashAndReset())[..16];
    }
}
