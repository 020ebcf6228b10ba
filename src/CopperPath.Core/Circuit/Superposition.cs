using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Circuit;

/// <summary>
/// Entries of one net -> what flows in its copper at the same time. Conduction is linear: direct currents that the brief gives to one
/// conductor add, at every place with their signs, and one system with the terminals of all of them is solved. An alternating entry
/// stays alone, for its heat adds and not its current; so do entries that are alternatives of each other.
/// </summary>
public static class Superposition
{
    /// <param name="entries">Entries of the brief tied to copper, in its order.</param>
    /// <param name="load">Currents against time; null where they flow for ever.</param>
    /// <param name="diagnostics">Takes what can not be summed.</param>
    /// <returns>What flows together, in the order of the brief, and what was done, one line each.</returns>
    public static (IReadOnlyList<BoundNet> Flows, IReadOnlyList<string> Done) Of(
        IReadOnlyList<BoundNet> entries, LoadProfile? load, ICollection<Diagnostic> diagnostics)
    {
        List<(int First, BoundNet Flow)> flows = [];
        List<string> done = [];

        foreach (BoundNet[] net in Conductors(entries))
        {
            BoundNet[] direct = [.. net.Where(entry => !entry.Review.IsAlternating)];
            BoundNet[] alternating = [.. net.Where(entry => entry.Review.IsAlternating)];
            List<BoundNet> own = [.. Cases(direct).Select(together => Sum(together, load, diagnostics)).OfType<BoundNet>(), .. alternating];
            flows.AddRange(own.Select(flow => (entries.ToList().IndexOf(flow.Entries[0]), flow)));
            done.AddRange(LinesOf(own, alternating));
        }

        return ([.. flows.OrderBy(flow => flow.First).Select(flow => flow.Flow)], done);
    }

    /// <summary>
    /// Entries that mean one conductor: one copper, by one `net` or `at`, or by different points in one role. What the brief tells apart
    /// by name or role and the files join is a short circuit, not a sum.
    /// </summary>
    private static IEnumerable<BoundNet[]> Conductors(IReadOnlyList<BoundNet> entries)
    {
        DisjointSets sets = new(entries.Count);
        for (int i = 0; i < entries.Count; i++)
        {
            for (int j = i + 1; j < entries.Count; j++)
            {
                (NetReview a, NetReview b) = (entries[i].Review, entries[j].Review);
                if (ReferenceEquals(entries[i].Net, entries[j].Net)
                    && (a.Selector == b.Selector || (a.Role == b.Role && (a.Selector is NetAtPoint || b.Selector is NetAtPoint))))
                {
                    sets.Join(i, j);
                }
            }
        }

        return Enumerable.Range(0, entries.Count).GroupBy(sets.Find).Select(group => group.Select(i => entries[i]).ToArray());
    }

    /// <summary>Entries that state no alternative flow in every one.</summary>
    private static IEnumerable<BoundNet[]> Cases(BoundNet[] direct)
    {
        string[] words = [.. direct.Select(entry => entry.Review.Alternative).OfType<string>().Distinct()];
        return words.Length > 0 ? words.Select(word => direct.Where(entry => entry.Review.Alternative is null || entry.Review.Alternative == word).ToArray())
            : direct.Length > 0 ? [direct] : [];
    }

    private static IEnumerable<string> LinesOf(List<BoundNet> flows, BoundNet[] alternating)
    {
        foreach (BoundNet flow in flows.Where(flow => flow.Entries.Count > 1))
        {
            yield return $"net {flow.Net.Name}: {Quoted(flow.Entries)} flow at the same time as direct currents: they are summed in the copper they share";
        }

        if (flows.Select(flow => flow.Alternative).OfType<string>().Distinct().Count() > 1)
        {
            yield return $"net {flows[0].Net.Name}: alternatives of which one flows at a time: {string.Join("; or ", flows.Where(flow => flow.Alternative is not null).Select(flow => $"'{flow.Review.Name}'"))}. "
                + "Each is judged alone; every place is heated by the one that heats it most";
        }

        if (alternating.Length > 0 && flows.Count > 1)
        {
            yield return $"net {flows[0].Net.Name}: {Quoted(alternating)} {(alternating.Length == 1 ? "is" : "are")} alternating: solved alone, the heat adds to that of the other entries of the net as if not correlated with them";
        }
    }

    private static string Quoted(IEnumerable<BoundNet> entries) => string.Join(" and ", entries.Select(entry => $"'{entry.Review.Name}'"));

    /// <summary>The terminals of all entries in one; null, with a remark, where they can not be put together.</summary>
    private static BoundNet? Sum(BoundNet[] entries, LoadProfile? load, ICollection<Diagnostic> diagnostics)
    {
        if (entries.Length == 1)
        {
            return entries[0];
        }

        if (load is not null && entries.Any(entry => load.CurveOf(entry.Review.Name) != load.CurveOf(entries[0].Review.Name)))
        {
            diagnostics.Add(new Diagnostic("CIR022", Severity.Error, load.Position, $"loads of their own for {Quoted(entries)}, which flow at the same time",
                "one load for all entries that are summed, through `points` of the whole profile"));
            return null;
        }

        List<(Terminal Stated, BoundTerminal Bound, BoundNet Entry)> terminals = [];
        foreach (BoundNet entry in entries)
        {
            foreach ((Terminal stated, BoundTerminal bound) in entry.Review.Terminals.Zip(entry.Terminals))
            {
                int same = terminals.FindIndex(other => IsSame(other.Bound, bound));
                if (same >= 0)
                {
                    terminals[same] = Added(terminals[same], stated, bound);
                    continue;
                }

                if (terminals.FirstOrDefault(other => ReferenceEquals(other.Entry, entry) is false && ShareOf(other.Bound, bound) is not null) is { Bound: not null } half)
                {
                    diagnostics.Add(new Diagnostic("CIR018", Severity.Error, stated.Position,
                        $"{ShareOf(half.Bound, bound)} in '{stated.Name}' of '{entry.Review.Name}' and in '{half.Stated.Name}' of '{half.Entry.Review.Name}', which flow at the same time and do not touch the copper alike",
                        "the same contacts with the same `contact` in both, contacts of their own in each, or different `alternative` words where they never flow together"));
                    return null;
                }

                terminals.Add((stated, bound, entry));
            }
        }

        double largestA = entries.Max(entry => entry.EnteringA);
        if (terminals.TrueForAll(terminal => Math.Abs(terminal.Bound.CurrentA) <= RoundingShare * largestA))
        {
            diagnostics.Add(new Diagnostic("CIR019", Severity.Error, entries[^1].Review.Position,
                $"{Quoted(entries)}, which flow at the same time and leave no current at any terminal",
                "currents that do not cancel everywhere, or different `alternative` words where they never flow together"));
            return null;
        }

        return Joined(entries, terminals);
    }

    /// <summary>Sums of decimal amperes end where rounding does.</summary>
    private const double RoundingShare = 1e-12;

    private static (Terminal, BoundTerminal, BoundNet) Added((Terminal Stated, BoundTerminal Bound, BoundNet Entry) sum, Terminal stated, BoundTerminal bound)
    {
        double currentA = sum.Bound.CurrentA + bound.CurrentA;
        double[] ratings = [.. new[] { sum.Stated.ContactRatingA, stated.ContactRatingA }.OfType<double>()];
        Terminal both = sum.Stated with
        {
            CurrentA = currentA,
            TakesRest = false,
            Derived = null,
            ContactRatingA = ratings.Length > 0 ? ratings.Min() : null,
        };
        return (both, sum.Bound with { CurrentA = currentA }, sum.Entry);
    }

    private static BoundNet Joined(BoundNet[] entries, List<(Terminal Stated, BoundTerminal Bound, BoundNet Entry)> terminals)
    {
        string[] names = [.. terminals.Select(terminal =>
            terminals.Count(other => other.Stated.Name == terminal.Stated.Name) == 1 ? terminal.Stated.Name : $"{terminal.Stated.Name} of {terminal.Entry.Review.Name}")];
        NetReview first = entries[0].Review;
        NetReview review = first with
        {
            Name = string.Join(" + ", entries.Select(entry => entry.Review.Name)),
            Role = entries.Select(entry => entry.Review.Role).FirstOrDefault(role => role != NetRole.Other),
            Siblings = entries.Select(entry => entry.Review.Siblings).FirstOrDefault(word => word is not null),
            Limits = new NetLimits(
                entries.Min(entry => entry.Review.Limits.TemperatureRiseK), entries.Min(entry => entry.Review.Limits.VoltageDropV)),
            Terminals = [.. terminals.Select((terminal, t) => terminal.Stated with { Name = names[t] })],
            Alternative = entries.Select(entry => entry.Review.Alternative).FirstOrDefault(word => word is not null),
        };
        return new BoundNet(review, entries[0].Net, [.. terminals.Select((terminal, t) => terminal.Bound with { Name = names[t] })]) { Entries = entries };
    }

    private static bool IsSame(BoundTerminal a, BoundTerminal b) => a.IsJoined == b.IsJoined
        && a.Contacts.Count == b.Contacts.Count && a.Contacts.All(contact => b.Contacts.Any(other => IsSame(contact, other)));

    /// <summary>A contact of one terminal that touches or overlaps one of the other; null without one.</summary>
    private static string? ShareOf(BoundTerminal a, BoundTerminal b) => a.Contacts.FirstOrDefault(contact => b.Contacts.Any(other =>
        contact.Barrels.Any(other.Barrels.Contains) || contact.Areas.Any(area => other.Areas.Any(there => there.Layer == area.Layer && Touch(area.Outline, there.Outline)))))?.Name;

    /// <summary>Outlines that are one piece together.</summary>
    private static bool Touch(PointNm[] a, PointNm[] b)
    {
        if (!BoxNm.Of(a).Touches(BoxNm.Of(b)))
        {
            return false;
        }

        try
        {
            return PolygonOperations.Union([a, b]).Count < 2;
        }
        catch (EntangledOutlinesException)
        {
            return true;
        }
    }

    private static bool IsSame(Electrical.Contact a, Electrical.Contact b) =>
        a.Areas.Count == b.Areas.Count && a.Barrels.Count == b.Barrels.Count
        && a.Areas.All(area => b.Areas.Any(other => other.Layer == area.Layer && other.Outline.AsSpan().SequenceEqual(area.Outline)))
        && a.Barrels.All(barrel => b.Barrels.Contains(barrel));
}
