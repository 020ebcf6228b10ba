using System.Globalization;
using CopperPath.Geometry;
using CopperPath.Polygons;
using CopperPath.Quantities;

namespace CopperPath.PowerPath;

/// <summary>
/// Puts parts together from pads that carry no names: ball arrays first, then rows of leads, pins in holes, four- and
/// two-terminal parts, and last whatever pads stand close together. Every part found is a guess.
/// </summary>
internal static class PadPatterns
{
    /// <summary>Gap over pad length of a two-terminal part: below, the two are pads of different parts; above, too far apart. Common practice, no source.</summary>
    private const double LeastGapRatio = 0.4;
    private const double MostGapRatio = 3;

    /// <summary>Pitch of neighbouring leads of a package, at most. Common practice, no source.</summary>
    private const long MostLeadPitchNm = 13 * Units.NmPerMm / 10;

    /// <summary>Gap between pads of one part, where nothing else tells.</summary>
    private const long MostClusterGapNm = Units.NmPerMm;

    /// <summary>Pitch over land size of pins of one connector, at most.</summary>
    private const double MostPinPitchRatio = 2.3;

    /// <summary>Pads of chokes and shunts: smaller ones are signal parts.</summary>
    internal const double LeastFourTerminalPadM2 = 3e-6;

    public static IReadOnlyList<Part> PartsOf(IReadOnlyList<PartPad> pads)
    {
        List<Part> parts = [];
        foreach (IGrouping<int, PartPad> side in pads.GroupBy(pad => pad.Pad.Layer).OrderBy(side => side.Key))
        {
            List<PartPad> free = [.. side.OrderBy(pad => pad.At.X).ThenBy(pad => pad.At.Y)];
            Take(free, parts, PartShape.ThroughHole, PinGroups(free));
            Take(free, parts, PartShape.Array, Arrays(free));
            Take(free, parts, PartShape.Package, LeadPackages(free));
            Take(free, parts, PartShape.FourTerminal, Rectangles(free));
            Take(free, parts, PartShape.TwoTerminal, FacingPairs(free));
            Take(free, parts, PartShape.Package, Clusters(free, (a, b) => a.GapNmTo(b) <= MostClusterGapNm));
        }

        return [.. parts.OrderBy(part => part.Centre.X).ThenBy(part => part.Centre.Y).ThenBy(part => part.Name, StringComparer.Ordinal)];
    }

    private static void Take(List<PartPad> free, List<Part> parts, PartShape shape, List<List<PartPad>> groups)
    {
        foreach (List<PartPad> group in groups)
        {
            parts.Add(new Part(NameOf(group), IsNamed: false, group.Count == 1 ? PartShape.SinglePad : shape, group));
        }

        HashSet<PartPad> taken = new(groups.SelectMany(group => group), ReferenceEqualityComparer.Instance);
        free.RemoveAll(taken.Contains);
    }

    private static string NameOf(List<PartPad> group)
    {
        PointNm at = BoxNm.Around(group.Select(pad => pad.Box)).Centre;
        return string.Create(CultureInfo.InvariantCulture,
            $"part@{Units.MetresFromNm(at.X) * 1e3:0.##},{Units.MetresFromNm(at.Y) * 1e3:0.##}");
    }

    /// <summary>Pins with like holes at a connector's pitch.</summary>
    private static List<List<PartPad>> PinGroups(List<PartPad> free) => Clusters(
        [.. free.Where(pad => pad.HoleDiameterNm > 0)],
        (a, b) => a.HoleDiameterNm == b.HoleDiameterNm
            && a.At.DistanceNmTo(b.At) <= MostPinPitchRatio * Math.Max(Math.Max(a.Box.WidthNm, a.Box.HeightNm), Math.Max(b.Box.WidthNm, b.Box.HeightNm)));

    /// <summary>Pads with a like neighbour at one distance on all four sides, and those neighbours.</summary>
    private static List<List<PartPad>> Arrays(List<PartPad> free)
    {
        DisjointSets sets = new(free.Count);
        bool[] isMember = new bool[free.Count];
        for (int i = 0; i < free.Count; i++)
        {
            PartPad pad = free[i];
            int[] near = [.. Window(free, i, 4 * Math.Max(pad.Box.WidthNm, pad.Box.HeightNm)).Where(j => free[j].IsCongruentTo(pad))];
            if (near.Length < 4)
            {
                continue;
            }

            double pitchNm = near.Min(j => free[j].At.DistanceNmTo(pad.At));
            int[] sides = [.. near.Where(j => free[j].At.DistanceNmTo(pad.At) <= 1.05 * pitchNm)];
            if (sides.Length >= 4)
            {
                isMember[i] = true;
                foreach (int j in sides)
                {
                    isMember[j] = true;
                    sets.Join(i, j);
                }
            }
        }

        return GroupsOf(free, sets, i => isMember[i]);
    }

    /// <summary>Packages with leads: rows of three or more like pads at one small pitch on different nets, and the pads between and beside them.</summary>
    private static List<List<PartPad>> LeadPackages(List<PartPad> free)
    {
        List<List<PartPad>> rows = LeadRows(free);
        List<BoxNm> boxes = [.. rows.Select(row => BoxNm.Around(row.Select(pad => pad.Box)))];
        DisjointSets sets = new(rows.Count);
        for (int i = 0; i < rows.Count; i++)
        {
            for (int j = i + 1; j < rows.Count; j++)
            {
                if (FaceEachOther(rows[i], boxes[i], rows[j], boxes[j]))
                {
                    sets.Join(i, j);
                }
            }
        }

        HashSet<PartPad> leads = new(rows.SelectMany(row => row), ReferenceEqualityComparer.Instance);
        List<List<PartPad>> packages = [];
        foreach (IGrouping<int, int> package in Enumerable.Range(0, rows.Count).GroupBy(sets.Find))
        {
            List<PartPad> pads = [.. package.SelectMany(row => rows[row])];
            BoxNm body = BoxNm.Around(package.Select(row => boxes[row])).GrownBy(package.Count() == 1 ? MostClusterGapNm : 0);
            pads.AddRange(free.Where(pad => !leads.Contains(pad) && body.Touches(pad.Box) && (package.Count() == 1 || body.Contains(pad.At))));
            leads.UnionWith(pads);
            packages.Add(pads);
        }

        return packages;
    }

    private static bool FaceEachOther(List<PartPad> a, BoxNm boxA, List<PartPad> b, BoxNm boxB)
    {
        bool areAlike = a[0].IsCongruentTo(b[0])
            || (Math.Abs(a[0].Box.WidthNm - b[0].Box.HeightNm) < 10_000 && Math.Abs(a[0].Box.HeightNm - b[0].Box.WidthNm) < 10_000);
        double gapX = Math.Max(0, Math.Max(boxB.MinX - boxA.MaxX, boxA.MinX - boxB.MaxX));
        double gapY = Math.Max(0, Math.Max(boxB.MinY - boxA.MaxY, boxA.MinY - boxB.MaxY));
        double reachNm = Math.Max(Math.Max(boxA.WidthNm, boxA.HeightNm), Math.Max(boxB.WidthNm, boxB.HeightNm)) * 1.6;
        return areAlike && Math.Sqrt((gapX * gapX) + (gapY * gapY)) <= reachNm;
    }

    /// <summary>Runs of at least three like pads at one pitch along x or y that are not all on one net.</summary>
    private static List<List<PartPad>> LeadRows(List<PartPad> free)
    {
        List<List<PartPad>> rows = [];
        HashSet<PartPad> taken = new(ReferenceEqualityComparer.Instance);
        foreach (bool alongX in new[] { true, false })
        {
            long Along(PartPad pad) => alongX ? pad.At.X : pad.At.Y;
            long Across(PartPad pad) => alongX ? pad.At.Y : pad.At.X;
            foreach (IGrouping<(long, long, long), PartPad> line in free.Where(pad => !taken.Contains(pad))
                .GroupBy(pad => (Across(pad) / 20_000, pad.Box.WidthNm / 20_000, pad.Box.HeightNm / 20_000)).ToList())
            {
                List<PartPad> run = [];
                foreach (PartPad pad in line.OrderBy(Along))
                {
                    bool continues = run.Count == 0
                        || (Along(pad) - Along(run[^1]) <= MostLeadPitchNm
                            && (run.Count == 1 || Math.Abs(Along(pad) - Along(run[^1]) - (Along(run[1]) - Along(run[0]))) <= 20_000));
                    if (!continues)
                    {
                        Close(run);
                        run = [];
                    }

                    run.Add(pad);
                }

                Close(run);
            }
        }

        return rows;

        void Close(List<PartPad> run)
        {
            if (run.Count >= 3 && run.Exists(pad => !ReferenceEquals(pad.Net, run[0].Net)))
            {
                rows.Add(run);
                taken.UnionWith(run);
            }
        }
    }

    /// <summary>Four like large pads at the corners of a rectangle, on four nets.</summary>
    private static List<List<PartPad>> Rectangles(List<PartPad> free)
    {
        List<List<PartPad>> found = [];
        HashSet<PartPad> taken = new(ReferenceEqualityComparer.Instance);
        List<PartPad> large = [.. free.Where(pad => pad.AreaM2 >= LeastFourTerminalPadM2)];
        for (int i = 0; i < large.Count; i++)
        {
            PartPad corner = large[i];
            foreach (int j in Window(large, i, 8 * corner.Box.WidthNm).Where(j => AreInLine(corner, large[j], alongX: true) && large[j].At.X > corner.At.X))
            {
                foreach (int k in Window(large, i, 8 * corner.Box.HeightNm).Where(k => AreInLine(corner, large[k], alongX: false) && large[k].At.Y > corner.At.Y))
                {
                    PartPad? opposite = large.Find(pad => pad.IsCongruentTo(corner)
                        && Math.Abs(pad.At.X - large[j].At.X) < 20_000 && Math.Abs(pad.At.Y - large[k].At.Y) < 20_000);
                    List<PartPad> pads = opposite is null ? [] : [corner, large[j], large[k], opposite];
                    if (pads.Count == 4 && !pads.Exists(taken.Contains) && pads.Select(pad => pad.Net).Distinct(NetIdentity.Comparer).Count() == 4)
                    {
                        taken.UnionWith(pads);
                        found.Add(pads);
                    }
                }
            }
        }

        return found;
    }

    /// <summary>Pads that choose each other as the nearest like pad on another net, with nothing between them.</summary>
    private static List<List<PartPad>> FacingPairs(List<PartPad> free)
    {
        int[] partner = new int[free.Count];
        for (int i = 0; i < free.Count; i++)
        {
            PartPad pad = free[i];
            partner[i] = -1;
            double leastNm = double.MaxValue;
            foreach (int j in Window(free, i, (long)((MostGapRatio + 1) * Math.Max(pad.Box.WidthNm, pad.Box.HeightNm))))
            {
                double distanceNm = free[j].At.DistanceNmTo(pad.At);
                if (distanceNm < leastNm && !ReferenceEquals(free[j].Net, pad.Net)
                    && (AreInLine(pad, free[j], alongX: true) || AreInLine(pad, free[j], alongX: false)) && IsClearBetween(free, i, j))
                {
                    (partner[i], leastNm) = (j, distanceNm);
                }
            }
        }

        return [.. Enumerable.Range(0, free.Count)
            .Where(i => partner[i] > i && partner[partner[i]] == i)
            .Select(i => new List<PartPad> { free[i], free[partner[i]] })];
    }

    /// <summary>Like pads side by side along an axis, as far apart as the ends of one part.</summary>
    private static bool AreInLine(PartPad a, PartPad b, bool alongX)
    {
        double alongNm = Math.Abs(alongX ? b.At.X - a.At.X : b.At.Y - a.At.Y);
        double acrossNm = Math.Abs(alongX ? b.At.Y - a.At.Y : b.At.X - a.At.X);
        double extentNm = alongX ? a.Box.WidthNm : a.Box.HeightNm;
        double gapRatio = (alongNm - extentNm) / extentNm;
        return a.IsCongruentTo(b) && acrossNm <= 0.02 * alongNm && gapRatio is >= LeastGapRatio and <= MostGapRatio;
    }

    private static bool IsClearBetween(List<PartPad> free, int i, int j)
    {
        BoxNm between = BoxNm.Of([free[i].At, free[j].At]);
        return !Window(free, i, Math.Max(between.WidthNm, between.HeightNm)).Any(k => k != j && free[k].Box.Touches(between));
    }

    private static List<List<PartPad>> Clusters(List<PartPad> pads, Func<PartPad, PartPad, bool> belong)
    {
        DisjointSets sets = new(pads.Count);
        for (int i = 0; i < pads.Count; i++)
        {
            foreach (int j in Window(pads, i, 15 * Units.NmPerMm).Where(j => j > i && belong(pads[i], pads[j])))
            {
                sets.Join(i, j);
            }
        }

        return GroupsOf(pads, sets, _ => true);
    }

    private static List<List<PartPad>> GroupsOf(List<PartPad> pads, DisjointSets sets, Func<int, bool> isMember) =>
        [.. Enumerable.Range(0, pads.Count).Where(isMember).GroupBy(sets.Find).Select(group => group.Select(i => pads[i]).ToList())];

    /// <summary>Other pads with a centre within a distance in x and y; the list is in ascending order of x.</summary>
    private static IEnumerable<int> Window(List<PartPad> sorted, int i, long reachNm)
    {
        for (int j = i - 1; j >= 0 && sorted[i].At.X - sorted[j].At.X <= reachNm; j--)
        {
            if (Math.Abs(sorted[j].At.Y - sorted[i].At.Y) <= reachNm)
            {
                yield return j;
            }
        }

        for (int j = i + 1; j < sorted.Count && sorted[j].At.X - sorted[i].At.X <= reachNm; j++)
        {
            if (Math.Abs(sorted[j].At.Y - sorted[i].At.Y) <= reachNm)
            {
                yield return j;
            }
        }
    }
}
