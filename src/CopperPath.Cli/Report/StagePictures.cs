using CopperPath.Brief;
using CopperPath.Cli.Overlays;
using CopperPath.Cli.Overlays.Stages;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.PowerPath;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>The stages of a review on the board: all layers folded into one picture, and each face.</summary>
internal static class StagePictures
{
    /// <summary>Name of the picture of all layers, without its ending.</summary>
    public const string Name = "stages";

    private const int SurveyWidthPx = 1800;

    /// <param name="review">A review with at least one net.</param>
    /// <param name="stretches">Its stretches.</param>
    /// <param name="view">The part of the board that the pictures show.</param>
    /// <param name="hash">Fingerprint of the inputs.</param>
    /// <param name="theme">Their ground.</param>
    /// <param name="widthPx">Width of each, pixels.</param>
    public static IReadOnlyList<(string Name, StageScene Scene)> Of(
        Review review, IReadOnlyList<Stretch> stretches, BoxNm view, string hash, OverlayTheme theme, int widthPx)
    {
        int[] layers = [.. review.Board!.Nets!.Layers.Select(layer => layer.Number)];
        List<(string, StageScene)> pictures = [(Name, SceneOf(review, stretches, layers, "all layers folded into one", view, hash, theme, widthPx))];
        if (layers.Length > 1)
        {
            pictures.Add(($"{Name}-top", SceneOf(review, stretches, [layers[0]], "top face", view, hash, theme, widthPx)));
            pictures.Add(($"{Name}-bottom", SceneOf(review, stretches, [layers[^1]], "bottom face", view, hash, theme, widthPx) with { SeenFromBelow = true }));
        }

        return pictures;
    }

    /// <summary>The stages that the copper suggests, all layers folded into one.</summary>
    /// <param name="survey">A survey with nets.</param>
    /// <param name="name">What the board is called.</param>
    public static StageScene OfSurvey(Survey survey, string name)
    {
        Board board = survey.Board;
        int[] layers = [.. board.Nets!.Layers.Select(layer => layer.Number)];
        IReadOnlyList<StageProposal> stages = survey.Path?.Stages ?? [];
        HashSet<Net> staged = [.. stages.Select(stage => stage.Net)];
        (StageProposal[] Stages, Net Net)[] nets = [.. stages.GroupBy(stage => stage.Net, ReferenceEqualityComparer.Instance)
            .Select(group => (group.ToArray(), (Net)group.Key!)).OrderBy(net => KindOf(net.Item1[0].Role))];
        BoxNm whole = board.Bounds.GrownBy((long)(PicturedArea.WholeMarginShare * Math.Max(board.Bounds.WidthNm, board.Bounds.HeightNm)));
        return new StageScene(
            new TitleBlock(name, "", "all layers folded into one", stages.Count > 0 ? "Power path proposed from the copper alone; confirm each stage" : "No converter was recognised", [], Product.NameAndVersion, ""),
            whole,
            board.Profile,
            [.. board.Nets.Nets.Where(net => !staged.Contains(net)).SelectMany(net => IslandsOn(net, layers))],
            [.. nets.GroupBy(net => KindOf(net.Stages[0].Role)).Select(kind => new StageInWords(
                kind.Key,
                kind.Count() == 1 ? kind.First().Net.Name : FormattableString.Invariant($"{kind.Count()} × {StageWords.Of(kind.Key)}"),
                kind.Count() == 1 ? StageWords.Of(kind.Key) : string.Join(", ", kind.Select(net => net.Net.Name))))],
            [.. nets.Select(net => new StageFill(
                KindOf(net.Stages[0].Role), net.Net.Name, $"{ProposalSummary.NameOf(net.Stages[0])}, {ProposalSummary.ConfidenceText(net.Stages[0])}", [.. IslandsOn(net.Net, layers)]))],
            [.. stages.SelectMany(stage => stage.Parts).Select(part => part.Part).Distinct().Where(part => part.IsNamed)
                .Select(part => new StagePartMark(part.Name, BoxNm.Around(part.Pads.Select(pad => pad.Box))))],
            [],
            SeenFromBelow: false,
            OverlayTheme.Light,
            SurveyWidthPx);
    }

    private static StageScene SceneOf(
        Review review, IReadOnlyList<Stretch> stretches, int[] layers, string layerText, BoxNm view, string hash, OverlayTheme theme, int widthPx)
    {
        HashSet<Net> staged = [.. stretches.Select(stretch => stretch.Solved.Bound.Net)];
        (Stretch[] Stretches, Net Net)[] nets = [.. stretches.GroupBy(stretch => stretch.Solved.Bound.Net, ReferenceEqualityComparer.Instance)
            .Select(group => (group.ToArray(), (Net)group.Key!)).OrderBy(net => KindOf(net.Item1[0].Role)).ThenBy(net => net.Item1[0].Number)];
        return new StageScene(
            new TitleBlock(
                review.Brief!.Board.Name, review.Brief.Board.Revision ?? "", layerText, "Power path by stages",
                ["a cross: current goes in, a dot: it comes out", $"allowed rise {QuantityText.TemperatureDifference(review.Brief.Limits.TemperatureRiseK)}"],
                Product.NameAndVersion, hash),
            view,
            review.Board!.Profile,
            [.. review.Board.Nets!.Nets.Where(net => !staged.Contains(net)).SelectMany(net => IslandsOn(net, layers)).Where(island => island.Bounds.Touches(view))],
            [.. nets.GroupBy(net => KindOf(net.Stretches[0].Role)).Select(kind => new StageInWords(
                kind.Key,
                kind.Count() == 1 ? kind.First().Stretches[0].Name : FormattableString.Invariant($"{kind.Count()} × {StageWords.Of(kind.Key)}"),
                FactsOf([.. kind.SelectMany(net => net.Stretches)])))],
            [.. nets.Select(net => new StageFill(KindOf(net.Stretches[0].Role), net.Stretches[0].Name, FactsOf(net.Stretches), [.. IslandsOn(net.Net, layers)]))],
            PartsOf(review, layers),
            [.. nets.SelectMany(net => EndsOf(net.Stretches[0], layers))],
            SeenFromBelow: false,
            theme,
            widthPx);
    }

    private static IEnumerable<PolygonNm> IslandsOn(Net net, int[] layers) =>
        net.Sheets.Where(sheet => layers.Contains(sheet.Layer)).SelectMany(sheet => sheet.Islands);

    /// <summary>The largest figures of some stretches.</summary>
    private static string FactsOf(Stretch[] stretches)
    {
        Stretch[] solved = [.. stretches.Where(stretch => stretch.IsSolved)];
        if (solved.Length == 0)
        {
            return $"{QuantityText.Current(stretches[0].EnteringA)}, not solved";
        }

        string rise = solved.Select(stretch => stretch.Own?.PeakK).OfType<double>().Select(k => (double?)k).Max() is { } peakK
            ? $", {QuantityText.TemperatureDifference(peakK)} of {QuantityText.TemperatureDifference(solved[0].Solved.Bound.Review.Limits.TemperatureRiseK)}" : "";
        double leastA = solved.Min(stretch => stretch.EnteringA);
        double mostA = solved.Max(stretch => stretch.EnteringA);
        string current = leastA < 0.995 * mostA ? $"up to {QuantityText.Current(mostA)}" : QuantityText.Current(mostA);
        return $"{current}, {QuantityText.Voltage(solved.Max(stretch => stretch.Conduction.DropV))}{rise}";
    }

    /// <summary>Parts that the contacts' pins belong to, where the files name pins.</summary>
    private static IReadOnlyList<StagePartMark> PartsOf(Review review, int[] layers)
    {
        HashSet<string> names = [.. review.Nets.SelectMany(net => net.Bound.Terminals).SelectMany(terminal => terminal.Contacts)
            .Select(contact => contact.Name.Split('.')[0])];
        return [.. review.Board!.Nets!.Nets.SelectMany(net => net.Pads)
            .Where(pad => pad.Pin is { } pin && names.Contains(pin.Component) && layers.Contains(pad.Layer))
            .GroupBy(pad => pad.Pin!.Component).OrderBy(part => part.Key, StringComparer.Ordinal)
            .Select(part => new StagePartMark(part.Key, BoxNm.Around(part.SelectMany(pad => pad.Outlines).Select(ring => BoxNm.Of(ring)))))];
    }

    private static IEnumerable<StageEnd> EndsOf(Stretch stretch, int[] layers)
    {
        foreach (BoundTerminal terminal in stretch.Solved.Bound.Terminals.Where(terminal => terminal.CurrentA != 0))
        {
            PointNm[] places = [.. terminal.Contacts.SelectMany(contact => contact.Areas.Where(area => layers.Contains(area.Layer)).Select(area => BoxNm.Of(area.Outline).Centre)
                .Concat(contact.Barrels.Select(barrel => barrel.Centre)))];
            if (places.Length > 0)
            {
                yield return new StageEnd(
                    KindOf(stretch.Role), new PointNm((long)places.Average(place => (double)place.X), (long)places.Average(place => (double)place.Y)),
                    terminal.CurrentA, QuantityText.Current(Math.Abs(terminal.CurrentA)));
            }
        }
    }

    private static StageKind KindOf(StageRole role) => role switch
    {
        StageRole.Feed or StageRole.FeedReturn => StageKind.Feed,
        StageRole.Input or StageRole.HighSideSupply => StageKind.Input,
        StageRole.SwitchNode => StageKind.SwitchNode,
        StageRole.Output => StageKind.Output,
        _ => StageKind.Return,
    };

    /// <summary>The stage a reviewed stretch belongs to.</summary>
    public static StageKind KindOf(NetRole role) => role switch
    {
        NetRole.Feed => StageKind.Feed,
        NetRole.Input => StageKind.Input,
        NetRole.SwitchNode => StageKind.SwitchNode,
        NetRole.Output => StageKind.Output,
        NetRole.Return => StageKind.Return,
        _ => StageKind.Other,
    };
}
