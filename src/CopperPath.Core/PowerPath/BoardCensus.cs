using CopperPath.Nets;

namespace CopperPath.PowerPath;

/// <summary>Parts counted by the nets they join: what every guess about the power path starts from.</summary>
internal sealed class BoardCensus
{
    private readonly Dictionary<Net, List<Part>> _partsOn = new(NetIdentity.Comparer);

    public BoardCensus(NetList board, IReadOnlyList<Part> parts)
    {
        Parts = parts;
        foreach (Part part in parts)
        {
            foreach (Net net in part.Nets)
            {
                if (!_partsOn.TryGetValue(net, out List<Part>? list))
                {
                    _partsOn[net] = list = [];
                }

                list.Add(part);
            }
        }

        Return = FindReturn(board);
        double[] padAreas = [.. parts.Where(part => part.Shape == PartShape.TwoTerminal).Select(part => part.Pads.Min(pad => pad.AreaM2)).Order()];
        UsualPadM2 = padAreas.Length == 0 ? 0 : padAreas[padAreas.Length / 2];
    }

    public IReadOnlyList<Part> Parts { get; }

    /// <summary>The net most likely to be the return, with the reasons; null on a board without parts.</summary>
    public (Net Net, Confidence Confidence, IReadOnlyList<string> Reasons)? Return { get; }

    /// <summary>Median of the pad areas of two-terminal parts, square metres.</summary>
    public double UsualPadM2 { get; }

    public IReadOnlyList<Part> PartsOn(Net net) => _partsOn.TryGetValue(net, out List<Part>? parts) ? parts : [];

    /// <summary>Two-terminal parts between two nets.</summary>
    public IEnumerable<Part> Between(Net a, Net b) => PartsOn(a).Where(part => part.Shape == PartShape.TwoTerminal && part.Bridges(a, b));

    /// <summary>Two-terminal parts from a net to the return: its capacitors, as a rule. What a designator says is no capacitor is left out.</summary>
    public IReadOnlyList<Part> ToReturn(Net net) => Return is { } found && !ReferenceEquals(found.Net, net)
        ? [.. Between(net, found.Net).Where(part => part.MayBeCapacitor)] : [];

    private (Net, Confidence, IReadOnlyList<string>)? FindReturn(NetList board)
    {
        // Most capacitors of a board end on its return, so that net reaches more other nets over two-terminal parts than any other.
        List<(Net Net, int Reached, double AreaM2)> ranked = [.. board.Nets.Where(net => _partsOn.ContainsKey(net))
            .Select(net => (net, PartsOn(net).Where(part => part.Shape == PartShape.TwoTerminal && part.Nets.Count == 2)
                .Select(part => part.Across(net)).Distinct(NetIdentity.Comparer).Count(), net.AreaM2))
            .OrderByDescending(net => (1 + net.Item2) * net.AreaM2).ThenBy(net => net.net.Name, StringComparer.Ordinal)];
        if (ranked.Count == 0)
        {
            return null;
        }

        (Net found, int reached, double areaM2) = ranked[0];
        double lead = ranked.Count > 1 ? (1 + reached) * areaM2 / ((1 + ranked[1].Reached) * ranked[1].AreaM2) : double.PositiveInfinity;
        Confidence confidence = lead > 4 ? Confidence.High : lead > 1.5 ? Confidence.Medium : Confidence.Low;
        return (found, confidence,
        [
            FormattableString.Invariant($"{Quantities.QuantityText.Area(areaM2)} of copper on {found.Sheets.Count} layers"),
            FormattableString.Invariant($"two-terminal parts lead from it to {reached} other nets"),
        ]);
    }
}
