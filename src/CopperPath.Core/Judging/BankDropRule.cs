using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.PowerPath;
using CopperPath.Quantities;

namespace CopperPath.Judging;

/// <summary>Drop between the output capacitors' pads and the load: what the bank can not hold steady.</summary>
internal static class BankDropRule
{
    public static IEnumerable<Finding> Judge(PathContext path)
    {
        PracticeLimit limit = path.Limits.BankDropV;
        foreach (SolvedNet net in path.Nets.Where(net => net.Bound.Review.Role == NetRole.Output))
        {
            if (path.Path.ConverterOf(net.Bound.Net) is not { } converter)
            {
                continue;
            }

            double loadV = net.Conduction.Terminals.Where(terminal => terminal.Terminal.CurrentA < 0).Min(terminal => terminal.PotentialV);
            List<(Part Part, PartPad Pad, double DropV)> ends = [.. converter.OutputCapacitors
                .Select(part => (part, part.PadsOn(net.Bound.Net).First()))
                .Select(end => (end.part, end.Item2, PotentialV(net.Conduction, end.Item2.Pad.Layer, end.Item2.Box.Centre) - loadV))
                .Where(end => !double.IsNaN(end.Item3))];
            if (ends.Count == 0)
            {
                continue;
            }

            (Part worst, PartPad pad, double dropV) = ends.MaxBy(end => end.DropV);
            Spread spread = SpreadOf(path, net, dropV);
            if (spread.Worst > limit.Value && (dropV > limit.Value || limit.IsStated))
            {
                bool isBeyond = dropV > limit.Value;
                yield return PathContext.FindingAt(
                    RuleCatalogue.BankDrop, isBeyond ? PathContext.LevelOf(limit) : FindingLevel.WithinAsStated, net.Bound.Review.Name, pad.Pad.Layer, pad.At,
                    new Measure("drop", "V", dropV, limit.Value) { Worst = spread.Worst },
                    $"Between {worst.Name} and the load the copper loses "
                        + (isBeyond ? $"{QuantityText.Voltage(dropV)} at full load." : RangeWords.Of(spread, limit.Value, QuantityText.Voltage)),
                    "Move the capacitor nearer to the load, or widen the copper between them.");
            }
        }
    }

    /// <summary>A drop inside a net, which grows as the net's largest does: exact for one layer, of first order for more.</summary>
    private static Spread SpreadOf(PathContext path, SolvedNet net, double dropV)
    {
        NetResponse response = new(net, path.Brief, path.Stack, path.Ranges);
        double share = dropV / net.Conduction.DropV;
        return response.SpreadOf(state => share * response.DropV(state));
    }

    /// <summary>Potential at the mesh vertex nearest to a point; NaN on a layer that was not solved.</summary>
    private static double PotentialV(ConductionResult result, int layer, PointNm at)
    {
        if (result.Sheets.FirstOrDefault(sheet => sheet.Layer == layer) is not { } field)
        {
            return double.NaN;
        }

        double xM = Units.MetresFromNm(at.X);
        double yM = Units.MetresFromNm(at.Y);
        int nearest = 0;
        double leastM2 = double.MaxValue;
        for (int v = 0; v < field.Mesh.XM.Length; v++)
        {
            double dx = field.Mesh.XM[v] - xM;
            double dy = field.Mesh.YM[v] - yM;
            double distanceM2 = (dx * dx) + (dy * dy);
            if (distanceM2 < leastM2)
            {
                (nearest, leastM2) = (v, distanceM2);
            }
        }

        return field.PotentialV[nearest];
    }
}
