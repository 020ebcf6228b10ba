using CopperPath.Cli.Overlays;
using CopperPath.Geometry;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>
/// The part of the board that the pictures of a review show, the same for all of them: the whole board, or where the
/// current keeps to a small part of it, that part with all findings on the board.
/// </summary>
internal static class PicturedArea
{
    /// <summary>Room left around what is shown, share of its larger side.</summary>
    public const double WholeMarginShare = 0.04;
    private const double PartMarginShare = 0.1;

    /// <summary>Above this share of the whole view a part would hardly be larger than the whole.</summary>
    private const double LargestPart = 0.5;

    /// <summary>A part is at least this wide for its height and high for its width.</summary>
    private const double LeastAspect = 0.5;

    /// <summary>
    /// A part is at least this share of the board's larger side each way: a single plated hole is a point, and is shown
    /// with what lies around it.
    /// </summary>
    private const double LeastPartShare = 0.02;

    /// <summary>Vias with less than this share of the largest current do not call for being shown.</summary>
    private const double LeastViaShare = 0.02;

    /// <summary>The whole board with its margin.</summary>
    public static BoxNm Whole(Review review) => WithMargin(review.Board!.Bounds, WholeMarginShare);

    /// <param name="review">A review with at least one net.</param>
    /// <param name="fields">What was solved.</param>
    /// <param name="density">Scale of the current density; copper below its bottom carries next to nothing.</param>
    public static BoxNm Of(Review review, IReadOnlyList<LayerField> fields, ScaleSpec density)
    {
        BoxNm whole = Whole(review);
        BoxNm[] busy = [.. fields.Select(field => BoxAbove(field.Density, density.Bottom!.Value)).OfType<BoxNm>(), .. BusyVias(review)];
        if (busy.Length == 0)
        {
            return whole;
        }

        // A finding off the board, such as of a contact misplaced in the brief, is no part of it to look at.
        BoxNm[] found = [.. review.Findings.Where(finding => finding.Layer > 0).Select(PlaceOf).Where(whole.Touches)];
        BoxNm part = WithLeastAspect(WithMargin(WithLeastSides(BoxNm.Around([.. busy, .. found]), whole), PartMarginShare));
        BoxNm seen = new(
            Math.Max(part.MinX, whole.MinX), Math.Max(part.MinY, whole.MinY), Math.Min(part.MaxX, whole.MaxX), Math.Min(part.MaxY, whole.MaxY));
        return AreaOf(seen) > 0 && AreaOf(seen) <= LargestPart * AreaOf(whole) ? seen : whole;
    }

    private static BoxNm? BoxAbove(ShadedSheet sheet, double level)
    {
        double leftM = double.PositiveInfinity;
        double rightM = double.NegativeInfinity;
        double bottomM = double.PositiveInfinity;
        double topM = double.NegativeInfinity;
        for (int corner = 0; corner < sheet.Values.Length; corner++)
        {
            if (sheet.Values[corner] >= level)
            {
                int v = sheet.Mesh.Triangles[corner];
                leftM = Math.Min(leftM, sheet.Mesh.XM[v]);
                rightM = Math.Max(rightM, sheet.Mesh.XM[v]);
                bottomM = Math.Min(bottomM, sheet.Mesh.YM[v]);
                topM = Math.Max(topM, sheet.Mesh.YM[v]);
            }
        }

        return leftM > rightM ? null : new BoxNm(Nm(leftM), Nm(bottomM), Nm(rightM), Nm(topM));
    }

    private static IEnumerable<BoxNm> BusyVias(Review review)
    {
        List<Electrical.BarrelCurrent> barrels = [.. review.Nets.SelectMany(net => net.Conduction.Barrels)];
        double mostA = barrels.Select(barrel => Math.Abs(barrel.CurrentA)).DefaultIfEmpty(0).Max();
        return barrels.Where(barrel => Math.Abs(barrel.CurrentA) > LeastViaShare * mostA).Select(barrel => BoxNm.Of([barrel.Barrel.Centre]));
    }

    private static BoxNm PlaceOf(Finding finding)
    {
        BoxNm place = BoxNm.Of([new PointNm(Nm(finding.XM), Nm(finding.YM))]);
        return finding.Extent is { } extent ? BoxNm.Around([place, extent]) : place;
    }

    private static BoxNm WithMargin(BoxNm box, double share) => box.GrownBy((long)(share * Math.Max(box.WidthNm, box.HeightNm)));

    private static BoxNm WithLeastSides(BoxNm box, BoxNm whole)
    {
        long leastNm = (long)(LeastPartShare * Math.Max(whole.WidthNm, whole.HeightNm));
        long moreX = Math.Max(0, leastNm - box.WidthNm) / 2;
        long moreY = Math.Max(0, leastNm - box.HeightNm) / 2;
        return new BoxNm(box.MinX - moreX, box.MinY - moreY, box.MaxX + moreX, box.MaxY + moreY);
    }

    private static BoxNm WithLeastAspect(BoxNm box)
    {
        long moreX = Math.Max(0, (long)((LeastAspect * box.HeightNm) - box.WidthNm) / 2);
        long moreY = Math.Max(0, (long)((LeastAspect * box.WidthNm) - box.HeightNm) / 2);
        return new BoxNm(box.MinX - moreX, box.MinY - moreY, box.MaxX + moreX, box.MaxY + moreY);
    }

    private static double AreaOf(BoxNm box) => (double)box.WidthNm * box.HeightNm;

    private static long Nm(double metres) => (long)Math.Round(Units.NmFromMetres(metres));
}
