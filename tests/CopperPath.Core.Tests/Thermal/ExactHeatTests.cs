using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// Closed solutions of steady conduction with films (Incropera and DeWitt, chapter 3: fins, circular fins, plane walls;
/// recomputed here from the formulas). Copper 35 um, 385 W/mK.
/// </summary>
public sealed class ExactHeatTests
{
    private const double K = 385;
    private const double T = Plate.CopperM;
    private const double Film = 10;

    /// <summary>Fin with an insulated tip: resistance 1 / (m k t w tanh mL), tip over base 1 / cosh mL.</summary>
    [Theory]
    [InlineData(Film, 0, 310.668, 0.480715)]
    [InlineData(Film, Film, 0, 0)]
    public void FinWithInsulatedTip(double topFilm, double bottomFilm, double quotedResistance, double quotedTip)
    {
        double m = Math.Sqrt((topFilm + bottomFilm) / (K * T));
        double resistance = 1 / (m * K * T * 0.01 * Math.Tanh(m * 0.05));
        double tip = 1 / Math.Cosh(m * 0.05);
        if (quotedResistance > 0)
        {
            resistance.ShouldBe(quotedResistance, quotedResistance * 1e-5);
            tip.ShouldBe(quotedTip, quotedTip * 1e-5);
        }

        (double solvedResistance, double solvedTip) = SolveFin(topFilm, bottomFilm, 0.5e-3);

        solvedResistance.ShouldBe(resistance, resistance * 1e-3);
        solvedTip.ShouldBe(tip, tip * 1e-3);
    }

    /// <summary>Cells half as wide leave a quarter of the error: the order is two.</summary>
    [Fact]
    public void ErrorFallsWithTheSquareOfTheCell()
    {
        double m = Math.Sqrt(Film / (K * T));
        double conductance = m * K * T * 0.01 * Math.Tanh(m * 0.05);
        double[] errors = [.. new[] { 5e-3, 2.5e-3, 1.25e-3 }.Select(cell => Math.Abs(SolvedConductance(cell) - conductance))];

        (errors[0] / errors[1]).ShouldBe(4, 0.2);
        (errors[1] / errors[2]).ShouldBe(4, 0.2);

        // One cell before the fin holds its base; its own face gives heat away that is not the fin's.
        static double SolvedConductance(double cellM)
        {
            Plate plate = Plate.Solid(GridAxis.Uniform(-cellM, 0.05, cellM), GridAxis.Uniform(0, 0.01, 0.01));
            return plate.Solve(Plate.Films(Film, 0), plate.Hold((at, _) => at < 0, 1)).Balance.FedW - (Film * cellM * 0.01);
        }
    }

    /// <summary>Strip 10 mm x 35 um with 10 A and resistivity held: 492.60 W/m2 over the film, or parabola and cosh between sunk ends.</summary>
    [Theory]
    [InlineData(10, 0, false, 49.26)]
    [InlineData(10, 10, false, 24.63)]
    [InlineData(10, 0, true, 9.56667)]
    [InlineData(0, 0, true, 11.42393)]
    public void JouleStrip(double topFilm, double bottomFilm, bool sunkEnds, double quotedK)
    {
        const double Heat = 100 * 1.7241e-8 / T / (0.01 * 0.01);
        const double Half = 0.025;
        double film = topFilm + bottomFilm;
        double exact = !sunkEnds ? Heat / film
            : film == 0 ? Heat * Half * Half / (2 * K * T)
            : Heat / film * (1 - (1 / Math.Cosh(Math.Sqrt(film / (K * T)) * Half)));
        exact.ShouldBe(quotedK, quotedK * 1e-4);

        // An odd number of cells, so that one has its centre in the middle; slivers at the ends hold the sinks.
        GridAxis x = sunkEnds ? EndedAxis(Half) : GridAxis.Uniform(-Half, Half, 0.5e-3);
        Plate plate = Plate.Solid(x, GridAxis.Uniform(0, 0.01, 5e-3)).Heat(Heat);
        HeatSink[] sinks = sunkEnds ? [plate.Hold((at, _) => Math.Abs(at) > Half, 0)] : [];
        ThermalResult result = plate.Solve(Plate.Films(topFilm, bottomFilm), sinks);

        result.RiseK.Max().ShouldBe(exact, exact * 5e-3);
    }

    /// <summary>
    /// Circular fin, both faces cooled, base at r1 = 5 mm, insulated at r2: modified Bessel functions, values computed
    /// with arbitrary precision elsewhere; 200 mm stand for a fin without end, which they are to 1e-6.
    /// </summary>
    [Theory]
    [InlineData(25, 37.7191)]
    [InlineData(50, 23.3974)]
    [InlineData(200, 22.0574)]
    public void CircularFin(double outerMm, double resistance)
    {
        double half = (outerMm * 1e-3) + 0.5e-3;
        GridAxis axis = GridAxis.Graded(-half, half, -7e-3, 7e-3, 0.2e-3, 1.1, 1e-3);
        PointNm[] disc = HoleOutline.Circle(new PointNm(0, 0), outerMm * 1e6, 360);
        CopperRaster raster = CopperRaster.OfRings([disc], axis, axis);
        HeatGrid grid = new(axis, axis, [new HeatPlane(1, T, 0, 0)]);
        Plate plate = new(new HeatNetwork(grid, raster, [raster], Plate.Materials));
        ThermalResult result = plate.Solve(Plate.Films(Film, Film), plate.Hold((x, y) => (x * x) + (y * y) < 25e-6, 1));

        // The held disc gives heat away by its own faces, which is not the fin's.
        (1 / (result.Balance.FedW - (2 * Film * Math.PI * 25e-6))).ShouldBe(resistance, resistance * 5e-3);
    }

    /// <summary>Plane wall: d / (k A). 1 cm2 of FR-4, 0.3 W/mK: 0.1 mm 3.3333, 0.2 mm 6.6667, 1.6 mm 53.333 K/W.</summary>
    [Theory]
    [InlineData(0.1, 3.3333)]
    [InlineData(0.2, 6.6667)]
    [InlineData(1.6, 53.333)]
    public void StackThroughLaminate(double thicknessMm, double resistance)
    {
        GridAxis axis = GridAxis.Uniform(0, 0.01, 1e-3);
        Stackup stack = new([T, T], [thicknessMm * 1e-3], 25e-6, 1.7241e-8);
        HeatGrid grid = new(axis, axis, HeatPlane.Of(stack, 0, 0.3e-3));
        CopperRaster full = CopperRaster.Full(axis, axis);
        Plate plate = new Plate(grid, [full, .. new CopperRaster?[grid.Planes.Count - 2], full]).Heat(1e4);
        ThermalResult result = plate.Solve(Plate.Films(0, 0), plate.Hold((_, _) => true, 0, grid.Planes.Count - 1));

        result.RiseK.Max().ShouldBe(resistance, resistance * 1e-4);
    }

    /// <summary>Four solid layers in 1.6 mm conduct sideways like 34.4175 W/mK over the whole thickness.</summary>
    [Fact]
    public void LayersAndLaminateConductSidewaysInParallel()
    {
        GridAxis x = GridAxis.Uniform(0, 0.02, 1e-3);
        GridAxis y = GridAxis.Uniform(0, 0.01, 2e-3);
        double gap = (1.6e-3 - (4 * T)) / 3;
        HeatGrid grid = new(x, y, HeatPlane.Of(new Stackup([T, T, T, T], [gap, gap, gap], 25e-6, 1.7241e-8), 0, 1e-3));
        CopperRaster full = CopperRaster.Full(x, y);
        Plate plate = new(grid, full, full, full, full);
        HeatSink[] ends = [.. Enumerable.Range(0, 4).SelectMany(p => new[] { plate.Hold((at, _) => at < 1e-3, 1, p), plate.Hold((at, _) => at > 19e-3, 0, p) })];
        ThermalResult result = plate.Solve(Plate.Films(0, 0), ends);

        // Between the inner edges of the end cells lie 18 mm.
        double flowW = 34.4175 * 1.6e-3 * 0.01 / 0.018;
        result.Balance.FedW.ShouldBe(flowW, flowW * 1e-4);
    }

    /// <summary>Resistance of a strip L / (k t w), whatever its direction, though it is narrower than half a cell.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(45)]
    [InlineData(70)]
    public void StripNarrowerThanACellKeepsItsResistance(double degrees)
    {
        const double Length = 20e-3;
        const double Width = 0.2e-3;
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        (double X, double Y) At(double along, double across) => ((along * cos) - (across * sin), (along * sin) + (across * cos));
        GridAxis x = GridAxis.Uniform(-1.13e-3, 23.1e-3, 0.5e-3);
        GridAxis y = GridAxis.Uniform(-1.27e-3, 23.1e-3, 0.5e-3);
        CopperRaster raster = CopperRaster.OfRings(
            [Plate.Ring(At(0, -Width / 2), At(Length, -Width / 2), At(Length, Width / 2), At(0, Width / 2))], x, y);
        HeatGrid grid = new(x, y, [new HeatPlane(1, T, 0, 0)]);
        Plate plate = new(grid, raster);
        (double fromX, double fromY) = At(1e-3, 0);
        (double toX, double toY) = At(19e-3, 0);
        int from = grid.Node(x.CellAt(fromX), y.CellAt(fromY), 0);
        int to = grid.Node(x.CellAt(toX), y.CellAt(toY), 0);
        ThermalResult result = plate.Solve(Plate.Films(0, 0),
            new HeatSink(new HeatSpot("from", [(from, 1)]), 1, 0), new HeatSink(new HeatSpot("to", [(to, 1)]), 0, 0));

        // The path between the two cells' centres, projected on the strip.
        double dx = x.CentreM(x.CellAt(toX)) - x.CentreM(x.CellAt(fromX));
        double dy = y.CentreM(y.CellAt(toY)) - y.CentreM(y.CellAt(fromY));
        double conductance = K * T * Width / ((dx * cos) + (dy * sin));
        result.Balance.FedW.ShouldBe(conductance, conductance * 0.05);
    }

    [Fact]
    public void CopperPartedByAGapOnAGridLineIsNotJoined()
    {
        GridAxis x = GridAxis.Uniform(0, 4e-3, 1e-3);
        GridAxis y = GridAxis.Uniform(0, 1e-3, 1e-3);
        CopperRaster raster = CopperRaster.OfRings(
            [Plate.Ring((0, 0), (1.9e-3, 0), (1.9e-3, 1e-3), (0, 1e-3)), Plate.Ring((2.1e-3, 0), (4e-3, 0), (4e-3, 1e-3), (2.1e-3, 1e-3))], x, y);

        raster.AcrossXM(1, 0).ShouldBe(1e-3, 1e-12);
        raster.AcrossXM(2, 0).ShouldBe(0);
        raster.Share(1, 0).ShouldBe(0.9, 1e-9);
    }

    private static (double ResistanceKPerW, double Tip) SolveFin(double topFilm, double bottomFilm, double cellM)
    {
        // A sliver before the fin holds its base at 1 K.
        GridAxis x = GridAxis.Graded(-1e-6, 0.05, -1e-6, 0, 1e-6, 2, cellM);
        Plate plate = Plate.Solid(x, GridAxis.Uniform(0, 0.01, 0.01));
        ThermalResult result = plate.Solve(Plate.Films(topFilm, bottomFilm), plate.Hold((at, _) => at < 0, 1));
        return (1 / result.Balance.FedW, result.RiseK[^1]);
    }

    private static GridAxis EndedAxis(double halfM)
    {
        return GridAxis.Graded(-halfM - 1e-6, halfM + 1e-6, -halfM, halfM, 2 * halfM / 101, 1.0001, 1e-6);
    }
}
