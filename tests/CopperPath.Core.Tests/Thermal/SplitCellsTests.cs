using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>Closed solutions on cells that are split here and there: one sheet of copper, 35 um, 385 W/mK.</summary>
public sealed class SplitCellsTests
{
    private const double SheetWPerK = 385 * Plate.CopperM;

    /// <summary>An even gradient in any direction is a solution of any pattern of cells: what all else is made of.</summary>
    [Theory]
    [InlineData(1, 0)]
    [InlineData(0, 1)]
    [InlineData(0.6, -0.8)]
    public void AnEvenGradientPassesAnyPattern(double alongX, double alongY)
    {
        CellTree tree = new(new CellBox(0, 0, 16e-3, 16e-3), 1e-3);
        Random random = new(7);
        for (int k = 0; k < 60; k++)
        {
            tree.Split(tree.LeafAt((3 + (10 * random.NextDouble())) * 1e-3, (3 + (10 * random.NextDouble())) * 1e-3));
        }

        tree.DeepestSplit.ShouldBeGreaterThan(1);
        Plate plate = Sheet(tree, out TreeCells cells, Square(16e-3));
        double[] exact = [.. Enumerable.Range(0, cells.Count).Select(column =>
            (1e3 * ((alongX * cells.BoxOf(column).CentreXM) + (alongY * cells.BoxOf(column).CentreYM))) + 20)];
        ThermalResult result = plate.Solve(Plate.Films(0, 0), [.. Enumerable.Range(0, cells.Count)
            .Where(column => cells.BoxOf(column) is var box && (box.WestM < 1e-9 || box.SouthM < 1e-9 || box.EastM > 16e-3 - 1e-9 || box.NorthM > 16e-3 - 1e-9))
            .Select(column => new HeatSink(new HeatSpot("edge", [(column, 1)]), exact[column], 0))]);

        for (int column = 0; column < cells.Count; column++)
        {
            result.RiseK[column].ShouldBe(exact[column], 1e-4);
        }
    }

    /// <summary>
    /// A strip of 0.4 mm opens in the middle of a side of one of 8 mm: L1/w1 + L2/w2 squares and, for a = w1/w2,
    /// [(a + 1/a) ln((1 + a)/(1 - a)) - 2 ln(4 a/(1 - a^2))] / (2 pi) for the spreading, 0.8309 (conformal mapping, as for a
    /// symmetric step of a strip line or of a current; from memory). The wide strip ends 1.5 widths on, where flow is even within 1e-4.
    /// </summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.037e-3, 0.023e-3)]
    public void ConstrictionBetweenStrips(double shiftXM, double shiftYM)
    {
        const double Narrow = 0.4e-3, Wide = 8e-3, NarrowLength = 1e-3, WideLength = 12e-3;
        const double Step = Narrow / Wide;
        double spreading = (((Step + (1 / Step)) * Math.Log((1 + Step) / (1 - Step))) - (2 * Math.Log(4 * Step / (1 - (Step * Step))))) / (2 * Math.PI);
        spreading.ShouldBe(0.83088, 1e-5);
        CellTree tree = new(new CellBox(-2e-3 - shiftXM, -4.5e-3 - shiftYM, 14e-3 - shiftXM, 4.5e-3 - shiftYM), 1e-3);
        SplitNear(tree, 0, 0, 0.06e-3);
        Plate plate = Sheet(tree, out TreeCells cells, new PolygonNm(Plate.Ring(
            (-NarrowLength, -Narrow / 2), (0, -Narrow / 2), (0, -Wide / 2), (WideLength, -Wide / 2), (WideLength, Wide / 2), (0, Wide / 2), (0, Narrow / 2), (-NarrowLength, Narrow / 2)), []));

        // 0.1 W spread over the first quarter of the narrow strip comes from its middle; the last cells of the wide one are held.
        HeatSpot from = new("from", AreaShares.Of(cells, [Plate.Ring((-1e-3, -0.2e-3), (-0.75e-3, -0.2e-3), (-0.75e-3, 0.2e-3), (-1e-3, 0.2e-3))]));
        plate.Sources.AddComponent(from, 0.1);
        int[] held = [.. Enumerable.Range(0, cells.Count).Where(column => cells.BoxOf(column) is var box && box.EastM > WideLength - 1e-9 && box.WestM < WideLength)];
        double heldFromM = held.Min(column => cells.BoxOf(column).CentreXM);
        ThermalResult result = plate.Solve(Plate.Films(0, 0), new HeatSink(new HeatSpot("to", [.. held.Select(column => (column, 1.0 / held.Length))]), 0, 0));

        // Between the end of the heated stretch and the mouth the flow is even: read 0.25 mm before the mouth.
        double squares = (0.25e-3 / Narrow) + spreading + (heldFromM / Wide);
        Read(plate, cells, result, -0.25e-3, 0).ShouldBe(0.1 * squares / SheetWPerK, 0.008 * 0.1 * squares / SheetWPerK);
    }

    /// <summary>
    /// 0.1 W spread over a disc of radius a on a wide sheet cooled by a film h: with m^2 = h / (k t), at its centre
    /// q/h (1 - m a K1(m a)), q the heat per area (modified Bessel functions, as for a circular fin; values computed
    /// with a general library from this formula; the rise 10 mm away is q/h m a I1(m a) K0(m r)).
    /// </summary>
    [Theory]
    [InlineData(0.25e-3, 56.7013, 9.0444)]
    [InlineData(0.5e-3, 48.5192, 9.0452)]
    [InlineData(1.5e-3, 35.5831, 9.0536)]
    public void DiscOfHeatOnACooledSheet(double radiusM, double centreK, double awayK)
    {
        CellTree tree = new(new CellBox(-100e-3, -100e-3, 100e-3, 100e-3), 4e-3);
        SplitNear(tree, 0, 0, 0.25 * radiusM);
        Plate plate = Sheet(tree, out TreeCells cells, new PolygonNm(Plate.Ring((-0.1, -0.1), (0.1, -0.1), (0.1, 0.1), (-0.1, 0.1)), []));
        plate.Sources.AddComponent(new HeatSpot("disc", AreaShares.Of(cells, [HoleOutline.Circle(new PointNm(0, 0), radiusM * 1e9, 96)])), 1);
        ThermalResult result = plate.Solve(Plate.Films(30, 20));

        Read(plate, cells, result, 0, 0).ShouldBe(centreK, 0.012 * centreK);
        Read(plate, cells, result, 6e-3, 8e-3).ShouldBe(awayK, 0.008 * awayK);
    }

    private static PolygonNm Square(double sideM) => new(Plate.Ring((0, 0), (sideM, 0), (sideM, sideM), (0, sideM)), []);

    /// <summary>Splits cells that are wider than a third of their distance from a point, down to a width.</summary>
    private static void SplitNear(CellTree tree, double xM, double yM, double narrowestM)
    {
        for (bool isSplit = true; isSplit;)
        {
            isSplit = false;
            foreach (int leaf in tree.Leaves())
            {
                CellBox box = tree.BoxOf(leaf);
                double awayM = Math.Max(
                    Math.Max(box.WestM - xM, xM - box.EastM), Math.Max(box.SouthM - yM, yM - box.NorthM));
                if (tree.IsLeaf(leaf) && box.WidthM > Math.Max(narrowestM, awayM / 3))
                {
                    tree.Split(leaf);
                    isSplit = true;
                }
            }
        }
    }

    private static Plate Sheet(CellTree tree, out TreeCells cells, PolygonNm copper)
    {
        HeatPlane[] planes = [new HeatPlane(1, Plate.CopperM, 0, 0)];
        cells = new TreeCells(tree, planes);
        CellCover cover = CellCover.Of(cells, [[copper]]);
        return new Plate(new HeatNetwork(cells, planes, cover, [null, cover], Plate.Materials));
    }

    private static double Read(Plate plate, TreeCells cells, ThermalResult result, double xM, double yM) =>
        new TemperatureField(plate.Network, result).RiseK(1, xM, yM);
}
