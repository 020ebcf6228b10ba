using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Nets;

/// <summary>Which copper each drilled hole meets, and which holes are taken as plated.</summary>
internal sealed class HoleSurvey
{
    /// <summary>
    /// Copper this far outside the wall still touches it: covers half a resolution step of coarse drill formats.
    /// </summary>
    private const double WallProbeNm = 1_500;

    /// <summary>Distance between probed points of a wall: below any annular ring that fabricators make.</summary>
    private const double WallStepNm = 100_000;

    /// <summary>Most doubtful holes listed one by one.</summary>
    private const int MaxListed = 10;

    private readonly IReadOnlyList<CopperLayer> _layers;
    private readonly PolygonLocator[] _locators;
    private readonly List<SurveyedHole> _holes = [];
    private readonly List<Diagnostic> _diagnostics = [];

    private HoleSurvey(IReadOnlyList<CopperLayer> layers, PolygonLocator[] locators)
    {
        _layers = layers;
        _locators = locators;
    }

    /// <summary>All holes in file order.</summary>
    public IReadOnlyList<SurveyedHole> Holes => _holes;

    public IReadOnlyList<Diagnostic> Diagnostics => _diagnostics;

    /// <param name="layers">Copper, top to bottom.</param>
    /// <param name="locators">One for each layer, over its islands.</param>
    /// <param name="drills">All drill files.</param>
    public static HoleSurvey Of(
        IReadOnlyList<CopperLayer> layers, PolygonLocator[] locators, IReadOnlyList<DrillArtwork> drills)
    {
        HoleSurvey survey = new(layers, locators);
        foreach (DrillArtwork drill in drills)
        {
            int first = survey._holes.Count;
            survey._holes.AddRange(drill.Features.Select(feature => survey.Probe(feature, drill)));
            survey.ReportInferred(drill.File, [.. survey._holes.Skip(first).Select(hole => hole.Landing).Where(hole => hole.IsInferred)]);
        }

        return survey;
    }

    private SurveyedHole Probe(DrilledFeature feature, DrillArtwork drill)
    {
        PointNm[] wall = [.. AlongWall(HoleOutline.Of(feature, WallProbeNm))];
        List<TouchedIsland> touched = [];
        List<LayerLanding> landings = [];
        for (int l = 0; l < _layers.Count; l++)
        {
            if (InSpan(_layers[l].Number, drill))
            {
                int[] hits = [.. wall.Select(_locators[l].Find).Where(island => island >= 0)];
                touched.AddRange(hits.Distinct().Order().Select(island => new TouchedIsland(l, island)));
                landings.Add(new LayerLanding(_layers[l].Number, (double)hits.Length / wall.Length));
            }
        }

        bool isInferred = feature.Plating == Plating.Unknown;
        bool isPlated = isInferred ? LooksPlated(landings) : feature.Plating == Plating.Plated;
        return new SurveyedHole(new HoleLanding(feature, drill.File, isPlated, isInferred, landings), touched);
    }

    /// <summary>
    /// Copper round most of the wall on both faces, and on every layer between where there is any, is how a plated hole
    /// is drawn; an unplated one stands in the bare, or in a land no larger than itself. Common practice, no source.
    /// </summary>
    private static bool LooksPlated(List<LayerLanding> landings) =>
        landings.Count > 0 && landings[0].Share > 0.5 && landings[^1].Share > 0.5
        && landings.TrueForAll(landing => landing.Share is 0 or > 0.5);

    private static bool InSpan(int layer, DrillArtwork drill) =>
        drill.FirstLayer == 0 || (layer >= drill.FirstLayer && layer <= drill.LastLayer);

    private void ReportInferred(string file, HoleLanding[] inferred)
    {
        if (inferred.Length == 0)
        {
            return;
        }

        int plated = inferred.Count(hole => hole.IsPlated);
        _diagnostics.Add(new Diagnostic("NET001", Severity.Warning, SourcePosition.WholeFile(file),
            string.Create(CultureInfo.InvariantCulture,
                $"no statement of plating; from the copper around them {plated} holes were taken as plated and {inferred.Length - plated} as not, which are cut from the copper"),
            "plating declared in the drill file or in the brief"));

        // Copper of two layers at the wall: were the hole plated after all, it would join them.
        HoleLanding[] doubtful = [.. inferred.Where(hole => !hole.IsPlated && hole.Layers.Count(layer => layer.Share > 0) > 1)];
        foreach (HoleLanding hole in doubtful.Take(MaxListed))
        {
            _diagnostics.Add(new Diagnostic("NET004", Severity.Warning, hole.Feature.Position,
                $"a hole with no statement of plating that meets copper on layers {Shares(hole)}, which is neither how a plated nor how an unplated hole is drawn",
                "plating declared; taken as unplated, so it joins no layers", AffectsCopper: true));
        }

        if (doubtful.Length > MaxListed)
        {
            _diagnostics.Add(new Diagnostic("NET004", Severity.Warning, SourcePosition.WholeFile(file),
                string.Create(CultureInfo.InvariantCulture, $"{doubtful.Length - MaxListed} more holes of this kind"),
                "plating declared; taken as unplated", AffectsCopper: true));
        }
    }

    private static string Shares(HoleLanding hole) => string.Join(", ", hole.Layers.Where(layer => layer.Share > 0).Select(layer =>
        string.Create(CultureInfo.InvariantCulture, $"{layer.Layer} ({100 * layer.Share:0} % of its wall)")));

    /// <summary>Corners of the wall and points between them: the straight sides of a slot meet copper too.</summary>
    private static IEnumerable<PointNm> AlongWall(PointNm[] wall)
    {
        for (int i = 0; i < wall.Length; i++)
        {
            PointNm a = wall[i];
            PointNm b = wall[(i + 1) % wall.Length];
            int steps = (int)Math.Ceiling(a.DistanceNmTo(b) / WallStepNm);
            for (int k = 0; k < steps; k++)
            {
                yield return new PointNm(a.X + ((b.X - a.X) * k / steps), a.Y + ((b.Y - a.Y) * k / steps));
            }
        }
    }
}

/// <summary>A hole with the islands its wall meets.</summary>
internal sealed record SurveyedHole(HoleLanding Landing, IReadOnlyList<TouchedIsland> Islands);

/// <summary>An island by the index of its layer and its index there.</summary>
internal readonly record struct TouchedIsland(int LayerIndex, int Island);
