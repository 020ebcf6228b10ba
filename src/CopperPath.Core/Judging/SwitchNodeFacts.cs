using CopperPath.Brief;
using CopperPath.Converter;
using CopperPath.Copper;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Size of a switch node and what it costs. No limit is published: the values rank layouts.</summary>
/// <param name="Net">The reviewed net.</param>
/// <param name="LayerAreasM2">Copper per layer, square metres.</param>
/// <param name="LeastAreaM2">Least area that carries its current at the allowed rise, square metres.</param>
/// <param name="CapacitanceF">Capacitance to the return copper on neighbouring layers, farads.</param>
/// <param name="DisplacementA">Current pushed into it during an edge, amperes; null without a converter in the brief.</param>
/// <param name="SwitchingLossW">C V2 f, watts; null without a converter in the brief.</param>
public sealed record SwitchNodeFacts(
    SolvedNet Net,
    IReadOnlyList<(int Layer, double AreaM2)> LayerAreasM2,
    double LeastAreaM2,
    double CapacitanceF,
    double? DisplacementA,
    double? SwitchingLossW)
{
    /// <summary>True where outlines cross too often to tell the overlap: then the whole node was taken to face return copper.</summary>
    public bool IsCapacitanceTheMost { get; private init; }

    public double AreaM2 => LayerAreasM2.Sum(layer => layer.AreaM2);

    public static IReadOnlyList<SwitchNodeFacts> Of(PathContext path) =>
        [.. path.Nets.Where(net => net.Bound.Review.Role == NetRole.SwitchNode).Select(net => Of(path, net))];

    private static SwitchNodeFacts Of(PathContext path, SolvedNet net)
    {
        ConverterFacts? facts = path.FactsOf(net.Bound.Net);
        double permittivity = path.Brief.Stackup?.RelativePermittivity ?? StackupSection.UsualRelativePermittivity;
        double capacitanceF = 0;
        bool isMost = false;
        foreach (NetSheet sheet in net.Bound.Net.Sheets)
        {
            // The plane on either side, where the next layer holds return copper.
            foreach (int beside in new[] { sheet.Layer - 1, sheet.Layer + 1 })
            {
                if (path.Path.Return?.SheetOn(beside) is { } plane)
                {
                    double? overlapM2 = OverlapM2(sheet, plane);
                    isMost |= overlapM2 is null;
                    capacitanceF += SwitchNodePlate.Of(overlapM2 ?? sheet.AreaM2, path.Stack.DielectricM[Math.Min(beside, sheet.Layer) - 1], permittivity).CapacitanceF;
                }
            }
        }

        SwitchNodePlate plate = new(capacitanceF, ConverterFacts.Basis);
        return new SwitchNodeFacts(net,
            [.. net.Bound.Net.Sheets.Select(sheet => (sheet.Layer, sheet.AreaM2))],
            LeastAreaOf(path, net, facts),
            capacitanceF,
            facts is null ? null : plate.DisplacementCurrentA(facts.Stage.InputV, facts.EdgeS),
            facts is null ? null : plate.SwitchingLossW(facts.Stage.InputV, facts.Stage.SwitchingHz))
        {
            IsCapacitanceTheMost = isMost,
        };
    }

    /// <summary>Area in which the two lie over each other, square metres; null when their outlines cross too often to tell.</summary>
    private static double? OverlapM2(NetSheet sheet, NetSheet plane)
    {
        // Of a plane with a thousand clearances only those near the node matter.
        BoxNm box = BoxNm.Around(sheet.Islands.Select(island => island.Bounds));
        PointNm[][] near = [.. CopperBuilder.RingsOf(plane.Islands).Where(ring => box.Touches(BoxNm.Of(ring)))];
        try
        {
            return PolygonOperations.Intersect(CopperBuilder.RingsOf(sheet.Islands), near).Sum(piece => piece.AreaNm2) * 1e-18;
        }
        catch (EntangledOutlinesException)
        {
            return null;
        }
    }

    /// <summary>
    /// The pads, and between the middle of the entering contacts and that of the leaving ones a strip of the width that
    /// carries the current on one outer layer.
    /// </summary>
    private static double LeastAreaOf(PathContext path, SolvedNet net, ConverterFacts? facts)
    {
        double currentA = Math.Max(net.Bound.EnteringA, facts?.Stage.InductorRmsA ?? 0);
        int outerLayer = net.Bound.Net.Sheets[0].Layer;
        Section strip = new(outerLayer, 0, 0, 0, 0, 0, 0, 0, currentA, 0);
        double widthM = path.Rating.TraceWidthM(strip, net.Bound.Review.Limits.TemperatureRiseK);
        PointNm from = MiddleOf(net.Bound.Terminals.Where(terminal => terminal.CurrentA > 0));
        PointNm to = MiddleOf(net.Bound.Terminals.Where(terminal => terminal.CurrentA < 0));
        double padsM2 = net.Bound.Terminals.SelectMany(terminal => terminal.Contacts).SelectMany(contact => contact.Areas)
            .Sum(area => Ring.SignedAreaNm2(area.Outline)) * 1e-18;
        return padsM2 + (widthM * Units.MetresFromNm(from.DistanceNmTo(to)));
    }

    private static PointNm MiddleOf(IEnumerable<BoundTerminal> terminals)
    {
        List<PointNm> places = [.. terminals.SelectMany(terminal => terminal.Contacts)
            .Select(contact => contact.Areas.Count > 0 ? BoxNm.Of(contact.Areas[0].Outline).Centre : contact.Barrels[0].Centre)];
        return new PointNm((long)places.Average(place => (double)place.X), (long)places.Average(place => (double)place.Y));
    }
}
