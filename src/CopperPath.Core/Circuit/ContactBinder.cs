using System.Globalization;
using CopperPath.Brief;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.OutsideText;
using CopperPath.Polygons;
using CopperPath.Quantities;

namespace CopperPath.Circuit;

/// <summary>Contacts of the brief -> areas and barrels of one net.</summary>
internal sealed class ContactBinder(Net net, NetList board, List<Diagnostic> diagnostics)
{
    /// <summary>How far a stated point may be from the flash or hole it means: covers rounding between inch and metric output.</summary>
    private const double ReachNm = 20_000;

    private readonly int _layerCount = board.Layers[^1].Number;

    /// <summary>One bound contact per pin, pad, hole or area; empty, with an error, when there is none.</summary>
    public IReadOnlyList<Electrical.Contact> Bind(Brief.Contact contact)
    {
        try
        {
            return Find(contact);
        }
        catch (EntangledOutlinesException entangled)
        {
            return Missing("CIR017", contact.Position, $"pads of net {net.Name} whose outlines cross or touch each other too often to be united, most near {PointText(entangled.Place)}",
                "pads as a board has them");
        }
    }

    private IReadOnlyList<Electrical.Contact> Find(Brief.Contact contact) => contact switch
    {
        PinContact pin => BindPin(pin),
        ComponentContact component => BindComponent(component),
        PadContact pad => BindPad(pad),
        PadsInContact box => BindPadsIn(box),
        HoleContact hole => BindHole(hole),
        RectangleContact rectangle => BindArea(rectangle.Layer, rectangle.Box.ToRing(), "rectangle", rectangle.Position),
        CircleContact circle => BindArea(circle.Layer, HoleOutline.Circle(circle.Centre, circle.DiameterNm / 2.0), "circle", circle.Position),
        _ => throw new InvalidOperationException($"unknown contact {contact.GetType().Name}"),
    };

    private IReadOnlyList<Electrical.Contact> BindPin(PinContact wanted)
    {
        string name = $"{wanted.Component}.{wanted.Pin}";
        List<Pad> pads = [.. net.Pads.Where(pad => pad.Pin is { } pin && pin.Component == wanted.Component && pin.Pin == wanted.Pin)];
        if (pads.Count > 0)
        {
            return [OfPads(name, pads)];
        }

        // Placements tell parts, not pins; where a part has one pad on a net, that pad is the pin.
        IReadOnlyList<Pad> guessed = GuessedPads(wanted.Component);
        return guessed.Count == 1 ? [OfGuessed(name, guessed[0], wanted.Position)]
            : Missing("CIR010", wanted.Position, $"the pin {name}", guessed.Count == 0 ? PinHint(name) : string.Create(CultureInfo.InvariantCulture,
                $"a part with one pad on net {net.Name}; {wanted.Component} was guessed to have {guessed.Count}, use `component` or `pads`"));
    }

    private string PinHint(string name)
    {
        // All pads of the board are looked through: not for remarks that are not listed any more.
        if (diagnostics.Count >= RemarkBudget.ListedPerKind)
        {
            return $"a pin on net {net.Name}";
        }

        Net? other = board.Nets.FirstOrDefault(candidate => candidate.Pads.Any(pad => pad.Pin?.Text == name));
        if (other is not null)
        {
            return $"a pin on net {net.Name}; {name} is on net {other.Name}";
        }

        string? near = NearestName.Of(name, net.Pads.Select(pad => pad.Pin?.Text).OfType<string>().Distinct());
        return near is null ? $"a pin on net {net.Name}" : $"a pin on net {net.Name}; did you mean {near}?";
    }

    private IReadOnlyList<Electrical.Contact> BindComponent(ComponentContact wanted)
    {
        List<Electrical.Contact> contacts = [.. net.Pads.Where(pad => pad.Pin?.Component == wanted.Component)
            .GroupBy(pad => pad.Pin!.Text).OrderBy(pin => pin.Key, StringComparer.Ordinal)
            .Select(pin => OfPads(pin.Key, pin))];
        if (contacts.Count == 0)
        {
            contacts = [.. GuessedPads(wanted.Component).Select(pad => OfGuessed($"{wanted.Component} at {PointText(pad.At)}", pad, wanted.Position))];
        }

        return contacts.Count > 0 ? contacts
            : Missing("CIR011", wanted.Position, $"the component {wanted.Component}", $"a component with a pin on net {net.Name}");
    }

    private IReadOnlyList<Pad> GuessedPads(string component) => [.. net.Pads.Where(pad => pad.GuessedPart == component)];

    private Electrical.Contact OfGuessed(string name, Pad pad, SourcePosition position)
    {
        diagnostics.Add(new Diagnostic("CIR016", Severity.Warning, position,
            $"{name}, which no file names; guessed from the placements to be the pad at {PointText(pad.At)}",
            "pins in the artwork, or `pads` in the brief"));
        return OfPads(name, [pad]);
    }

    private IReadOnlyList<Electrical.Contact> BindPad(PadContact wanted)
    {
        if (LayerOf(wanted.Layer, wanted.Position) is not { } layer)
        {
            return [];
        }

        Pad? pad = net.Pads.Where(candidate => candidate.Layer == layer && candidate.At.DistanceNmTo(wanted.At) <= ReachNm)
            .MaxBy(candidate => candidate.Outlines.Sum(Ring.SignedAreaNm2));
        return pad is not null ? [OfPads($"pad at {PointText(wanted.At)}", [pad])]
            : Missing("CIR012", wanted.Position, $"no pad of net {net.Name} at {PointText(wanted.At)}", "the point a pad was flashed at");
    }

    private IReadOnlyList<Electrical.Contact> BindPadsIn(PadsInContact wanted)
    {
        if (LayerOf(wanted.Layer, wanted.Position) is not { } layer)
        {
            return [];
        }

        // A land around a plated hole is a via unless 'holes' names it: no part need touch it.
        List<Electrical.Contact> contacts = [.. net.Pads
            .Where(pad => pad.Layer == layer && wanted.Box.Contains(pad.At) && HoleAt(pad.At) is null)
            .Select(pad => OfPads($"pad at {PointText(pad.At)}", [pad]))];
        return contacts.Count > 0 ? contacts
            : Missing("CIR013", wanted.Position, $"no pad of net {net.Name} inside the box", "pads flashed inside it that are not lands of plated holes");
    }

    private IReadOnlyList<Electrical.Contact> BindHole(HoleContact wanted)
    {
        if (HoleAt(wanted.At) is not { } barrel)
        {
            return Missing("CIR014", wanted.Position, $"no plated hole of net {net.Name} at {PointText(wanted.At)}", "the centre of one");
        }

        IEnumerable<ContactArea> lands = AreasOf(net.Pads
            .Where(pad => (pad.Layer == 1 || pad.Layer == _layerCount) && pad.At.DistanceNmTo(barrel.Centre) <= ReachNm));
        return [new Electrical.Contact($"hole at {PointText(wanted.At)}", [.. lands], [barrel])];
    }

    private Barrel? HoleAt(PointNm at) => net.Barrels.FirstOrDefault(barrel => barrel.Centre.DistanceNmTo(at) <= ReachNm);

    private IReadOnlyList<Electrical.Contact> BindArea(LayerReference reference, PointNm[] outline, string word, SourcePosition position) =>
        LayerOf(reference, position) is { } layer
            ? [new Electrical.Contact($"{word} at {PointText(BoxNm.Of(outline).Centre)}", [new ContactArea(layer, outline)], [])]
            : [];

    private int? LayerOf(LayerReference reference, SourcePosition position)
    {
        int? layer = reference.Resolve(_layerCount);
        if (layer is null)
        {
            diagnostics.Add(new Diagnostic("CIR015", Severity.Error, position, $"layer {reference}",
                string.Create(CultureInfo.InvariantCulture, $"top, bottom, or 1 to {_layerCount}")));
        }

        return layer;
    }

    private IReadOnlyList<Electrical.Contact> Missing(string code, SourcePosition position, string found, string expected)
    {
        diagnostics.Add(new Diagnostic(code, Severity.Error, position, found, expected));
        return [];
    }

    private static Electrical.Contact OfPads(string name, IEnumerable<Pad> pads) => new(name, [.. AreasOf(pads)], []);

    /// <summary>
    /// Pads that touch or overlap become one area: two edges that nearly coincide would bound slivers no mesh fills well.
    /// Pads that close around other copper stay apart, which leaves that copper out of the contact.
    /// </summary>
    private static IEnumerable<ContactArea> AreasOf(IEnumerable<Pad> pads) => pads.GroupBy(pad => pad.Layer).SelectMany(layer =>
    {
        PointNm[][] outlines = [.. layer.SelectMany(pad => pad.Outlines)];
        IReadOnlyList<PolygonNm> united = PolygonOperations.Paint([.. outlines.Select(outline => new PaintStep(true, [outline], default))]);
        return (united.Any(piece => piece.Holes.Length > 0) ? outlines : united.Select(piece => piece.Outer))
            .Select(outline => new ContactArea(layer.Key, outline));
    });

    private static string PointText(PointNm p) =>
        QuantityText.Point(Units.MetresFromNm(p.X), Units.MetresFromNm(p.Y));
}
