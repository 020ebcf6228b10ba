using CopperPath.Converter;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.PowerPath;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>
/// The loop whose current switches with every edge: input capacitor, high side, low side, and back. No limit is
/// published: the values rank phases.
/// </summary>
/// <param name="Converter">Number of the converter in the proposal.</param>
/// <param name="Phase">Number of the phase, from 1.</param>
/// <param name="SwitchNode">Its switch node.</param>
/// <param name="Capacitor">The nearest input capacitor.</param>
/// <param name="Corners">Middles of the pads the current passes, in order, in board coordinates.</param>
/// <param name="AreaM2">Area inside the corners, square metres.</param>
/// <param name="LengthM">Way around the corners, metres.</param>
/// <param name="WidthM">Narrowest pad on the way, metres.</param>
/// <param name="HeightM">Distance to the return plane under it, metres; null where none lies under the whole loop.</param>
/// <param name="Inductance">Inductance over that plane, with what it rests on; null without a plane.</param>
public sealed record HotLoopFacts(
    int Converter, int Phase, Net SwitchNode, Part Capacitor, IReadOnlyList<PointNm> Corners,
    double AreaM2, double LengthM, double WidthM, double? HeightM, InductanceEstimate? Inductance)
{
    /// <summary>Corners of the loop that must lie over the plane, all but a few at pads with clearances.</summary>
    private const double LeastCoveredShare = 0.8;

    /// <summary>Loops of all phases, least inductance (or area) first within each converter.</summary>
    public static IReadOnlyList<HotLoopFacts> Of(PathContext path) =>
    [
        .. path.Path.Converters.SelectMany(converter => converter.Phases
            .Select((phase, i) => Of(path, converter, phase, i + 1)).OfType<HotLoopFacts>()
            .OrderBy(loop => loop.Inductance?.InductanceH ?? double.MaxValue).ThenBy(loop => loop.AreaM2).ThenBy(loop => loop.Phase)),
    ];

    private static HotLoopFacts? Of(PathContext path, ConverterProposal converter, PhaseProposal phase, int number)
    {
        if (converter.Input is not { } input || phase.InputCapacitors.Count == 0 || phase.HighSides.Count == 0 || phase.LowSides.Count == 0)
        {
            return null;
        }

        PartPad[] supplyPads = [.. phase.HighSides.SelectMany(part => part.PadsOn(input))];
        Part capacitor = phase.InputCapacitors.MinBy(part => NearestNm(part.PadsOn(input), supplyPads))!;
        PartPad capacitorIn = capacitor.PadsOn(input).First();
        PartPad highIn = Nearest(supplyPads, capacitorIn.At);
        Part high = phase.HighSides.First(part => part.Pads.Contains(highIn));
        PartPad[] lowPads = [.. phase.LowSides.SelectMany(part => part.PadsOn(phase.SwitchNode))];
        PartPad highOut = Largest(high.PadsOn(phase.SwitchNode));
        PartPad lowIn = Nearest(lowPads, highOut.At);
        Part low = phase.LowSides.First(part => part.Pads.Contains(lowIn));
        PartPad lowOut = Largest(low.PadsOn(converter.Return));
        PartPad capacitorBack = capacitor.PadsOn(converter.Return).First();
        PartPad[] way = [capacitorIn, highIn, highOut, lowIn, lowOut, capacitorBack];
        if (way.Any(pad => pad.Pad.Layer != way[0].Pad.Layer))
        {
            return null;
        }

        PointNm[] corners = [.. way.Select(pad => pad.Box.Centre)];
        double lengthM = Units.MetresFromNm(corners.Select((corner, i) => corner.DistanceNmTo(corners[(i + 1) % corners.Length])).Sum());
        double widthM = Units.MetresFromNm(way.Min(pad => Math.Max(pad.Box.WidthNm, pad.Box.HeightNm)));
        double? heightM = HeightUnder(path, way[0].Pad.Layer, corners, converter.Return);
        return new HotLoopFacts(converter.Number, number, phase.SwitchNode, capacitor, corners,
            Math.Abs(Ring.SignedAreaNm2(corners)) * 1e-18, lengthM, widthM, heightM,
            heightM is { } height ? HotLoop.Inductance(height, lengthM, widthM) : null);
    }

    private static double? HeightUnder(PathContext path, int layer, PointNm[] corners, Net back)
    {
        int beside = layer == 1 ? 2 : layer - 1;
        if (beside > path.Stack.ThicknessM.Count || beside < 1 || back.SheetOn(beside) is not { } plane)
        {
            return null;
        }

        Polygons.PolygonLocator locator = new(plane.Islands);
        int covered = corners.Concat(corners.Select((corner, i) => Middle(corner, corners[(i + 1) % corners.Length]))).Count(point => locator.Find(point) >= 0);
        return covered >= LeastCoveredShare * 2 * corners.Length ? path.Stack.DielectricM[Math.Min(layer, beside) - 1] : null;
    }

    private static PointNm Middle(PointNm a, PointNm b) => new((a.X + b.X) / 2, (a.Y + b.Y) / 2);

    private static PartPad Largest(IEnumerable<PartPad> pads) => pads.MaxBy(pad => pad.AreaM2)!;

    private static PartPad Nearest(IEnumerable<PartPad> pads, PointNm to) => pads.MinBy(pad => pad.Box.Centre.DistanceNmTo(to))!;

    private static double NearestNm(IEnumerable<PartPad> from, PartPad[] to) => from.Min(pad => to.Min(other => pad.GapNmTo(other)));
}
