using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>
/// What the copper of one layer, or the solder on it, has of a net's loss and drop. With the barrels' own they add to the
/// whole (Tellegen's theorem): the change of loss or drop with the resistance of one part is its share of it.
/// </summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="IsSolder">True for the solder on the layer's copper.</param>
/// <param name="LossW">Heat of the current that follows from the potential and of the balanced current, watts.</param>
/// <param name="DropV">Its part of the largest drop, volts; may be negative where the net has more than two terminals.</param>
public sealed record ConductorPart(int Layer, bool IsSolder, Bracket LossW, double DropV)
{
    /// <param name="flows">Currents of the net.</param>
    /// <param name="unitFlows">Currents of one ampere between the terminals of the drop; null where those are the net's own, scaled.</param>
    /// <param name="netA">The net's current between two terminals, amperes; used where there are no unit flows.</param>
    internal static IReadOnlyList<ConductorPart> Of(
        IReadOnlyList<SheetFlow> flows, IReadOnlyList<SheetFlow>? unitFlows, double netA)
    {
        List<ConductorPart> parts = [];
        for (int s = 0; s < flows.Count; s++)
        {
            parts.AddRange(OfSheet(flows[s], unitFlows?[s] ?? flows[s], unitFlows is null ? 1 / netA : 1));
        }

        return parts;
    }

    private static IEnumerable<ConductorPart> OfSheet(SheetFlow flow, SheetFlow unit, double unitScale)
    {
        double copperShare = flow.Conductance.CopperShareUnderSolder;
        (double SourceW, double BalancedW, double DropV) copper = default, solder = default;
        bool isTinned = false;
        for (int t = 0; t < flow.Mesh.TriangleCount; t++)
        {
            (double sourceW, double balancedW) = flow.ProductsW(flow, t);
            double dropV = unitScale * (ReferenceEquals(unit, flow) ? sourceW : flow.ProductsW(unit, t).SourceW);
            bool isUnderSolder = flow.Mesh.TriangleMarkers[t] == SheetMesh.Tinned;
            double share = isUnderSolder ? copperShare : 1;
            isTinned |= isUnderSolder;
            copper = (copper.SourceW + (share * sourceW), copper.BalancedW + (share * balancedW), copper.DropV + (share * dropV));
            solder = (solder.SourceW + ((1 - share) * sourceW), solder.BalancedW + ((1 - share) * balancedW), solder.DropV + ((1 - share) * dropV));
        }

        yield return new ConductorPart(flow.Layer, false, new Bracket(copper.SourceW, copper.BalancedW), copper.DropV);
        if (isTinned)
        {
            yield return new ConductorPart(flow.Layer, true, new Bracket(solder.SourceW, solder.BalancedW), solder.DropV);
        }
    }
}
