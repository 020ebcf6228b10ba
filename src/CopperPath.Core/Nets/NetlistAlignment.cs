using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.Netlist;

namespace CopperPath.Nets;

/// <summary>
/// Where a netlist's origin lies on the board. Netlists are often written from another origin than the artwork; drilled
/// holes tell, because both know where they are.
/// </summary>
internal static class NetlistAlignment
{
    /// <summary>Share of hole points on drilled holes above which the origins are taken to agree.</summary>
    private const double AlreadyAligned = 0.8;

    /// <summary>Least share for a shifted origin, and its least lead over the next shift.</summary>
    private const double LeastShare = 0.9;
    private const double LeastLead = 0.25;

    private const int PointsTried = 40;

    /// <summary>Moves the points of a netlist to the origin of the drill files, and says so when they move.</summary>
    public static (BoardNetlist Netlist, PointNm Shift) Align(
        BoardNetlist netlist, IReadOnlyList<DrillArtwork> drills, List<Diagnostic> diagnostics)
    {
        PointNm[] holes = [.. drills.SelectMany(drill => drill.Features).Select(feature => BoxNm.Of(feature.Path).Centre)];
        PointNm shift = ShiftOf(netlist, holes, NetlistCheck.ToleranceNm(netlist));
        if (shift == default)
        {
            return (netlist, shift);
        }

        diagnostics.Add(new Diagnostic("NET016", Severity.Warning, SourcePosition.WholeFile(netlist.File),
            string.Create(CultureInfo.InvariantCulture,
                $"coordinates from another origin; moved by {shift.X / 1e6:0.####}, {shift.Y / 1e6:0.####} mm, which brings its holes onto the drilled ones"),
            "the origin of the artwork"));
        return (netlist with { Points = [.. netlist.Points.Select(point => point with { Location = point.Location + shift })] }, shift);
    }

    /// <param name="netlist">The netlist.</param>
    /// <param name="holes">Centres of drilled holes.</param>
    /// <param name="toleranceNm">How far a point may be from the hole it stands for.</param>
    /// <returns>What to add to its coordinates; zero also when the holes can not tell.</returns>
    private static PointNm ShiftOf(BoardNetlist netlist, PointNm[] holes, long toleranceNm)
    {
        PointNm[] points = [.. netlist.Points.Where(point => point.HoleDiameterNm is not null).Select(point => point.Location)];
        if (points.Length == 0 || holes.Length == 0)
        {
            return default;
        }

        PointIndex index = new(holes, toleranceNm);
        if (Share(points, default, index) >= AlreadyAligned)
        {
            return default;
        }

        // One point is on some hole: that hole's distance is the shift, and the other points vote on it.
        PointNm[] voters = [.. points.Where((_, i) => i % Math.Max(1, points.Length / PointsTried) == 0)];
        (PointNm Shift, double Share)[] tried = [.. holes.Select(hole => hole - points[0])
            .Select(shift => (shift, Share(voters, shift, index)))
            .OrderByDescending(entry => entry.Item2)];
        (PointNm best, double share) = tried[0];
        double next = tried.Where(entry => entry.Shift.DistanceNmTo(best) > 4 * toleranceNm).Select(entry => entry.Share).FirstOrDefault();
        return share >= LeastShare && share - next >= LeastLead ? best : default;
    }

    private static double Share(PointNm[] points, PointNm shift, PointIndex holes) =>
        (double)points.Count(point => holes.HasNear(point + shift)) / points.Length;
}
