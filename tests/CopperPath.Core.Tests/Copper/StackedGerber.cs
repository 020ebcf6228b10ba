using System.Globalization;
using System.Text;

namespace CopperPath.Core.Tests.Copper;

/// <summary>Gerber files of a few lines in which shapes lie on each other, or nearly: what hard use of the polygon engine looks like.</summary>
internal static class StackedGerber
{
    private const string End = "M02*\n";

    /// <summary>Round flashes, each moved by a step from the one before; metric, six decimals.</summary>
    public static string Flashes(int count, double diameterMm, long stepNm) =>
        Text($"%ADD10C,{Mm(diameterMm)}*%\nD10*\n", count, i => $"X{i * stepNm}Y0D03*\n");

    public static string Strokes(int count, double widthMm, long stepNm) =>
        Text($"%ADD10C,{Mm(widthMm)}*%\nD10*\nG01*\n", count, i => $"X{i * stepNm}Y0D02*\nX{7_000_000 + (i * stepNm)}Y3000000D01*\n");

    /// <summary>Quarter arcs round the origin, whose radius grows by a step.</summary>
    public static string Arcs(int count, double widthMm, long radiusNm, long stepNm) =>
        Text($"%ADD10C,{Mm(widthMm)}*%\nD10*\nG75*\n", count, i =>
            $"G01*\nX{radiusNm + (i * stepNm)}Y0D02*\nG03*\nX0Y{radiusNm + (i * stepNm)}I-{radiusNm + (i * stepNm)}J0D01*\n");

    /// <summary>Arcs of one radius whose starts lie a step apart.</summary>
    public static string ShiftedArcs(int count, double widthMm, long radiusNm, long stepNm) =>
        Text($"%ADD10C,{Mm(widthMm)}*%\nD10*\nG75*\n", count, i =>
            $"G01*\nX{radiusNm + (i * stepNm)}Y0D02*\nG03*\nX{i * stepNm}Y{radiusNm}I-{radiusNm}J0D01*\n");

    /// <summary>Regions, each a quadrilateral of which the same sides are oblique.</summary>
    public static string Regions(int count, long stepNm) => Text("G01*\n", count, i =>
        Region([(i * stepNm, 0), (5_000_000 + (i * stepNm), 1_000_000), (4_000_000 + (i * stepNm), 4_000_000), (i * stepNm, 3_000_000)]));

    /// <summary>Regions a step wide and some millimetres long, side by side or, without a step, on each other.</summary>
    public static string Slivers(int count, long widthNm, long stepNm) => Text("G01*\n", count, i =>
        Region([(i * stepNm, 0), (9_000_000 + (i * stepNm), 5_000_000), (9_000_000 + (i * stepNm) + widthNm, 5_000_000), ((i * stepNm) + widthNm, 0)]));

    /// <summary>One contour with corners anywhere in 20 mm by 20 mm.</summary>
    public static string RandomContour(int corners, int seed)
    {
        var random = new Random(seed);
        return Text("G01*\n", 1, _ => Region([.. Enumerable.Range(0, corners)
            .Select(_ => (random.NextInt64(20_000_000), random.NextInt64(20_000_000)))]));
    }

    public static string Text(string start, int count, Func<int, string> operation)
    {
        StringBuilder text = new("%FSLAX46Y46*%\n%MOMM*%\n%LPD*%\n" + start);
        for (int i = 0; i < count; i++)
        {
            text.Append(operation(i));
        }

        return text.Append(End).ToString();
    }

    public static string Region(IReadOnlyList<(long X, long Y)> corners)
    {
        StringBuilder text = new($"G36*\nX{corners[0].X}Y{corners[0].Y}D02*\n");
        foreach ((long x, long y) in corners.Skip(1).Append(corners[0]))
        {
            text.Append(CultureInfo.InvariantCulture, $"X{x}Y{y}D01*\n");
        }

        return text.Append("G37*\n").ToString();
    }

    private static string Mm(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
