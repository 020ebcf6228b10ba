using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Thermal;

namespace CopperPath.Judging;

/// <summary>
/// What each solved stretch adds to the heat of the board. Stretches of one net are parts of its current that add in
/// power. A terminal that asks for the RMS of a converter's stage carries the average as well; where another stretch of the
/// net brings that average to the same contacts, only the alternating rest is new: RMS squared less average squared.
/// </summary>
internal static class SharedHeat
{
    /// <param name="nets">Solved stretches.</param>
    /// <param name="load">Currents against time; null where they flow for ever.</param>
    public static IReadOnlyList<HeatingStretch> StretchesOf(IReadOnlyList<SolvedNet> nets, LoadProfile? load) =>
        [.. nets.Where(net => net.Conduction.HasFields)
            .Select(net => new HeatingStretch(net.Conduction, ShareOf(net, nets)) { Net = net.Bound.Net, Alternative = net.Bound.Alternative, Load = load?.CurveOf(net.Bound.Entries[0].Review.Name) })];

    /// <summary>Share of a stretch's loss that no other stretch makes, by its terminals that ask for an RMS; 1 without any.</summary>
    internal static double ShareOf(SolvedNet net, IReadOnlyList<SolvedNet> all)
    {
        double squares = 0;
        double alternating = 0;
        for (int t = 0; t < net.Bound.Terminals.Count; t++)
        {
            if (net.Bound.Review.Terminals[t].Derived is { IsRms: true, CurrentA: var rmsA })
            {
                double averageA = Math.Min(rmsA, AverageElsewhereA(net, t, all));
                squares += rmsA * rmsA;
                alternating += (rmsA * rmsA) - (averageA * averageA);
            }
        }

        return squares > 0 ? alternating / squares : 1;
    }

    /// <summary>Average that other stretches of the net carry to the contacts of a terminal, amperes.</summary>
    private static double AverageElsewhereA(SolvedNet net, int terminal, IReadOnlyList<SolvedNet> all)
    {
        string[] contacts = [.. net.Bound.Terminals[terminal].Contacts.Select(contact => contact.Name)];
        double averageA = 0;
        foreach (SolvedNet other in all.Where(other => other != net && ReferenceEquals(other.Bound.Net, net.Bound.Net)))
        {
            foreach ((Terminal stated, BoundTerminal bound) in other.Bound.Review.Terminals.Zip(other.Bound.Terminals))
            {
                if (stated.Derived is not { IsRms: true } && bound.Contacts.Any(contact => contacts.Contains(contact.Name)))
                {
                    averageA += bound.CurrentA;
                }
            }
        }

        return Math.Abs(averageA);
    }
}
