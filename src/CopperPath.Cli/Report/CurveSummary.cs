using CopperPath.Capacity;
using CopperPath.Quantities;
using CopperPath.Thermal;

namespace CopperPath.Cli.Report;

/// <summary>Capacity curves as a table.</summary>
internal static class CurveSummary
{
    public static void Write(TextWriter writer, CurveReview review)
    {
        writer.WriteLine($"{Product.NameAndVersion}: capacity curves of {review.Brief!.Board.Name}");
        foreach (string line in Conditions(review.Trace!))
        {
            writer.WriteLine(line);
        }

        writer.WriteLine();
        TextTable table = new(
            ["Layer", "Rise", "Width", "This board", "IPC-2152-style fit", "IPC-2221"], [true, true, true, true, true, true]);
        foreach (BoardCurve curve in review.Curves)
        {
            foreach (BoardCurvePoint point in curve.Points)
            {
                table.Add([
                    FormattableString.Invariant($"{curve.Layer}"),
                    QuantityText.TemperatureDifference(curve.RiseK),
                    QuantityText.Length(point.WidthM),
                    point.BoardA is { } current ? QuantityText.Current(current) : "none",
                    Marked(point.ByFit),
                    Marked(point.ByIpc2221)]);
            }
        }

        table.Write(writer);
        writer.WriteLine("(*) outside the range of that relation. The fit is for an outer layer without planes in still air, the relation "
            + "for one conductor without planes.");
    }

    /// <summary>What the curves rest on.</summary>
    public static IReadOnlyList<string> Conditions(StraightTrace trace) =>
    [
        $"One straight trace, {QuantityText.Length(trace.LengthM)} long, alone on its layer of a board of {QuantityText.Length(trace.BoardLengthM)} by "
            + $"{QuantityText.Length(trace.BoardWidthM)}; the other layers with the copper they have on average "
            + $"({string.Join(", ", trace.CopperShares.Select(QuantityText.Percent))} from top to bottom).",
        $"Ambient {QuantityText.Temperature(trace.Cooling.AmbientK)}, {trace.Cooling.Posture.ToString().ToLowerInvariant()}, "
            + $"top {Face(trace.Cooling.Top)}, bottom {Face(trace.Cooling.Bottom)}; mean rise of the trace, which alone makes heat.",
    ];

    private static string Face(FaceCooling face) =>
        (face.FilmWPerM2K is { } film ? $"film {QuantityText.Film(film)}" : "in still air") + $", emissivity {QuantityText.Ratio(face.Emissivity)}";

    private static string Marked(CurrentEstimate estimate) =>
        QuantityText.Current(estimate.CurrentA) + (estimate.Basis.IsInRange ? "" : " (*)");
}
