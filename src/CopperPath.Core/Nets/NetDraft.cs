using System.Globalization;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Nets;

/// <summary>A net while it is being gathered.</summary>
internal sealed class NetDraft
{
    private readonly SortedDictionary<int, List<PolygonNm>> _islands = [];
    private readonly List<IReadOnlyList<string>> _ties = [];

    public List<Barrel> Barrels { get; } = [];

    public List<Pad> Pads { get; } = [];

    /// <summary>Claims by name: how many objects made it, how many of them only tie nets, and where it was first seen.</summary>
    public SortedDictionary<string, (int Count, int Ties, SourcePosition First)> Claims { get; } = new(StringComparer.Ordinal);

    /// <summary>Name from a netlist, used where no object of the artwork claims one.</summary>
    public string? NetlistName { get; set; }

    /// <summary>Names claimed by at least one object that is not a net tie.</summary>
    public List<string> FirmNames => [.. Claims.Where(claim => claim.Value.Count > claim.Value.Ties).Select(claim => claim.Key)];

    /// <summary>Whether some of its firm names are tied to others by no object that carries both.</summary>
    public bool NamesContradict
    {
        get
        {
            List<string> firm = FirmNames;
            HashSet<string> tied = [.. firm.Take(1)];
            for (int before = -1; before != tied.Count;)
            {
                before = tied.Count;
                tied.UnionWith(_ties.Where(names => names.Any(tied.Contains)).SelectMany(names => names));
            }

            return !firm.TrueForAll(tied.Contains);
        }
    }

    /// <summary>Notes an object that carries several names on purpose.</summary>
    public void Tie(IReadOnlyList<string> names) => _ties.Add(names);

    public void AddIsland(int layer, PolygonNm island)
    {
        if (!_islands.TryGetValue(layer, out List<PolygonNm>? list))
        {
            _islands[layer] = list = [];
        }

        list.Add(island);
    }

    public void Vote(string name, bool isTie, SourcePosition position)
    {
        (int count, int ties, SourcePosition first) = Claims.GetValueOrDefault(name, (0, 0, position));
        Claims[name] = (count + 1, ties + (isTie ? 1 : 0), first);
    }

    public Net ToNet()
    {
        List<NetSheet> sheets = [.. _islands.Select(entry => new NetSheet(entry.Key, entry.Value))];
        string? claimed = Claims.Count == 0 ? null
            : Claims.OrderByDescending(claim => claim.Value.Count).ThenBy(claim => claim.Key, StringComparer.Ordinal).First().Key;
        string? name = claimed ?? NetlistName;
        return new Net(name ?? GeneratedName(sheets[0]), name is null, sheets, Barrels, Pads) { ClaimedNames = FirmNames, NamesContradict = NamesContradict };
    }

    /// <summary>
    /// A name that stays the same as long as the copper does: the uppermost layer and the lowest-left corner there,
    /// in hundredths of a millimetre so that both inch and metric output of one board give the same name.
    /// </summary>
    private static string GeneratedName(NetSheet uppermost)
    {
        PointNm corner = uppermost.Islands.SelectMany(island => island.Outer).MinBy(p => (p.X, p.Y));
        return string.Create(CultureInfo.InvariantCulture,
            $"L{uppermost.Layer}@{corner.X / 1e6:F2},{corner.Y / 1e6:F2}");
    }
}
