using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.CrossCheck;

/// <summary>Points of the netlist against copper and holes, by their number; single ones are the matter of the nets.</summary>
internal static class NetlistCounts
{
    /// <summary>Share from which points that miss are no rounding and no odd pad, as for names (NET015). The project's choice.</summary>
    private const double MostMissing = 0.1;

    public static IEnumerable<Diagnostic> Run(FabricationSet set)
    {
        if (set.Netlist is not { } netlist || set.Nets.Netlist is not { } agreement)
        {
            yield break;
        }

        int off = agreement.Points - agreement.PointsOnCopper;
        if (off > MostMissing * agreement.Points)
        {
            yield return SetRemark.Doubt(SetCode.NetlistOffCopper, netlist.File,
                $"{off} of {agreement.Points} points of the netlist on no copper", "copper under nine points in ten: a layer may be missing, shifted or cut short");
        }

        PointNm[] wanted = [.. netlist.Points.Where(point => point.HoleDiameterNm is not null).Select(point => point.Location + agreement.Shift)];
        HoleIndex holes = new(set.Drills.SelectMany(drill => drill.Features));
        int missing = wanted.Count(place => !holes.HasHoleAt(place, netlist.ResolutionNm + RegistrationSearch.SamePlaceNm));
        if (missing > MostMissing * wanted.Length)
        {
            yield return SetRemark.Doubt(SetCode.NetlistHoles, netlist.File,
                $"{missing} of {wanted.Length} holes of the netlist that no drill file has", "the holes of the netlist in the drill files: one may be missing or cut short");
        }
    }
}
