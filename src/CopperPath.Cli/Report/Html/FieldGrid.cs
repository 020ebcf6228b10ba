using CopperPath.Cli.Overlays;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Judging;
using CopperPath.Quantities;
using CopperPath.Thermal;
using SkiaSharp;

namespace CopperPath.Cli.Report.Html;

/// <summary>
/// The solved field of one stretch on one layer, sampled at the centres of square cells: each value is the solver's
/// own in the triangle that holds the centre, and absent where no triangle does.
/// </summary>
/// <param name="Stretch">Number of the stretch in the brief, from 0.</param>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="PitchNm">Side of a cell.</param>
/// <param name="LeftNm">Left edge of the first column.</param>
/// <param name="TopNm">Upper edge of the first row; rows run downwards.</param>
/// <param name="DensityAPerM2">Current density, amperes per square metre; absent in contacts and plated holes.</param>
/// <param name="DropV">Potential below the stretch's highest terminal, volts.</param>
/// <param name="RiseK">The board's own rise above ambient, kelvin; null where no temperatures were solved.</param>
internal sealed record FieldGrid(
    int Stretch, int Layer, long PitchNm, long LeftNm, long TopNm, FieldRaster DensityAPerM2, FieldRaster DropV, FieldRaster? RiseK)
{
    /// <summary>Cells of the whole report, empty ones counted: what keeps the file small and its writing quick.</summary>
    private const double CellBudget = 2_400_000;

    private static readonly long[] s_pitchesNm =
        [50_000, 100_000, 150_000, 200_000, 250_000, 500_000, 1_000_000, 2_000_000, 5_000_000];

    public int Columns => DropV.Width;

    public int Rows => DropV.Height;

    public double CentreXM(int column) => Units.MetresFromNm(LeftNm + ((column + 0.5) * PitchNm));

    public double CentreYM(int row) => Units.MetresFromNm(TopNm - ((row + 0.5) * PitchNm));

    /// <summary>Grids of all solved stretches, in the order of the brief, layers ascending.</summary>
    public static IReadOnlyList<FieldGrid> Of(Review review)
    {
        long[] pitches = Pitches(review.Nets);
        List<Func<FieldGrid>> samplings = [.. review.Nets.SelectMany((net, n) => net.Conduction.Sheets
            .Select<SheetField, Func<FieldGrid>>(sheet => () => Sample(n, net, sheet, pitches[n], review)))];
        return OnAllCores.Of(samplings, sampling => sampling());
    }

    private static FieldGrid Sample(int stretch, SolvedNet net, SheetField sheet, long pitchNm, Review review)
    {
        BoxNm board = review.Board!.Bounds;
        BoxNm copper = BoxOf(sheet);
        long left = Lattice(copper.MinX - board.MinX, pitchNm, Math.Floor) + board.MinX;
        long right = Lattice(copper.MaxX - board.MinX, pitchNm, Math.Ceiling) + board.MinX;
        long bottom = Lattice(copper.MinY - board.MinY, pitchNm, Math.Floor) + board.MinY;
        long top = Lattice(copper.MaxY - board.MinY, pitchNm, Math.Ceiling) + board.MinY;
        ViewTransform transform = new(new BoxNm(left, bottom, right, top), 0, 0, 1.0 / pitchNm, seenFromBelow: false);
        SKRectI area = new(0, 0, (int)((right - left) / pitchNm), (int)((top - bottom) / pitchNm));

        double highestV = net.Conduction.Terminals.Max(terminal => terminal.PotentialV);
        double[] dropV = [.. sheet.PotentialV.Select(v => Math.Max(0, highestV - v))];
        double[] density = sheet.CornerDensityAPerM2(review.Stack!.ThicknessM[sheet.Layer - 1]);
        FieldGrid grid = new(stretch, sheet.Layer, pitchNm, left, top,
            FieldRaster.SampleWithinMesh([new ShadedSheet(sheet.Mesh, density, FieldShading.PerCorner)], transform, area),
            FieldRaster.SampleWithinMesh([new ShadedSheet(sheet.Mesh, dropV, FieldShading.PerVertex)], transform, area),
            RiseK: null);
        return review.Heat is not { Result.Status: ThermalStatus.Solved } heat ? grid : grid with
        {
            RiseK = grid.DropV.Revalued((column, row) => heat.RiseK(grid.Layer, grid.CentreXM(column), grid.CentreYM(row))),
        };
    }

    private static BoxNm BoxOf(SheetField sheet) => new(
        (long)Math.Floor(Units.NmFromMetres(sheet.Mesh.XM.Min())),
        (long)Math.Floor(Units.NmFromMetres(sheet.Mesh.YM.Min())),
        (long)Math.Ceiling(Units.NmFromMetres(sheet.Mesh.XM.Max())),
        (long)Math.Ceiling(Units.NmFromMetres(sheet.Mesh.YM.Max())));

    private static long Lattice(long offsetNm, long pitchNm, Func<double, double> round) =>
        (long)round((double)offsetNm / pitchNm) * pitchNm;

    /// <summary>Cell sizes: an equal share of the budget for each stretch, what small ones leave going to the larger.</summary>
    private static long[] Pitches(IReadOnlyList<SolvedNet> nets)
    {
        double[] areasNm2 = [.. nets.Select(net => net.Conduction.Sheets.Select(BoxOf).Sum(box => (double)box.WidthNm * box.HeightNm))];
        long[] pitches = new long[nets.Count];
        double budget = CellBudget;
        int waiting = nets.Count;
        foreach (int n in Enumerable.Range(0, nets.Count).OrderBy(n => areasNm2[n]))
        {
            double share = budget / waiting--;
            pitches[n] = s_pitchesNm.FirstOrDefault(pitch => areasNm2[n] / ((double)pitch * pitch) <= share, s_pitchesNm[^1]);
            budget -= areasNm2[n] / ((double)pitches[n] * pitches[n]);
        }

        return pitches;
    }
}
