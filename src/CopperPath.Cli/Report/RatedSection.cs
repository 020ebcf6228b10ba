using CopperPath.Electrical;

namespace CopperPath.Cli.Report;

/// <summary>A cut across the current and what it is rated to warm by.</summary>
/// <param name="Section">The cut.</param>
/// <param name="RiseK">Rise by the chosen relation, kelvin.</param>
internal sealed record RatedSection(Section Section, double RiseK)
{
    /// <summary>Cuts of a stretch that any output lists; tens of thousands of mild ones are left out.</summary>
    private const int Kept = 500;

    /// <summary>The hottest cuts, hottest first, those alike from left to right and upwards.</summary>
    /// <param name="sections">All cuts of a stretch.</param>
    /// <param name="risesK">Rise of each, kelvin.</param>
    public static IReadOnlyList<RatedSection> Hottest(IReadOnlyList<Section> sections, double[] risesK)
    {
        if (risesK.Length == 0)
        {
            return [];
        }

        double leastK = OrderStatistic.At<double>([.. risesK], Math.Max(0, risesK.Length - Kept));
        return [.. sections.Zip(risesK, (section, riseK) => new RatedSection(section, riseK)).Where(rated => rated.RiseK >= leastK)
            .OrderByDescending(rated => rated.RiseK).ThenBy(rated => rated.Section.AtXM).ThenBy(rated => rated.Section.AtYM).Take(Kept)];
    }

    /// <summary>The hottest cut of each layer that has any, from the top.</summary>
    /// <param name="sections">All cuts of a stretch.</param>
    /// <param name="risesK">Rise of each, kelvin.</param>
    public static IReadOnlyList<RatedSection> HottestOfEachLayer(IReadOnlyList<Section> sections, double[] risesK)
    {
        SortedDictionary<int, RatedSection> hottest = [];
        for (int i = 0; i < risesK.Length; i++)
        {
            if (!hottest.TryGetValue(sections[i].Layer, out RatedSection? known) || risesK[i] > known.RiseK)
            {
                hottest[sections[i].Layer] = new RatedSection(sections[i], risesK[i]);
            }
        }

        return [.. hottest.Values];
    }
}
