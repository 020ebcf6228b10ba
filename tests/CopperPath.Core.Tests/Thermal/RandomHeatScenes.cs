using System.Globalization;
using System.Text;
using CopperPath.Core.Tests.Gallery;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// Boards drawn at random for the heat solve, each the same for the same number: two pours on the first layer, or one on the first and
/// one on the last, joined by a neck, by a longer trace or by holes, at any angle; planes, some of them pierced; hot parts; films or
/// still air.
/// </summary>
internal static class RandomHeatScenes
{
    private const double ResistanceOfSquareOhm = 1.7241e-8 / 35e-6;

    /// <summary>Resistance of a hole of 0.3 mm and 1 mm, about, ohms.</summary>
    private const double ResistanceOfHoleOhm = 0.7e-3;

    public static Review Solve(int number)
    {
        Random random = new(number);
        int layers = Of(2, 2, 4, 4, 6);
        double dielectricMm = layers == 2 ? Of(0.2, 1.0, 1.5) : Between(0.1, 0.4);
        (double halfMm, double otherHalfMm) = (random.Next(10, 31), random.Next(8, 23));
        using SyntheticBoard board = new(layers);
        double angle = random.Next(2) == 0 ? 0 : random.NextDouble() * Math.PI;
        (double cosine, double sine) = (Math.Cos(angle), Math.Sin(angle));
        double reachMm = Math.Min(halfMm, otherHalfMm) - 1;
        bool isByHoles = random.Next(3) == 0;
        double lengthMm = isByHoles ? 0 : Between(0.3, 0.6 * reachMm);
        double widthMm = Between(0.15, 1.2);
        double offMm = (random.NextDouble() - 0.5) * 0.6 * reachMm;
        double filmWPerM2K = Between(8, 60);
        double heatW = Math.Min(0.5, Between(3, 20) * 8e-6 * halfMm * otherHalfMm * Math.Min(10, filmWPerM2K));
        int holes = isByHoles ? random.Next(1, 5) : 0;
        int last = isByHoles ? layers : 1;

        // Along the path: a pour, the neck, a pour; the square they lie in turns within the board.
        double sideMm = reachMm / Math.Sqrt(2);
        Bar(1, -sideMm, -sideMm, isByHoles ? 0.6 : -lengthMm / 2, sideMm);
        Bar(last, isByHoles ? -0.6 : lengthMm / 2, -sideMm, sideMm, sideMm);
        if (!isByHoles)
        {
            Bar(1, (-lengthMm / 2) - 0.1, offMm - (widthMm / 2), (lengthMm / 2) + 0.1, offMm + (widthMm / 2));
        }

        for (int layer = 2; layer <= layers; layer++)
        {
            if (layer == last)
            {
                continue;
            }

            board.Rectangle(layer, -halfMm + (0.1 * layer), -otherHalfMm, halfMm, random.Next(3) == 0 ? otherHalfMm / (1.5 + (0.1 * layer)) : otherHalfMm);
            for (int hole = 0; hole < holes; hole++)
            {
                (double x, double y) = Turned(0, HoleYMm(hole));
                board.Draw(layer, $"%LPC*%\n%ADD50C,0.9*%\nD50*\n{SyntheticBoard.At(x, y)}D03*\n%LPD*%");
            }
        }

        for (int hole = 0; hole < holes; hole++)
        {
            (double x, double y) = Turned(0, HoleYMm(hole));
            board.PlatedSlot(x, y, x, y, 0.3);
        }

        // The corners of the first layer beyond the square are free for parts.
        StringBuilder losses = new();
        if (random.Next(2) == 0)
        {
            double padMm = Between(0.6, 2.5);
            double wattsW = heatW * (0.2 + random.NextDouble());
            (double x, double y) = (halfMm - padMm - 0.5, otherHalfMm - padMm - 0.5);
            if (Math.Sqrt((x * x) + (y * y)) > (sideMm * Math.Sqrt(2)) + 0.2)
            {
                board.Rectangle(1, x, y, x + padMm, y + padMm);
                losses.Append(CultureInfo.InvariantCulture,
                    $", losses: {{ name: U1, rectangle: {{ layer: 1, from: [{x} mm, {y} mm], to: [{x + padMm} mm, {y + padMm} mm] }}, power: {wattsW} W }}");
            }
        }

        // Frame the board, whatever its copper.
        board.Rectangle(layers, -halfMm, -otherHalfMm, -halfMm + 0.3, -otherHalfMm + 0.3).Rectangle(layers, halfMm - 0.3, otherHalfMm - 0.3, halfMm, otherHalfMm).SpareHole(-halfMm + 0.6, otherHalfMm - 0.6);

        double ohm = isByHoles ? ResistanceOfHoleOhm * 1.5 * (layers - 1) * dielectricMm / holes : ResistanceOfSquareOhm * ((lengthMm / widthMm) + 2);
        double currentA = Math.Sqrt(heatW / ohm);
        string films = random.Next(3) == 0 ? "top: { emissivity: 0.9 }, bottom: { emissivity: 0.9 }"
            : string.Create(CultureInfo.InvariantCulture, $"top: {{ film: {filmWPerM2K} W/m2K, emissivity: 0 }}, bottom: {{ film: {filmWPerM2K} W/m2K, emissivity: 0 }}");
        (double fromX, double fromY) = Turned(-0.8 * sideMm, 0);
        (double toX, double toY) = Turned(0.8 * sideMm, 0);
        string brief = board.WriteBrief(string.Create(CultureInfo.InvariantCulture, $$"""
              - name: Path
                at: { layer: 1, x: {{fromX}} mm, y: {{fromY}} mm }
                terminals:
                  - { name: in, circle: { layer: 1, x: {{fromX}} mm, y: {{fromY}} mm, diameter: 1.2 mm }, enters: {{currentA}} A }
                  - { name: out, circle: { layer: {{last}}, x: {{toX}} mm, y: {{toY}} mm, diameter: 1.2 mm }, leaves: {{currentA}} A }
            thermal: { {{films}}{{losses}}, cell: 4 mm }

            """));
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("1.5 mm", string.Create(CultureInfo.InvariantCulture, $"{dielectricMm} mm"), StringComparison.Ordinal));
        Review review = Analysis.Check(brief);
        review.Diagnostics.Where(diagnostic => diagnostic.Severity == CopperPath.Diagnostics.Severity.Error).Select(diagnostic => diagnostic.ToString()).ShouldBeEmpty();
        return review;

        double HoleYMm(int hole) => offMm + ((hole - ((holes - 1) / 2.0)) * 0.8);

        (double X, double Y) Turned(double x, double y) => ((cosine * x) - (sine * y), (sine * x) + (cosine * y));

        void Bar(int layer, double x0, double y0, double x1, double y1) =>
            board.Region(layer, Turned(x0, y0), Turned(x1, y0), Turned(x1, y1), Turned(x0, y1));

        T Of<T>(params T[] choices) => choices[random.Next(choices.Length)];

        double Between(double least, double most) => least * Math.Pow(most / least, random.NextDouble());
    }
}
