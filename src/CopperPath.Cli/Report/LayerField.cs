using CopperPath.Cli.Overlays;
using CopperPath.Electrical;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>What was solved of one stretch on one layer, in the units it is shown in.</summary>
/// <param name="Stretch">Number of the stretch in the brief, from 0.</param>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="Density">Current density, A/mm²; not a number in contacts and plated holes.</param>
/// <param name="Rise">Temperature rise above ambient, kelvin; null where no temperatures were solved.</param>
internal sealed record LayerField(int Stretch, int Layer, ShadedSheet Density, ShadedSheet? Rise)
{
    private const double PerMm2 = 1e-6;

    /// <summary>All fields of a review, in the order of the brief.</summary>
    public static IReadOnlyList<LayerField> Of(Review review)
    {
        TemperatureField? heat = review.Heat is { Result.Status: ThermalStatus.Solved } solved ? solved : null;
        List<(int Stretch, SheetField Sheet)> sheets = [.. review.Nets.SelectMany((net, n) => net.Conduction.Sheets.Select(sheet => (n, sheet)))];
        return OnAllCores.Of(sheets, item => new LayerField(
            item.Stretch,
            item.Sheet.Layer,
            new ShadedSheet(item.Sheet.Mesh, DensityAPerMm2(item.Sheet, review.Stack!), FieldShading.PerCorner),
            heat is null ? null : new ShadedSheet(item.Sheet.Mesh, heat.AtVertices(item.Sheet), FieldShading.PerVertex)));
    }

    private static double[] DensityAPerMm2(SheetField sheet, Stackup stack)
    {
        double[] density = sheet.CornerDensityAPerM2(stack.ThicknessM[sheet.Layer - 1]);
        for (int corner = 0; corner < density.Length; corner++)
        {
            density[corner] *= PerMm2;
        }

        return density;
    }
}
