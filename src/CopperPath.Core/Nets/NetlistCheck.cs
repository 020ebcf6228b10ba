using System.Globalization;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.Netlist;

namespace CopperPath.Nets;

/// <summary>
/// Lays a netlist over the rebuilt nets: names those that the artwork leaves without, and reports every place where the
/// two disagree. Findings of a kind are listed up to a limit and counted beyond it.
/// </summary>
internal sealed class NetlistCheck
{
    /// <summary>Allowance beyond half a count of the netlist, from the rounding of the other files.</summary>
    private const long AllowanceNm = 5_000;

    /// <summary>Findings of one kind that are listed.</summary>
    private const int MaxListed = 10;

    /// <summary>
    /// Share of names in agreement below which the copper itself is in doubt: a few disagreements are ties and parts
    /// that join, many are a misread layer or a netlist of another board. The project's choice.
    /// </summary>
    private const double LeastAgreement = 0.9;

    private readonly BoardNetlist _netlist;
    private readonly PointNm _shift;
    private readonly List<Diagnostic> _diagnostics = [];
    private readonly List<NetlistPoint> _offCopper = [];
    private readonly SortedDictionary<string, List<(NetDraft Draft, NetlistPoint Point)>> _byName = new(StringComparer.Ordinal);
    private readonly Dictionary<NetDraft, SortedDictionary<string, List<NetlistPoint>>> _byDraft = [];
    private readonly List<(NetDraft Draft, NetlistPoint Point)> _unconnected = [];

    private NetlistCheck(BoardNetlist netlist, PointNm shift) => (_netlist, _shift) = (netlist, shift);

    /// <summary>How far one of its points may be from the copper or hole it stands for, nanometres.</summary>
    public static long ToleranceNm(BoardNetlist netlist) => (netlist.ResolutionNm / 2) + AllowanceNm;

    /// <param name="netlist">The netlist, its points moved to the board's origin.</param>
    /// <param name="shift">By how much they were moved.</param>
    /// <param name="copper">Finds the net at a point.</param>
    /// <param name="drafts">All nets, in a fixed order; those without a name get one.</param>
    public static (NetlistAgreement Agreement, IReadOnlyList<Diagnostic> Diagnostics) Run(
        BoardNetlist netlist, PointNm shift, NetProbe copper, IReadOnlyList<NetDraft> drafts)
    {
        NetlistCheck check = new(netlist, shift);
        check.Place(copper);
        return (check.Compare(drafts), check._diagnostics);
    }

    private void Place(NetProbe copper)
    {
        foreach (NetlistPoint point in _netlist.Points.Where(point => point.Net is not null || point.Kind != NetlistPointKind.Tooling))
        {
            if (copper.NetAt(point, ToleranceNm(_netlist)) is not { } draft)
            {
                _offCopper.Add(point);
            }
            else if (point.Net is { } name)
            {
                if (!_byName.TryGetValue(name, out List<(NetDraft, NetlistPoint)>? places))
                {
                    _byName[name] = places = [];
                }

                places.Add((draft, point));
                if (!_byDraft.TryGetValue(draft, out SortedDictionary<string, List<NetlistPoint>>? names))
                {
                    _byDraft[draft] = names = new(StringComparer.Ordinal);
                }

                if (!names.TryGetValue(name, out List<NetlistPoint>? points))
                {
                    names[name] = points = [];
                }

                points.Add(point);
            }
            else
            {
                _unconnected.Add((draft, point));
            }
        }
    }

    private NetlistAgreement Compare(IReadOnlyList<NetDraft> drafts)
    {
        int onCopper = _byName.Values.Sum(places => places.Count) + _unconnected.Count;
        int total = onCopper + _offCopper.Count;
        ReportOffCopper(total);

        // Of a netlist whose points mostly miss the copper, those that hit do so by chance.
        bool isUsable = 2 * onCopper >= total;
        NetDraft[] named = isUsable ? [.. drafts.Where(_byDraft.ContainsKey)] : [];
        NetDraft[] merged = [.. named.Where(draft => _byDraft[draft].Count > 1)];
        string[] split = isUsable ? [.. _byName.Keys.Where(name => NetsOf(name).Count > 1)] : [];
        int agreeing = isUsable ? _byName.Keys.Count(name => NetsOf(name) is [var only] && _byDraft[only].Count == 1) : 0;

        ReportMerged(merged);
        ReportSplit(split);
        if (isUsable)
        {
            ReportUnconnected();
        }

        int unlike = ReportUnlikeArtwork(named);
        ReportVerdict(agreeing);
        int netsNamed = 0;
        foreach (NetDraft draft in named.Where(draft => draft.Claims.Count == 0))
        {
            draft.NetlistName = _byDraft[draft].OrderByDescending(name => name.Value.Count).ThenBy(name => name.Key, StringComparer.Ordinal).First().Key;
            netsNamed++;
        }

        int pinsNamed = isUsable ? NamePins(drafts) : 0;
        return new NetlistAgreement(
            _netlist.File, _shift, total, onCopper, _byName.Count, agreeing, merged.Length, split.Length, netsNamed, pinsNamed, unlike);
    }

    /// <summary>Nets a name is on, in the order of its points.</summary>
    private IReadOnlyList<NetDraft> NetsOf(string name) => [.. _byName[name].Select(place => place.Draft).Distinct()];

    private void ReportOffCopper(int total)
    {
        if (_offCopper is [var first, ..])
        {
            Add("NET012", first.Position, string.Create(CultureInfo.InvariantCulture,
                $"{_offCopper.Count} of {total} points on no copper, the first {Place(first)}"), "every point on copper");
        }
    }

    private void ReportMerged(NetDraft[] merged)
    {
        foreach (NetDraft draft in merged.Take(MaxListed))
        {
            SortedDictionary<string, List<NetlistPoint>> names = _byDraft[draft];
            string list = string.Join(", ", names.Take(MaxListed).Select(name => string.Create(CultureInfo.InvariantCulture,
                $"{name.Key} ({name.Value.Count} points, the first {Place(name.Value[0])})")));
            Add("NET010", names.Values.MinBy(points => points.Count)![0].Position,
                $"one piece of rebuilt copper for {names.Count} nets of the netlist: {list}",
                "one conductor per name: a short in the artwork, nets tied on purpose, or copper misread");
        }

        AddCount("NET010", merged.Length, "pieces of rebuilt copper for several nets of the netlist");
    }

    private void ReportSplit(string[] split)
    {
        foreach (string name in split.Take(MaxListed))
        {
            (NetDraft Draft, NetlistPoint Point)[] pieces = [.. _byName[name].DistinctBy(place => place.Draft)];
            string list = string.Join(", ", pieces.Take(MaxListed).Select(piece => Place(piece.Point)));
            Add("NET011", pieces[1].Point.Position,
                string.Create(CultureInfo.InvariantCulture, $"{pieces.Length} pieces of rebuilt copper for the net {name} of the netlist: {list}"),
                "one conductor per name: an open in the artwork, parts joined by a component, or a hole misread");
        }

        AddCount("NET011", split.Length, "nets of the netlist on several pieces of rebuilt copper");
    }

    private void ReportUnconnected()
    {
        (NetDraft Draft, NetlistPoint Point)[] joined = [.. _unconnected.Where(place => _byDraft.ContainsKey(place.Draft))];
        foreach ((NetDraft draft, NetlistPoint point) in joined.Take(MaxListed))
        {
            Add("NET013", point.Position, $"a point {Place(point)} that the netlist calls unconnected, on the copper of net {_byDraft[draft].Keys.First()}",
                "copper of its own at an unconnected pin");
        }

        AddCount("NET013", joined.Length, "points that the netlist calls unconnected on the copper of nets");
    }

    private int ReportUnlikeArtwork(NetDraft[] named)
    {
        // Short names are cut to the fourteen columns of the format.
        const int Columns = 14;
        NetDraft[] unlike = [.. named.Where(draft => draft.Claims.Count > 0
            && !_byDraft[draft].Keys.Any(name => draft.Claims.ContainsKey(name)
                || (name.Length == Columns && draft.Claims.Keys.Any(claim => claim.StartsWith(name, StringComparison.Ordinal)))))];
        foreach (NetDraft draft in unlike.Take(MaxListed))
        {
            (string name, List<NetlistPoint> points) = _byDraft[draft].First();
            Add("NET014", points[0].Position, $"the net name {name} {Place(points[0])}, where the artwork says {string.Join(", ", draft.Claims.Keys.Take(3))}",
                "one name in both; the artwork's stands");
        }

        AddCount("NET014", unlike.Length, "nets named otherwise in the artwork");
        return unlike.Length;
    }

    private void ReportVerdict(int agreeing)
    {
        if (_byName.Count > 0 && agreeing < LeastAgreement * _byName.Count)
        {
            _diagnostics.Add(new Diagnostic("NET015", Severity.Warning, SourcePosition.WholeFile(_netlist.File),
                string.Create(CultureInfo.InvariantCulture, $"only {agreeing} of {_byName.Count} net names in agreement with the rebuilt copper"),
                "nine in ten at least: a misread layer or drill file, or the netlist of another board", AffectsCopper: true));
        }
    }

    private int NamePins(IReadOnlyList<NetDraft> drafts)
    {
        (NetDraft Draft, int Index)[] pads = [.. drafts.SelectMany(draft => draft.Pads.Select((_, i) => (draft, i)))];
        PointIndex index = new(pads.Select(pad => pad.Draft.Pads[pad.Index].At), ToleranceNm(_netlist));
        int count = 0;
        foreach (NetlistPoint point in _netlist.Points)
        {
            if (point is not { Component: { } component and not "VIA", Pin: { } pin })
            {
                continue;
            }

            foreach ((NetDraft draft, int i) in index.Near(point.Location).Order().Select(i => pads[i]))
            {
                Pad pad = draft.Pads[i];
                if (pad.Pin is null && (point.AccessLayer == 0 || point.AccessLayer == pad.Layer))
                {
                    draft.Pads[i] = pad with { Pin = new Artwork.PinName(component, pin) };
                    count++;
                }
            }
        }

        return count;
    }

    private void Add(string code, SourcePosition position, string found, string expected) =>
        _diagnostics.Add(new Diagnostic(code, Severity.Warning, position, found, expected));

    private void AddCount(string code, int count, string what)
    {
        if (count > MaxListed)
        {
            Add(code, SourcePosition.WholeFile(_netlist.File),
                string.Create(CultureInfo.InvariantCulture, $"{count} {what}, of which {MaxListed} are listed"), "none");
        }
    }

    private static string Place(NetlistPoint point) => string.Create(CultureInfo.InvariantCulture,
        $"at {point.Location.X / 1e6:0.###}, {point.Location.Y / 1e6:0.###} mm{(point.AccessLayer > 0 ? $" on layer {point.AccessLayer}" : "")}");
}
