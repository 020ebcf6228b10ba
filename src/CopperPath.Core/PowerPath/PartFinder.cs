using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Quantities;

namespace CopperPath.PowerPath;

/// <summary>Pads of all nets -> parts. Where the files name pins, by their designators; else from the pattern of the pads.</summary>
public static class PartFinder
{
    /// <summary>Plated holes below this carry no pin: they are vias. Common practice, no source.</summary>
    private const long LeastPinHoleNm = 7 * Units.NmPerMm / 10;

    /// <summary>A land this many times wider than its small hole is a pad with a via in it. Common practice, no source.</summary>
    private const long MostLandToHole = 3;

    /// <summary>How far a pad's centre may be from that of the hole in it.</summary>
    private const double ReachNm = 30_000;

    public static IReadOnlyList<Part> Find(NetList board)
    {
        List<PartPad> pads = [.. board.Nets.SelectMany(net => PadsOf(net, board.Layers[^1].Number))];
        return pads.Any(pad => pad.Name is not null) ? NamedParts(pads) : PadPatterns.PartsOf(pads);
    }

    private static List<Part> NamedParts(List<PartPad> pads) => [.. pads.Where(pad => pad.Pad.Pin is not null)
        .GroupBy(pad => pad.Pad.Pin!.Component)
        .OrderBy(part => part.Key, StringComparer.Ordinal)
        .Select(part => new Part(part.Key, IsNamed: true, ShapeOf([.. part]), [.. part]))];

    private static PartShape ShapeOf(List<PartPad> pads) =>
        pads.Exists(pad => pad.HoleDiameterNm > 0) && pads.TrueForAll(pad => pad.HoleDiameterNm > 0 || pad.Name is null) ? PartShape.ThroughHole
        : pads.Count == 1 ? PartShape.SinglePad
        : pads.Count == 2 ? PartShape.TwoTerminal
        : pads.Count == 4 && pads.Select(pad => pad.Net).Distinct(NetIdentity.Comparer).Count() == 4
            && pads.TrueForAll(pad => pad.IsCongruentTo(pads[0]) && pad.AreaM2 >= PadPatterns.LeastFourTerminalPadM2)
            ? PartShape.FourTerminal
        : PartShape.Package;

    /// <summary>Pads a part can stand on: on an outer layer, lands of vias left out, one for each place.</summary>
    private static IEnumerable<PartPad> PadsOf(Net net, int lastLayer)
    {
        Dictionary<(int Layer, PointNm At), PartPad> largest = [];
        foreach (Pad pad in net.Pads.Where(pad => pad.Layer == 1 || pad.Layer == lastLayer))
        {
            long holeNm = net.Barrels.Where(barrel => barrel.Centre.DistanceNmTo(pad.At) <= ReachNm)
                .Select(barrel => barrel.Feature.ToolDiameterNm).DefaultIfEmpty(0).Max();
            bool isFarSideOfPin = holeNm >= LeastPinHoleNm && pad.Layer != 1;
            if (isFarSideOfPin || !pad.Outlines.Any())
            {
                continue;
            }

            BoxNm box = BoxNm.Of(pad.Outlines.SelectMany(outline => outline));
            bool isVia = pad.Pin is null && holeNm is > 0 and < LeastPinHoleNm && Math.Max(box.WidthNm, box.HeightNm) <= MostLandToHole * holeNm;
            if (isVia)
            {
                continue;
            }

            PartPad found = new(pad.Pin?.Pin, net, pad, box, holeNm >= LeastPinHoleNm ? holeNm : 0);
            if (!largest.TryGetValue((pad.Layer, pad.At), out PartPad? known) || found.AreaM2 > known.AreaM2)
            {
                largest[(pad.Layer, pad.At)] = found;
            }
        }

        return largest.Values.OrderBy(pad => pad.Pad.Layer).ThenBy(pad => pad.At.X).ThenBy(pad => pad.At.Y);
    }
}
