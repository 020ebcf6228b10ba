using CopperPath.Brief;
using CopperPath.Electrical;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>
/// Heating in time against closed forms: Carslaw and Jaeger, Conduction of Heat in Solids, 2nd edition (semi-infinite solid, rod with
/// loss from its surface), and Incropera and DeWitt, chapter 5 (lumped body); all from memory.
/// </summary>
public sealed class ExactTransientTests
{
    private const double CopperJPerM3K = 8960.0 * 385;
    private const double Alpha = 0.3 / (1850.0 * 1100);

    /// <summary>A plate of one temperature: q/h (1 - exp(-t / tau)) with tau = c t / h.</summary>
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.7)]
    [InlineData(3)]
    public void ALumpedPlateWarmsExponentially(double share)
    {
        const double Film = 20;
        double tauS = CopperJPerM3K * Plate.CopperM / Film;
        Run run = Start(Even().Heat(400), Plate.Films(Film, 0));

        run.To(share * tauS);

        Peak(run).ShouldBe(400 / Film * (1 - Math.Exp(-share)), 2e-3 * 400 / Film * (1 - Math.Exp(-share)));
    }

    /// <summary>No heat lost, a loss that grows with temperature: dT/dt = a (1 + b T), so T = (exp(a b t) - 1) / b.</summary>
    [Fact]
    public void WithoutLossCopperWarmsAdiabatically()
    {
        const double GrowthPerK = 0.00393;
        const double DensityWPerM2 = 2e4;
        Run run = Start(Even().Heat(DensityWPerM2, growthPerK: GrowthPerK), Plate.Films(1e-9, 1e-9));
        double perS = DensityWPerM2 / (CopperJPerM3K * Plate.CopperM);

        run.To(1);

        double exact = (Math.Exp(GrowthPerK * perS) - 1) / GrowthPerK;
        Peak(run).ShouldBe(exact, 2e-3 * exact);
    }

    /// <summary>
    /// A thin sheet that heats thick laminate below it: 2 q/k sqrt(a t / pi), on levels as close as a profile with that time would have
    /// them, at that time and a hundred times later.
    /// </summary>
    [Theory]
    [InlineData(0.01, 1)]
    [InlineData(0.01, 10)]
    [InlineData(0.01, 100)]
    [InlineData(1, 1)]
    public void ThickLaminateWarmsWithTheRootOfTime(double shortestS, double times)
    {
        Stackup stack = new([1e-9], [], 25e-6, 1.7e-8);
        const double ThickM = 20e-3;
        LevelSet levels = LevelSet.Of(stack, ThickM, [HeatOfProfile.LevelM(shortestS, ThermalMaterials.CopperOnFr4)], 1e-3, HeatOfProfile.DistanceShare);
        GridAxis side = GridAxis.Uniform(0, 1e-2, 1e-2 / 1);
        Plate plate = new(new HeatGrid(side, side, levels.In(stack, ThickM)), [CopperRaster.Full(side, side), .. new CopperRaster?[levels.Count - 1]]);
        Run run = Start(plate.Heat(1000), Plate.Films(1e-9, 1e-9));

        run.To(times * shortestS);

        double exact = 2 * 1000 / 0.3 * Math.Sqrt(Alpha * times * shortestS / Math.PI);
        Peak(run).ShouldBe(exact, 0.01 * exact);
    }

    /// <summary>
    /// A long strip with a film, held at its end from time 0: half of exp(-m x) erfc(x / 2 sqrt(a t) - m sqrt(a t)) plus the same with
    /// +m, as long as the far end is not reached.
    /// </summary>
    [Theory]
    [InlineData(0.2)]
    [InlineData(2)]
    [InlineData(20)]
    public void AFinStartsUp(double timeS)
    {
        const double Film = 50;
        GridAxis x = GridAxis.Uniform(0, 0.2, 0.2 / 800);
        GridAxis y = GridAxis.Uniform(0, 1e-3, 1e-3 / 1);
        Plate plate = Plate.Solid(x, y);
        Run run = Start(plate, Plate.Films(Film, 0), plate.Hold((at, _) => at < 0.25e-3, 50));

        run.To(timeS);

        double m = Math.Sqrt(Film / (385 * Plate.CopperM));
        double root = Math.Sqrt(385 / CopperJPerM3K * timeS);
        foreach (int cell in new[] { 10, 40, 100 })
        {
            // What is held fills its cell to the edge.
            double at = x.CentreM(cell) - x.WidthM(0);
            double exact = 25 * ((Math.Exp(-m * at) * Erfc((at / (2 * root)) - (m * root))) + (Math.Exp(m * at) * Erfc((at / (2 * root)) + (m * root))));
            run.Board.RiseK[plate.Grid.Node(cell, 0, 0)].ShouldBe(exact, 0.01 * Math.Max(exact, 1), $"cell {cell}");
        }
    }

    /// <summary>Radiation, still air and growing loss: after forty time constants nothing is left of the beginning.</summary>
    [Fact]
    public void TheEndIsTheSteadyState()
    {
        GridAxis x = GridAxis.Uniform(0, 0.05, 0.05 / 20);
        GridAxis y = GridAxis.Uniform(0, 0.02, 0.02 / 8);
        Plate plate = Plate.Solid(x, y).Heat(400, growthPerK: 0.00393);
        plate.Sources.JouleAtAmbientW[37] *= 30;
        Cooling cooling = new(298.15, BoardPosture.Horizontal, new FaceCooling(null, 0.9), new FaceCooling(null, 0.9));
        double[] steady = plate.Solve(cooling).RiseK;
        Run run = Start(plate, cooling);

        run.To(600);

        for (int n = 0; n < steady.Length; n++)
        {
            run.Board.RiseK[n].ShouldBe(steady[n], 1e-6 * steady.Max());
        }
    }

    /// <summary>
    /// On for a share D of each period T: at the end of the pulse q/h (1 - exp(-D T / tau)) / (1 - exp(-T / tau)), at its beginning that
    /// times exp(-(1 - D) T / tau), for periods far shorter and far longer than tau.
    /// </summary>
    [Theory]
    [InlineData(0.001)]
    [InlineData(0.1)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(20)]
    public void ADutyCycleSettlesToItsPeriod(double share)
    {
        const double Film = 20;
        const double Duty = 0.3;
        double tauS = CopperJPerM3K * Plate.CopperM / Film;
        double periodS = share * tauS;
        Plate plate = Even().Heat(400);
        double[] on = [.. plate.Sources.JouleAtAmbientW];
        bool isOn = true;
        Run run = Start(plate, Plate.Films(Film, 0), load: _ =>
        {
            for (int n = 0; n < on.Length; n++)
            {
                plate.Sources.JouleAtAmbientW[n] = isOn ? on[n] : 0;
            }
        });
        List<double> rises = [];
        LoadPiece[] period = [new LoadPiece(0, Duty * periodS, true), new LoadPiece(Duty * periodS, periodS, true)];

        run.Steps.FindPeriod(period, piece => isOn = piece.FromS == 0, () =>
        {
            rises.Clear();
            rises.Add(run.Board.RiseK[0]);
            return _ => rises.Add(run.Board.RiseK[0]);
        }).ShouldBeTrue();

        double peak = 400 / Film * (1 - Math.Exp(-Duty * share)) / (1 - Math.Exp(-share));
        double valley = peak * Math.Exp(-(1 - Duty) * share);
        rises.Max().ShouldBe(peak, 0.005 * peak);
        rises.Min().ShouldBe(valley, 0.005 * peak);
        (rises.Max() - rises.Min()).ShouldBe(peak - valley, 0.01 * (peak - valley) + 0.002 * peak);
    }

    private static double Peak(Run run) => run.Board.RiseK.Max();

    private static Plate Even() => Plate.Solid(GridAxis.Uniform(0, 0.01, 0.01 / 2), GridAxis.Uniform(0, 0.01, 0.01 / 2));

    private static Run Start(Plate plate, Cooling cooling, HeatSink? sink = null, Action<double>? load = null)
    {
        LaidBoard board = new(plate.Network, cooling, sink is null ? [] : [sink]);
        HeatInTime inTime = new(board, plate.Sources, HeatCapacity.Of(plate.Network), load ?? (_ => { }), new double[plate.Network.Cells.NodeCount]);
        return new Run(inTime, new TimeSteps([inTime]));
    }

    private sealed record Run(HeatInTime Board, TimeSteps Steps)
    {
        public void To(double timeS) => Steps.Through([new LoadPiece(0, timeS, true)], _ => { }, _ => { }).ShouldBeTrue();
    }

    /// <summary>By its series below 3 and its continued fraction above (Abramowitz and Stegun 7.1.5 and 7.1.14, from memory).</summary>
    private static double Erfc(double z)
    {
        if (z < 0)
        {
            return 2 - Erfc(-z);
        }

        if (z < 3)
        {
            double term = z;
            double sum = z;
            for (int k = 1; k < 100; k++)
            {
                term *= -z * z / k;
                sum += term / ((2 * k) + 1);
            }

            return 1 - (2 / Math.Sqrt(Math.PI) * sum);
        }

        double fraction = 0;
        for (int k = 60; k >= 1; k--)
        {
            fraction = k / 2.0 / (z + fraction);
        }

        return Math.Exp(-z * z) / Math.Sqrt(Math.PI) / (z + fraction);
    }
}
