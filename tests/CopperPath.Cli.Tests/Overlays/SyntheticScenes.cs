using CopperPath.Cli.Overlays;
using CopperPath.Geometry;
using CopperPath.Meshing;
using CopperPath.Quantities;

namespace CopperPath.Cli.Tests.Overlays;

/// <summary>Invented boards with invented fields: they look like a converter's copper and stand for no real one.</summary>
internal static class SyntheticScenes
{
    private const long Mm = Units.NmPerMm;

    /// <summary>An L of copper, 60 mm by 40 mm, whose field crowds at the inner corner, on a board 70 mm by 50 mm.</summary>
    public static OverlayScene LShape(
        int cellsPerMm = 4, int widthPx = 1600, OverlayTheme theme = OverlayTheme.Light, bool seenFromBelow = false)
    {
        PolygonNm copper = Polygon((5, 5), (65, 5), (65, 23), (25, 23), (25, 45), (5, 45));
        SheetMesh mesh = GridMesh(5, 5, 60, 40, cellsPerMm, (x, y) => x < 25 || y < 23);
        double[] density = FieldOver(mesh, CornerCrowding);
        return new(
            new TitleBlock(
                "Sample converter", "B", "L2, inner copper", "Output rail +1V0",
                ["100 A out at 12 V in", "ambient 45 °C", "copper 34.8 µm at 85 °C", "4 phases sharing evenly"],
                "copperpath 0.1.0", "sha256 3f0c9a5e77d1b2846a0e5c1f94b7d3a2e8615f70c9ab4d2e1f3a5b6c7d8e9f01"),
            new BoxNm(0, 0, 70 * Mm, 50 * Mm),
            [Polygon((0, 0), (70, 0), (70, 50), (0, 50))],
            [
                Polygon((28, 26), (66, 26), (66, 46), (28, 46)),
                Polygon((1, 1), (68, 1), (68, 3), (1, 3)),
                Polygon((1, 4), (3, 4), (3, 47), (1, 47)),
            ],
            [copper],
            [new ShadedSheet(mesh, density)],
            Vias(),
            [],
            new ScaleSpec("Current density", "A/mm²", ScaleKind.Linear),
            seenFromBelow,
            theme,
            widthPx);
    }

    /// <summary>The same copper warm at its corner, with values at the vertices.</summary>
    public static OverlayScene Temperature()
    {
        OverlayScene scene = LShape();
        SheetMesh mesh = scene.Sheets[0].Mesh;
        double[] celsius = new double[mesh.VertexCount];
        for (int v = 0; v < celsius.Length; v++)
        {
            double r = Math.Sqrt(Square((mesh.XM[v] * 1e3) - 25) + Square((mesh.YM[v] * 1e3) - 20));
            celsius[v] = 52 + (41 * Math.Exp(-r / 14)) + (4 * Math.Sin(mesh.XM[v] * 300));
        }

        return scene with
        {
            Sheets = [new ShadedSheet(mesh, celsius, FieldShading.PerVertex)],
            Scale = new ScaleSpec("Temperature", "°C", ScaleKind.Linear),
            Levels = LevelField.Sample(new BoxNm(0, 0, 70 * Mm, 50 * Mm), 0.25 * Mm, 1, (xNm, yNm) =>
                52 + (41 * Math.Exp(-Math.Sqrt(Square((xNm / Mm) - 25) + Square((yNm / Mm) - 20)) / 14))),
        };
    }

    /// <summary>The same copper with values only where x is below 40 mm.</summary>
    public static OverlayScene PartlySolved()
    {
        OverlayScene scene = LShape();
        SheetMesh mesh = scene.Sheets[0].Mesh;
        double[] values = FieldOver(mesh, (x, y) => x < 40 ? CornerCrowding(x, y) : double.NaN);
        return scene with { Sheets = [new ShadedSheet(mesh, values)] };
    }

    /// <summary>Call-outs spread over the board and in tight clusters, with texts from short to very long.</summary>
    public static IReadOnlyList<CallOut> CallOuts(int count)
    {
        string[] texts =
        [
            "Neck 1.2 mm wide carries 18.4 A, 21 % over its limit of 15.2 A at 20 K rise",
            "Via field of 12: the worst via carries 2.9 A, 3.4 times its even share",
            "Fill narrows to 0.35 mm between two holes",
            "Drop from inductor to load 11.2 mV, of 15 mV allowed",
            "Inner corner: density 62 A/mm² falls to 40 A/mm² within 0.4 mm; a peak at a sharp corner grows with a finer "
                + "mesh, so the judged figure is the mean over the neck and not this peak",
            "Antipad row leaves 41 % of the width",
        ];
        List<CallOut> callOuts = [];
        for (int i = 0; i < count; i++)
        {
            // Every third one sits in a cluster at the inner corner, the others step over the board.
            double x = i % 3 == 0 ? 25 + (1.1 * (i % 7)) - 3 : 6 + (i * 17.3 % 58);
            double y = i % 3 == 0 ? 23 - (0.9 * (i % 5)) + 1 : 6 + (i * 11.9 % (x < 25 ? 38 : 16));
            callOuts.Add(new(i + 1, At(x, y), (CallOutRank)((i + 2) % 3), texts[i % texts.Length]));
        }

        return callOuts;
    }

    public static PointNm At(double xMm, double yMm) => new((long)(xMm * Mm), (long)(yMm * Mm));

    public static PolygonNm Polygon(params (double XMm, double YMm)[] corners) =>
        new([.. corners.Select(c => At(c.XMm, c.YMm))], []);

    /// <summary>A regular grid of right triangles over the cells whose centres are inside.</summary>
    public static SheetMesh GridMesh(
        double leftMm, double bottomMm, int widthMm, int heightMm, int cellsPerMm, Func<double, double, bool> isInside)
    {
        int columns = widthMm * cellsPerMm;
        int rows = heightMm * cellsPerMm;
        double stepMm = 1.0 / cellsPerMm;
        double[] xM = new double[(columns + 1) * (rows + 1)];
        double[] yM = new double[xM.Length];
        List<int> triangles = [];
        for (int row = 0; row <= rows; row++)
        {
            for (int column = 0; column <= columns; column++)
            {
                int v = (row * (columns + 1)) + column;
                xM[v] = (leftMm + (column * stepMm)) * 1e-3;
                yM[v] = (bottomMm + (row * stepMm)) * 1e-3;
                if (row < rows && column < columns
                    && isInside(leftMm + ((column + 0.5) * stepMm), bottomMm + ((row + 0.5) * stepMm)))
                {
                    int up = v + columns + 1;
                    triangles.AddRange([v, v + 1, up + 1, v, up + 1, up]);
                }
            }
        }

        return new(xM, yM, [.. triangles], new int[triangles.Count / 3], new bool[xM.Length], 45);
    }

    /// <summary>A field evaluated at the triangles' centres, millimetres in.</summary>
    public static double[] FieldOver(SheetMesh mesh, Func<double, double, double> field)
    {
        double[] values = new double[mesh.TriangleCount];
        for (int t = 0; t < values.Length; t++)
        {
            ReadOnlySpan<int> v = mesh.Triangles.AsSpan(3 * t, 3);
            values[t] = field(
                (mesh.XM[v[0]] + mesh.XM[v[1]] + mesh.XM[v[2]]) * 1e3 / 3,
                (mesh.YM[v[0]] + mesh.YM[v[1]] + mesh.YM[v[2]]) * 1e3 / 3);
        }

        return values;
    }

    /// <summary>Grows as r^(-1/3) towards a right-angled inner corner, as current density does there.</summary>
    public static double CornerCrowding(double xMm, double yMm)
    {
        double r = Math.Max(0.15, Math.Sqrt(((xMm - 25) * (xMm - 25)) + ((yMm - 23) * (yMm - 23))));
        double fade = 1 / (1 + Math.Exp((xMm - 60) / 2)) / (1 + Math.Exp((yMm - 42) / 1.5));
        return 30 * Math.Pow(r, -1.0 / 3) * (0.25 + (0.75 * fade));
    }

    private static double Square(double value) => value * value;

    private static List<ViaMark> Vias()
    {
        List<ViaMark> vias = [];
        for (int row = 0; row < 6; row++)
        {
            for (int column = 0; column < 5; column++)
            {
                double currentA = 0.4 + (2.6 * Math.Exp(-0.35 * (row + column)));
                vias.Add(new(At(56 + (1.6 * column), 8 + (2 * row)), currentA, currentA > 2));
            }
        }

        return vias;
    }
}
