using System.Globalization;
using CopperPath.Brief.Yaml;
using CopperPath.OutsideText;
using CopperPath.Quantities;

namespace CopperPath.Brief;

/// <summary>Reads <c>load profile</c>.</summary>
internal static class LoadProfileReader
{
    internal static readonly IReadOnlyList<(string Word, LoadStart Value)> Starts =
        [("ambient", LoadStart.Ambient), ("steady", LoadStart.Steady)];

    // Beyond these a unit was mistaken. Common practice, no source.
    private const double LeastTimeS = 1e-7;
    private const double MostTimeS = 1e7;
    private const double MostFactor = 1000;

    /// <summary>Steps of the solve end at every point.</summary>
    internal const int MostPoints = 1000;

    private const double MostExponent = 4;

    /// <summary>The profile; null when the brief has none, or after saying what is wrong with it.</summary>
    public static LoadProfile? Read(SectionReader root, IReadOnlyList<NetReview> nets, BriefContext context)
    {
        if (root.Optional("load profile") is not { } node || SectionReader.Open(node, BriefKeys.LoadProfile, context.Sink) is not { } section)
        {
            return null;
        }

        int faultsBefore = context.Sink.ErrorCount;
        LoadCurve? whole = section.Has("points") || section.Has("csv") ? ReadCurve(section, null, context) : null;
        Dictionary<string, LoadCurve> ofStretches = ReadStretches(section, nets, context);
        double? periodS = ReadTime(section, "period", context);
        double? untilS = ReadTime(section, "until", context);
        LoadStart start = LoadStart.Ambient;
        if (section.Optional("start") is { } startNode)
        {
            start = context.Values.Choice(startNode, Starts) ?? start;
        }

        double? exponent = section.Optional("parts exponent") is { } exponentNode ? context.Values.Number(exponentNode, 0, MostExponent) : null;
        if (context.Sink.ErrorCount > faultsBefore)
        {
            return null;
        }

        LoadCurve[] curves = [.. ofStretches.Values, .. whole is null ? [] : new[] { whole }];
        double lastS = curves.Length == 0 ? 0 : curves.Max(curve => curve.Points[^1].TimeS);
        double durationS = periodS ?? untilS ?? lastS;
        if (curves.Length == 0)
        {
            return Refused("neither `points`, `csv` nor `stretches`", "current against time, e.g. `points: [[0 s, 1], [10 s, 1], [10 s, 2.5]]`");
        }

        if (periodS is not null && (untilS is not null || section.Has("start")))
        {
            return Refused($"`{(untilS is null ? "start" : "until")}` beside `period`", "`period` alone: what repeats for ever has no beginning and no end");
        }

        if (durationS <= 0 || lastS > durationS)
        {
            return Refused($"points up to {QuantityText.Time(lastS)} in a profile of {QuantityText.Time(durationS)}", "a last point after 0 s and no later than `until` or `period`");
        }

        if (periodS is null && !section.Has("start"))
        {
            context.StateDefault("load profile: start: ambient, the board is as warm as the air at first");
        }

        if (exponent is null)
        {
            context.StateDefault("load profile: the heat of parts goes with the factor f on all currents as the larger of f and f squared (common practice, no source)"
                + (whole is null ? "; without `points` for all currents it stays as it is" : ""));
        }

        return new LoadProfile(whole, ofStretches, durationS, periodS is not null, start, exponent, section.Position);

        LoadProfile? Refused(string found, string expected)
        {
            context.Sink.Error(BriefCodes.LoadProfile, section.Position, found, expected);
            return null;
        }
    }

    private static double? ReadTime(SectionReader section, string key, BriefContext context) => section.Optional(key) is { } node
        ? context.Values.QuantitySi(node, Dimension.Time, LeastTimeS, MostTimeS, QuantityText.Time) : null;

    private static Dictionary<string, LoadCurve> ReadStretches(SectionReader profile, IReadOnlyList<NetReview> nets, BriefContext context)
    {
        Dictionary<string, LoadCurve> curves = [];
        if (profile.Optional("stretches") is not { } node)
        {
            return curves;
        }

        foreach (YamlNode item in context.Values.OneOrMany(node, "at least one stretch"))
        {
            if (SectionReader.Open(item, BriefKeys.StretchLoad, context.Sink) is not { } section
                || section.Required("stretch", "`stretch: Feed`: the current of which entry of `nets`?") is not { } nameNode
                || context.Values.Text(nameNode, "the name of an entry of `nets`") is not { } name)
            {
                continue;
            }

            if (nets.FirstOrDefault(net => net.Name == name) is not { } net)
            {
                context.Sink.Error(BriefCodes.FaultStretch, section.PositionOf("stretch"), () => ($"the stretch '{name}'",
                    "the name of an entry of `nets`" + (NearestName.Of(name, nets.Select(other => other.Name)) is { } near ? $"; did you mean '{near}'?" : "")));
            }
            else if (ReadCurve(section, net.Terminals.Where(terminal => terminal.CurrentA > 0).Sum(terminal => terminal.CurrentA), context) is { } curve
                && !curves.TryAdd(name, curve))
            {
                context.Sink.Error(BriefCodes.RepeatedName, section.PositionOf("stretch"), $"a load of '{name}' again", "one for each stretch");
            }
        }

        return curves;
    }

    /// <param name="section">Has `points` or `csv`.</param>
    /// <param name="enteringA">Current that enters the stretch as stated, by which amperes become factors; null where no amperes may stand.</param>
    /// <param name="context">Where faults go.</param>
    private static LoadCurve? ReadCurve(SectionReader section, double? enteringA, BriefContext context)
    {
        if (section.Has("points") == section.Has("csv"))
        {
            context.Sink.Error(BriefCodes.LoadProfile, section.Position, section.Has("csv") ? "both `points` and `csv`" : "neither `points` nor `csv`",
                "one of them, e.g. `points: [[0 s, 1], [10 s, 1], [10 s, 2.5]]`");
            return null;
        }

        if (section.Optional("csv") is { } csv)
        {
            return context.Values.Text(csv, "the name of a table of current against time") is not { } file ? null
                : InOrder(LoadTable.Read(csv, file, enteringA, context.Sink), csv, context);
        }

        return section.Optional("points") is not { } node ? null : InOrder(ReadPoints(node, enteringA, context), node, context);
    }

    private static List<LoadPoint>? ReadPoints(YamlNode node, double? enteringA, BriefContext context)
    {
        List<LoadPoint> points = [];
        foreach (YamlNode item in context.Values.OneOrMany(node, "at least one point"))
        {
            if (item is not YamlList { Items: [var time, var load] })
            {
                context.Sink.Error(BriefCodes.WrongShape, item.Position, item.Shape, "a point `[time, factor]`, e.g. `[10 ms, 2.5]`");
                return null;
            }

            bool isAmperes = enteringA is not null && load is YamlText { Text: { } text } && text.TrimEnd().EndsWith('A');
            double? timeS = context.Values.QuantitySi(time, Dimension.Time, 0, MostTimeS, QuantityText.Time);
            double? factor = isAmperes ? context.Values.QuantitySi(load, Dimension.Current, 0, MostFactor * enteringA!.Value, QuantityText.Current) / enteringA
                : context.Values.Number(load, 0, MostFactor);
            if (timeS is null || factor is null)
            {
                return null;
            }

            points.Add(new LoadPoint(timeS.Value, factor.Value));
        }

        return points;
    }

    private static LoadCurve? InOrder(List<LoadPoint>? points, YamlNode node, BriefContext context)
    {
        if (points is null || points.Count == 0)
        {
            return null;
        }

        for (int k = 1; k < points.Count; k++)
        {
            if (points[k].TimeS < points[k - 1].TimeS || (k > 1 && points[k].TimeS == points[k - 2].TimeS))
            {
                context.Sink.Error(BriefCodes.LoadProfile, node.Position,
                    string.Create(CultureInfo.InvariantCulture, $"point {k + 1} at {QuantityText.Time(points[k].TimeS)} after one at {QuantityText.Time(points[k - 1].TimeS)}"),
                    "points in the order of time, at most two at one time");
                return null;
            }
        }

        if (points.Count > MostPoints)
        {
            context.Sink.Error(BriefCodes.LoadProfile, node.Position, string.Create(CultureInfo.InvariantCulture, $"{points.Count} points"),
                string.Create(CultureInfo.InvariantCulture, $"at most {MostPoints}"));
            return null;
        }

        return new LoadCurve(points);
    }
}
