using System.Globalization;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Something with a range, at one end of it.</summary>
/// <param name="Apply">A state with this one thing there.</param>
/// <param name="Words">What is so then, as the end of a sentence: <c>films of still air are 25 % weaker</c>.</param>
internal sealed record RangeEnd(Func<BuildState, BuildState> Apply, string Words);

/// <summary>Something with a range, at either end of it.</summary>
/// <param name="Name">How reports call it.</param>
/// <param name="Usual">The end that is usually the worse one.</param>
/// <param name="Other">The other end.</param>
internal sealed record ToleranceItem(string Name, RangeEnd Usual, RangeEnd Other)
{
    public const string Ambient = "ambient";

    /// <summary>What resistance rests on: each layer by itself.</summary>
    public static IReadOnlyList<ToleranceItem> OfResistance(BoardRanges ranges) =>
        [.. Copper(ranges), .. Common(ranges)];

    /// <summary>What temperatures rest on; all copper together, since each item is solved by itself.</summary>
    public static IReadOnlyList<ToleranceItem> OfHeat(BoardRanges ranges)
    {
        IReadOnlyList<ToleranceItem> layers = [.. Copper(ranges)];
        List<ToleranceItem> items = layers.Count == 0 ? [] : [new ToleranceItem("copper", All(layers, layer => layer.Usual, "copper is at its least"), All(layers, layer => layer.Other, "copper is at its most"))];
        items.AddRange(Common(ranges));
        AddFactor(items, "film of still air", ranges.StillAir, (state, scale) => state with { StillAirScale = scale }, "films of still air are", "weaker", "stronger");
        AddFactor(items, "stated film", ranges.StatedFilm, (state, scale) => state with { StatedFilmScale = scale }, "stated films are", "weaker", "stronger");
        if (ranges.LaminateThrough.Least < 1 || ranges.LaminateInPlane.Least < 1 || ranges.LaminateThrough.Most > 1 || ranges.LaminateInPlane.Most > 1)
        {
            items.Add(new ToleranceItem("conductivity of laminate",
                new RangeEnd(state => state with { LaminateScale = (ranges.LaminateThrough.Least, ranges.LaminateInPlane.Least) }, "laminate conducts the least"),
                new RangeEnd(state => state with { LaminateScale = (ranges.LaminateThrough.Most, ranges.LaminateInPlane.Most) }, "laminate conducts the most")));
        }

        AddFactor(items, "thickness of laminate", ranges.LaminateThickness, (state, scale) => state with { LaminateThicknessScale = scale },
            "laminate is", "thinner", "thicker", isMostWorse: true);
        return items;
    }

    private static RangeEnd All(IReadOnlyList<ToleranceItem> items, Func<ToleranceItem, RangeEnd> end, string words) =>
        new(state => items.Aggregate(state, (sofar, item) => end(item).Apply(sofar)), words);

    private static IEnumerable<ToleranceItem> Copper(BoardRanges ranges)
    {
        for (int layer = 1; layer <= ranges.CopperM.Count; layer++)
        {
            (int index, ValueRange range) = (layer - 1, ranges.CopperM[layer - 1]);
            if (range.Least < range.Most)
            {
                yield return new ToleranceItem(string.Create(CultureInfo.InvariantCulture, $"copper of layer {layer}"), At(range.Least), At(range.Most));
            }

            RangeEnd At(double thicknessM) => new(
                state => state with { CopperM = [.. state.CopperM.Select((own, k) => k == index ? thicknessM : own)] },
                string.Create(CultureInfo.InvariantCulture, $"layer {index + 1} has {QuantityText.Length(thicknessM)} of copper"));
        }
    }

    /// <summary>What both rest on.</summary>
    private static List<ToleranceItem> Common(BoardRanges ranges)
    {
        List<ToleranceItem> items = [];
        if (ranges.PlatingM.Least < ranges.PlatingM.Most)
        {
            RangeEnd At(double platingM) => new(state => state with { PlatingM = platingM }, $"holes have {QuantityText.Length(platingM)} of plating");
            items.Add(new ToleranceItem("plating", At(ranges.PlatingM.Least), At(ranges.PlatingM.Most)));
        }

        if (ranges.AmbientK.Least < ranges.AmbientK.Most)
        {
            RangeEnd At(double ambientK) => new(state => state with { AmbientK = ambientK }, $"the air is at {QuantityText.Temperature(ambientK)}");
            items.Add(new ToleranceItem(Ambient, At(ranges.AmbientK.Most), At(ranges.AmbientK.Least)));
        }

        AddFactor(items, "current", ranges.Current, (state, scale) => state with { CurrentScale = scale }, "currents are", "smaller", "larger", isMostWorse: true);
        return items;
    }

    private static void AddFactor(
        List<ToleranceItem> items, string name, ValueRange range, Func<BuildState, double, BuildState> with, string what, string less, string more, bool isMostWorse = false)
    {
        if (range.Least < range.Most)
        {
            (RangeEnd least, RangeEnd most) = (At(range.Least), At(range.Most));
            items.Add(isMostWorse ? new ToleranceItem(name, most, least) : new ToleranceItem(name, least, most));
        }

        RangeEnd At(double scale) => new(state => with(state, scale),
            string.Create(CultureInfo.InvariantCulture, $"{what} {100 * Math.Abs(scale - 1):0.#} % {(scale < 1 ? less : more)}"));
    }
}
