using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Nets;

/// <summary>
/// Copper layers and drilled features -> nets. Geometry alone joins copper: islands of a layer that are one piece,
/// and islands of different layers whose copper meets the wall of the same plated hole. Names in the files are
/// claims; they only label what geometry found, and disagreements are reported.
/// </summary>
public static class NetFinder
{
    /// <summary>
    /// Copper this far outside the wall still touches it: covers half a resolution step of coarse drill formats.
    /// </summary>
    private const double WallProbeNm = 1_500;

    /// <summary>Distance between probed points of a wall: below any annular ring that fabricators make.</summary>
    private const double WallStepNm = 100_000;

    public static NetList Find(IReadOnlyList<CopperLayer> layers, IReadOnlyList<DrillArtwork> drills)
    {
        PolygonLocator[] locators = [.. layers.Select(layer => new PolygonLocator(layer.Islands))];
        int[] firstIsland = FirstIslandNumbers(layers);
        DisjointSets sets = new(firstIsland[^1]);
        List<Diagnostic> diagnostics = [];

        BarrelSet barrels = JoinThroughBarrels(layers, drills, locators, firstIsland, sets, diagnostics);
        Dictionary<int, NetDraft> drafts = [];
        for (int l = 0; l < layers.Count; l++)
        {
            for (int i = 0; i < layers[l].Islands.Count; i++)
            {
                DraftOf(drafts, sets.Find(firstIsland[l] + i)).AddIsland(layers[l].Number, layers[l].Islands[i]);
            }
        }

        foreach ((Barrel barrel, int island) in barrels.Joined)
        {
            DraftOf(drafts, sets.Find(island)).Barrels.Add(barrel);
        }

        for (int l = 0; l < layers.Count; l++)
        {
            LabelFromArtwork(layers[l], locators[l], firstIsland[l], sets, drafts);
        }

        List<Net> nets = [.. drafts.OrderBy(entry => entry.Key).Select(entry => entry.Value.ToNet())];
        ReportNameConflicts(drafts, diagnostics);
        nets = MakeNamesUnique(nets);
        nets.Sort((a, b) => b.AreaM2.CompareTo(a.AreaM2) is not 0 and int order
            ? order : string.CompareOrdinal(a.Name, b.Name));
        return new NetList(nets, layers, diagnostics, barrels.PlatedCount, barrels.CompleteCount);
    }

    private static int[] FirstIslandNumbers(IReadOnlyList<CopperLayer> layers)
    {
        int[] first = new int[layers.Count + 1];
        for (int l = 0; l < layers.Count; l++)
        {
            first[l + 1] = first[l] + layers[l].Islands.Count;
        }

        return first;
    }

    private static NetDraft DraftOf(Dictionary<int, NetDraft> drafts, int root)
    {
        if (!drafts.TryGetValue(root, out NetDraft? draft))
        {
            drafts[root] = draft = new NetDraft();
        }

        return draft;
    }

    private sealed record BarrelSet(List<(Barrel Barrel, int Island)> Joined, int PlatedCount, int CompleteCount);

    private static BarrelSet JoinThroughBarrels(
        IReadOnlyList<CopperLayer> layers, IReadOnlyList<DrillArtwork> drills, PolygonLocator[] locators,
        int[] firstIsland, DisjointSets sets, List<Diagnostic> diagnostics)
    {
        List<(Barrel, int)> joined = [];
        int platedCount = 0;
        int completeCount = 0;
        foreach (DrillArtwork drill in drills)
        {
            int inferredPlated = 0;
            int inferredBare = 0;
            foreach (DrilledFeature feature in drill.Features.Where(f => f.Plating != Plating.NonPlated))
            {
                PointNm[] probe = HoleOutline.Of(feature, WallProbeNm);
                List<(int Layer, int Island, double Share)> touched = [];
                for (int l = 0; l < layers.Count; l++)
                {
                    if (InSpan(layers[l].Number, drill))
                    {
                        AddTouched(touched, probe, locators[l], layers[l].Number, firstIsland[l]);
                    }
                }

                bool onBothFaces = MeetsBothEnds(touched, layers, drill);
                bool inferred = feature.Plating == Plating.Unknown;
                if (inferred)
                {
                    // Copper all round the wall on both faces is how a plated hole is drawn; a hole in a bare place is not plated.
                    bool plated = onBothFaces && touched.All(t => t.Share > 0.5);
                    inferredPlated += plated ? 1 : 0;
                    inferredBare += plated ? 0 : 1;
                    if (!plated)
                    {
                        continue;
                    }
                }

                platedCount++;
                completeCount += onBothFaces ? 1 : 0;
                if (touched.Count == 0)
                {
                    continue;
                }

                foreach ((int _, int island, double _) in touched)
                {
                    sets.Join(touched[0].Island, island);
                }

                joined.Add((new Barrel(feature, HoleOutline.Of(feature, 0),
                    [.. touched.Select(t => t.Layer).Distinct()], inferred), touched[0].Island));
            }

            if (inferredPlated + inferredBare > 0)
            {
                diagnostics.Add(new Diagnostic("NET001", Severity.Warning, SourcePosition.WholeFile(drill.File),
                    string.Create(CultureInfo.InvariantCulture,
                        $"no statement of plating; from the copper around them {inferredPlated} holes were taken as plated and {inferredBare} as not"),
                    "plating declared in the drill file or in the brief"));
            }
        }

        return new BarrelSet(joined, platedCount, completeCount);
    }

    private static bool InSpan(int layer, DrillArtwork drill) =>
        drill.FirstLayer == 0 || (layer >= drill.FirstLayer && layer <= drill.LastLayer);

    private static bool MeetsBothEnds(
        List<(int Layer, int Island, double Share)> touched, IReadOnlyList<CopperLayer> layers, DrillArtwork drill)
    {
        int first = drill.FirstLayer == 0 ? layers[0].Number : drill.FirstLayer;
        int last = drill.LastLayer == 0 ? layers[^1].Number : drill.LastLayer;
        return touched.Exists(t => t.Layer == first) && touched.Exists(t => t.Layer == last);
    }

    private static void AddTouched(
        List<(int Layer, int Island, double Share)> touched, PointNm[] probe, PolygonLocator locator, int layer, int firstIsland)
    {
        SortedDictionary<int, int> hits = [];
        int samples = 0;
        foreach (PointNm p in AlongWall(probe))
        {
            samples++;
            int island = locator.Find(p);
            if (island >= 0)
            {
                hits[island] = hits.GetValueOrDefault(island) + 1;
            }
        }

        foreach ((int island, int count) in hits)
        {
            touched.Add((layer, firstIsland + island, (double)count / samples));
        }
    }

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

    private static void LabelFromArtwork(
        CopperLayer layer, PolygonLocator locator, int firstIsland, DisjointSets sets, Dictionary<int, NetDraft> drafts)
    {
        foreach (PaintedObject painted in layer.Artwork.Objects)
        {
            bool isPad = painted.Kind == PaintKind.Flash || painted.Labels.Pin is not null;
            if (painted.Polarity == Polarity.Clear || (!isPad && painted.Labels.Nets.Count == 0))
            {
                continue;
            }

            int island = RepresentativePoints.Of(painted).Select(locator.Find).FirstOrDefault(i => i >= 0, -1);
            if (island < 0)
            {
                continue;
            }

            NetDraft draft = DraftOf(drafts, sets.Find(firstIsland + island));
            foreach (string name in painted.Labels.Nets.Where(name => name.Length > 0 && name != "N/C"))
            {
                draft.Vote(name, isTie: painted.Labels.Nets.Count > 1, painted.Position);
            }

            if (isPad)
            {
                draft.Pads.Add(new Pad(layer.Number, painted.Anchor, painted.Labels.Pin, painted));
            }
        }
    }

    private static void ReportNameConflicts(Dictionary<int, NetDraft> drafts, List<Diagnostic> diagnostics)
    {
        SortedDictionary<string, List<NetDraft>> byName = new(StringComparer.Ordinal);
        foreach (NetDraft draft in drafts.OrderBy(entry => entry.Key).Select(entry => entry.Value))
        {
            if (draft.FirmNames.Count > 1)
            {
                diagnostics.Add(new Diagnostic("NET002", Severity.Warning, draft.Claims[draft.FirmNames[^1]].First,
                    $"one piece of copper claimed by the nets {string.Join(", ", draft.FirmNames)}",
                    "one name per conductor, unless the nets are tied on purpose"));
            }

            foreach (string name in draft.FirmNames)
            {
                if (!byName.TryGetValue(name, out List<NetDraft>? claimed))
                {
                    byName[name] = claimed = [];
                }

                claimed.Add(draft);
            }
        }

        foreach ((string name, List<NetDraft> claimed) in byName.Where(entry => entry.Value.Count > 1))
        {
            diagnostics.Add(new Diagnostic("NET003", Severity.Warning, claimed[1].Claims[name].First,
                string.Create(CultureInfo.InvariantCulture,
                    $"the net name {name} on {claimed.Count} pieces of copper that no plated hole joins"),
                "one conductor per name, unless parts of it are joined by a component or are unplated pads"));
        }
    }

    /// <summary>A split net keeps its name on the largest piece; the others get a suffix, so that names stay keys.</summary>
    private static List<Net> MakeNamesUnique(List<Net> nets)
    {
        Dictionary<string, int> seen = [];
        List<Net> unique = [];
        foreach (Net net in nets.OrderByDescending(net => net.AreaM2).ThenBy(net => net.Name, StringComparer.Ordinal))
        {
            int count = seen[net.Name] = seen.GetValueOrDefault(net.Name) + 1;
            unique.Add(count == 1 ? net : net with
            {
                Name = string.Create(CultureInfo.InvariantCulture, $"{net.Name} (piece {count})"),
            });
        }

        return unique;
    }
}
