using System.Globalization;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Quantities;
using CopperPath.Reading.Placement;

namespace CopperPath.Nets;

/// <summary>
/// Guesses which pads belong to which part of a placement table. Most parts are symmetric about their centre: a pad
/// belongs to the part in whose centre it has a mirror image among the pads. Pads without one go to the part that is
/// clearly nearest. A table gives no pins, so pins stay unknown.
/// </summary>
internal sealed class PartGuess
{
    /// <summary>How far a mirror image may be from its pad: twice the rounding of tables in hundredths of a millimetre.</summary>
    private const long MirrorToleranceNm = 40_000;

    /// <summary>Farthest pad of a part from its centre.</summary>
    private const long ReachNm = 20 * Units.NmPerMm;

    /// <summary>A part is clearly nearer than the next when it is at most half as far.</summary>
    private const double ClearlyNearer = 0.5;

    /// <summary>Lands of plated holes below this are vias, not leads. Common practice, no source.</summary>
    private const long LeastLeadHoleNm = Units.NmPerMm / 2;

    /// <summary>Least share of parts with symmetric pads that shows unit and origin to be right, and its lead over the next.</summary>
    private const double LeastFit = 0.5;
    private const double LeastLead = 0.25;

    private readonly List<(int Net, int Pad)> _keys = [];
    private readonly List<Pad> _pads = [];
    private readonly Dictionary<int, (PointIndex Index, int[] Pads)> _byLayer = [];
    private readonly PointIndex _all;
    private readonly int _bottom;

    private PartGuess(NetList nets)
    {
        _bottom = nets.Layers[^1].Number;
        for (int n = 0; n < nets.Nets.Count; n++)
        {
            PointIndex vias = new(nets.Nets[n].Barrels
                .Where(barrel => barrel.Feature.ToolDiameterNm < LeastLeadHoleNm).Select(barrel => barrel.Centre), MirrorToleranceNm);
            for (int p = 0; p < nets.Nets[n].Pads.Count; p++)
            {
                Pad pad = nets.Nets[n].Pads[p];
                if ((pad.Layer == 1 || pad.Layer == _bottom) && !vias.HasNear(pad.At))
                {
                    _keys.Add((n, p));
                    _pads.Add(pad);
                }
            }
        }

        _all = new PointIndex(_pads.Select(pad => pad.At), ReachNm);
        foreach (int layer in new[] { 1, _bottom }.Distinct())
        {
            int[] pads = [.. Enumerable.Range(0, _pads.Count).Where(i => _pads[i].Layer == layer)];
            _byLayer[layer] = (new PointIndex(pads.Select(i => _pads[i].At), MirrorToleranceNm), pads);
        }
    }

    /// <summary>Marks pads with the part they probably belong to, where no file says it.</summary>
    /// <param name="nets">The nets; given back unchanged when their pads have pins, or the table does not fit them.</param>
    /// <param name="table">Where the parts are.</param>
    /// <param name="diagnostics">Told how the table was read, or why it was not used.</param>
    public static NetList Apply(NetList nets, PlacementTable table, List<Diagnostic> diagnostics)
    {
        SourcePosition where = SourcePosition.WholeFile(table.File);
        if (nets.HasPins)
        {
            diagnostics.Add(new Diagnostic("PRT001", Severity.Note, where, "placements of parts beside artwork that names its pins",
                "one of the two; the artwork's pins are used"));
            return nets;
        }

        PartGuess guess = new(nets);
        if (guess.Fit(table) is not { } fit)
        {
            diagnostics.Add(new Diagnostic("PRT002", Severity.Warning, where, "places of parts that match the pads in no unit and from no origin",
                "the centres of the parts between their pads, in millimetres, mils or inches, from one origin; the table is not used"));
            return nets;
        }

        Dictionary<(int Net, int Pad), string> owners = guess.Assign([.. table.Parts.Select(part => part with { At = fit.Apply(part.At) })]);
        diagnostics.Add(new Diagnostic("PRT003", Severity.Warning, where,
            string.Create(CultureInfo.InvariantCulture,
                $"pads without pins; {owners.Count} of {guess._pads.Count} were guessed to belong to {owners.Values.Distinct().Count()} of {table.Parts.Count} parts, read in {fit.Text}, {100 * fit.Share:0} % of parts with pads symmetric about them"),
            "pins in the artwork or a netlist"));
        return nets with
        {
            Nets = [.. nets.Nets.Select((net, n) => net with
            {
                Pads = [.. net.Pads.Select((pad, p) => owners.TryGetValue((n, p), out string? part) ? pad with { GuessedPart = part } : pad)],
            })],
        };
    }

    private sealed record TableFit(double Scale, PointNm Origin, string Text, double Share)
    {
        public PointNm Apply(PointNm p) => new((long)Math.Round(p.X * Scale) + Origin.X, (long)Math.Round(p.Y * Scale) + Origin.Y);
    }

    private TableFit? Fit(PlacementTable table)
    {
        (double Scale, string Unit)[] units = table.IsUnitStated ? [(1, "its unit")] : [(1, "millimetres"), (0.0254, "mils"), (25.4, "inches")];
        PartOrigin origin = new(_pads);
        List<TableFit> fits = [];
        foreach ((double scale, string unit) in units)
        {
            TableFit unmoved = new(scale, default, $"{unit} from the origin of the artwork", 0);
            PointNm shift = origin.Vote([.. table.Parts.Select(part => part with { At = unmoved.Apply(part.At) })], IsOnSide);
            fits.Add(unmoved);
            if (shift.DistanceNmTo(default) > MirrorToleranceNm)
            {
                fits.Add(new TableFit(scale, shift, string.Create(CultureInfo.InvariantCulture,
                    $"{unit} from an origin at {shift.X / 1e6:0.##}, {shift.Y / 1e6:0.##} mm found from the pads"), 0));
            }
        }

        TableFit[] byShare = [.. fits.Select(fit => fit with { Share = ShareSymmetric(table, fit) }).OrderByDescending(fit => fit.Share)];
        double next = byShare.Skip(1).Select(fit => fit.Share).FirstOrDefault();
        return byShare[0].Share >= LeastFit && byShare[0].Share - next >= LeastLead ? byShare[0] : null;
    }

    /// <summary>
    /// Share of parts whose nearest pad has a mirror image. Each pad counts for one part: read in too small a unit, all
    /// parts would gather in the middle of the same two pads.
    /// </summary>
    private double ShareSymmetric(PlacementTable table, TableFit fit)
    {
        HashSet<int> pads = [];
        int count = table.Parts.Count(part =>
        {
            PlacedPart placed = part with { At = fit.Apply(part.At) };
            int nearest = _all.Near(placed.At).Where(i => IsOnSide(placed, _pads[i].Layer))
                .OrderBy(i => _pads[i].At.DistanceNmTo(placed.At)).ThenBy(i => i).FirstOrDefault(-1);
            int mirror = nearest < 0 ? -1 : MirrorOf(_pads[nearest], placed);
            return mirror >= 0 && pads.Add(nearest) && (mirror == nearest || pads.Add(mirror));
        });
        return (double)count / Math.Max(1, table.Parts.Count);
    }

    private Dictionary<(int Net, int Pad), string> Assign(PlacedPart[] parts)
    {
        List<PlacedPart>[] mirrored = [.. _pads.Select(_ => new List<PlacedPart>())];
        List<PlacedPart>[] near = [.. _pads.Select(_ => new List<PlacedPart>())];
        foreach (PlacedPart part in parts)
        {
            foreach (int i in _all.Near(part.At).Where(i => IsOnSide(part, _pads[i].Layer)))
            {
                near[i].Add(part);
                if (MirrorOf(_pads[i], part) >= 0)
                {
                    mirrored[i].Add(part);
                }
            }
        }

        Dictionary<(int, int), string> owners = [];
        for (int i = 0; i < _pads.Count; i++)
        {
            if (ClearlyNearest(_pads[i].At, mirrored[i].Count > 0 ? mirrored[i] : near[i]) is { } owner)
            {
                owners[_keys[i]] = owner.Designator;
            }
        }

        return owners;
    }

    private static PlacedPart? ClearlyNearest(PointNm at, List<PlacedPart> parts)
    {
        PlacedPart[] byDistance = [.. parts.OrderBy(part => part.At.DistanceNmTo(at)).ThenBy(part => part.Designator, StringComparer.Ordinal).Take(2)];
        return byDistance.Length == 0 ? null
            : byDistance.Length == 1 || byDistance[0].At.DistanceNmTo(at) <= ClearlyNearer * byDistance[1].At.DistanceNmTo(at) ? byDistance[0]
            : null;
    }

    /// <summary>The pad across the centre of a part, -1 when there is none.</summary>
    private int MirrorOf(Pad pad, PlacedPart part)
    {
        (PointIndex index, int[] pads) = _byLayer[pad.Layer];
        int found = index.Nearest(new PointNm((2 * part.At.X) - pad.At.X, (2 * part.At.Y) - pad.At.Y));
        return found < 0 ? -1 : pads[found];
    }

    private bool IsOnSide(PlacedPart part, int layer) => part.Side switch
    {
        BoardSide.Top => layer == 1,
        BoardSide.Bottom => layer == _bottom,
        _ => true,
    };
}
