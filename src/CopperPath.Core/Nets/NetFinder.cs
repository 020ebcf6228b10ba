using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Polygons;
using CopperPath.Reading.Netlist;

namespace CopperPath.Nets;

/// <summary>
/// Copper layers and drilled features -> nets. Geometry alone joins copper: islands of a layer that are one piece,
/// and islands of different layers whose copper meets the wall of the same plated hole. Names in the files are
/// claims; they only label what geometry found, and disagreements are reported.
/// </summary>
public static class NetFinder
{
    /// <param name="layers">Copper, top to bottom.</param>
    /// <param name="drills">All drill files.</param>
    /// <param name="netlist">A netlist that names nets and checks them, or null.</param>
    public static NetList Find(IReadOnlyList<CopperLayer> layers, IReadOnlyList<DrillArtwork> drills, BoardNetlist? netlist = null)
    {
        PolygonLocator[] locators = [.. layers.Select(layer => new PolygonLocator(layer.Islands))];
        int[] firstIsland = FirstIslandNumbers(layers);
        DisjointSets sets = new(firstIsland[^1]);
        List<Diagnostic> diagnostics = [];
        PointNm shift = default;
        if (netlist is not null)
        {
            (netlist, shift) = NetlistAlignment.Align(netlist, drills, diagnostics);
            drills = NetlistPlating.Apply(drills, netlist, NetlistCheck.ToleranceNm(netlist), diagnostics);
        }

        HoleSurvey survey = HoleSurvey.Of(layers, locators, drills);
        diagnostics.AddRange(survey.Diagnostics);
        List<(Barrel Barrel, int Island)> joined = JoinThroughBarrels(survey, layers, firstIsland, sets);
        Dictionary<int, NetDraft> drafts = [];
        for (int l = 0; l < layers.Count; l++)
        {
            for (int i = 0; i < layers[l].Islands.Count; i++)
            {
                DraftOf(drafts, sets.Find(firstIsland[l] + i)).AddIsland(layers[l].Number, layers[l].Islands[i]);
            }
        }

        foreach ((Barrel barrel, int island) in joined)
        {
            DraftOf(drafts, sets.Find(island)).Barrels.Add(barrel);
        }

        for (int l = 0; l < layers.Count; l++)
        {
            LabelFromArtwork(layers[l], locators[l], firstIsland[l], sets, drafts);
        }

        NetDraft[] inOrder = [.. drafts.OrderBy(entry => entry.Key).Select(entry => entry.Value)];
        ReportNameConflicts(inOrder, diagnostics);
        NetlistAgreement? agreement = null;
        if (netlist is not null)
        {
            NetProbe probe = new(layers, locators, survey, NetlistCheck.ToleranceNm(netlist),
                touched => drafts[sets.Find(firstIsland[touched.LayerIndex] + touched.Island)]);
            (agreement, IReadOnlyList<Diagnostic> findings) = NetlistCheck.Run(netlist, shift, probe, inOrder);
            diagnostics.AddRange(findings);
        }

        List<Net> nets = [.. inOrder.Select(draft => draft.ToNet())];
        nets = MakeNamesUnique(nets);
        nets.Sort((a, b) => b.AreaM2.CompareTo(a.AreaM2) is not 0 and int order
            ? order : string.CompareOrdinal(a.Name, b.Name));
        diagnostics.AddRange(CloseCopper.Report(nets, layers));
        return new NetList(nets, layers, diagnostics, [.. survey.Holes.Select(hole => hole.Landing)]) { Netlist = agreement };
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

    private static List<(Barrel Barrel, int Island)> JoinThroughBarrels(
        HoleSurvey survey, IReadOnlyList<CopperLayer> layers, int[] firstIsland, DisjointSets sets)
    {
        List<(Barrel, int)> joined = [];
        foreach (SurveyedHole hole in survey.Holes.Where(hole => hole.Landing.IsPlated && hole.Islands.Count > 0))
        {
            int[] islands = [.. hole.Islands.Select(touched => firstIsland[touched.LayerIndex] + touched.Island)];
            foreach (int island in islands)
            {
                sets.Join(islands[0], island);
            }

            DrilledFeature feature = hole.Landing.Feature;
            joined.Add((new Barrel(feature, HoleOutline.Of(feature, 0),
                [.. hole.Islands.Select(touched => layers[touched.LayerIndex].Number).Distinct()], hole.Landing.IsInferred), islands[0]));
        }

        return joined;
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
            if (painted.Labels.Nets.Count > 1)
            {
                draft.Tie(painted.Labels.Nets);
            }

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

    private static void ReportNameConflicts(NetDraft[] drafts, List<Diagnostic> diagnostics)
    {
        SortedDictionary<string, List<NetDraft>> byName = new(StringComparer.Ordinal);
        foreach (NetDraft draft in drafts)
        {
            if (draft.NamesContradict)
            {
                diagnostics.Add(new Diagnostic("NET002", Severity.Warning, draft.Claims[draft.FirmNames[^1]].First,
                    $"one piece of copper claimed by the nets {string.Join(", ", draft.FirmNames)}",
                    "one name per conductor, or an object that carries both names where nets are tied on purpose"));
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
