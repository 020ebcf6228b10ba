using CopperPath.Brief;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>Films, radiation, and what they do with a copper loss that grows with temperature.</summary>
public sealed class SurfaceTests
{
    /// <summary>
    /// Board 100 x 100 mm in air of 25 degC, natural convection: Churchill and Chu, McAdams (Incropera and DeWitt,
    /// chapter 9; from memory). Air by handbook fits, so 2 %.
    /// </summary>
    [Theory]
    [InlineData(45, 5.142, 7.369, 3.685)]
    [InlineData(65, 6.030, 8.686, 4.343)]
    [InlineData(85, 6.600, 9.529, 4.764)]
    public void FilmsOfABoardInStillAir(double surfaceC, double vertical, double up, double down)
    {
        const double AirK = 298.15;
        double rise = surfaceC - 25;
        NaturalConvection.FilmWPerM2K(FacePosture.Vertical, rise, AirK, 0.1).ShouldBe(vertical, vertical * 0.02);
        NaturalConvection.FilmWPerM2K(FacePosture.Up, rise, AirK, 0.025).ShouldBe(up, up * 0.02);
        NaturalConvection.FilmWPerM2K(FacePosture.Down, rise, AirK, 0.025).ShouldBe(down, down * 0.02);
    }

    /// <summary>Air at 300 K and 350 K: Incropera and DeWitt, table A.4 (from memory; it is for 1 bar, 1.3 % below the pressure here).</summary>
    [Theory]
    [InlineData(300, 0.0263, 15.89e-6, 0.707)]
    [InlineData(350, 0.0300, 20.92e-6, 0.700)]
    public void AirIsThatOfTheHandbook(double temperatureK, double conductivity, double viscosity, double prandtl)
    {
        Air air = Air.At(temperatureK);
        air.ConductivityWPerMK.ShouldBe(conductivity, conductivity * 0.01);
        air.KinematicViscosityM2PerS.ShouldBe(viscosity, viscosity * 0.02);
        air.Prandtl.ShouldBe(prandtl, prandtl * 0.015);
    }

    /// <summary>
    /// A plate of one temperature whose heat is chosen for 60 K: convection by the correlations above and radiation by
    /// Stefan and Boltzmann must add to it, and the solve must find the 60 K again.
    /// </summary>
    [Theory]
    [InlineData(BoardPosture.Horizontal)]
    [InlineData(BoardPosture.Vertical)]
    public void PlateOfOneTemperatureBalancesConvectionAndRadiation(BoardPosture posture)
    {
        const double AmbientK = 298.15;
        const double Rise = 60;
        bool upright = posture == BoardPosture.Vertical;
        double films = upright ? 2 * NaturalConvection.FilmWPerM2K(FacePosture.Vertical, Rise, AmbientK, 0.1)
            : NaturalConvection.FilmWPerM2K(FacePosture.Up, Rise, AmbientK, 0.025)
                + NaturalConvection.FilmWPerM2K(FacePosture.Down, Rise, AmbientK, 0.025);
        double radiated = 2 * 0.9 * 5.670374419e-8 * (Math.Pow(AmbientK + Rise, 4) - Math.Pow(AmbientK, 4));
        GridAxis axis = GridAxis.Uniform(0, 0.1, 5e-3);

        // At 60 K of rise the loss has grown by 0.004 per kelvin.
        Plate plate = Plate.Solid(axis, axis).Heat(((films * Rise) + radiated) / (1 + (0.004 * Rise)), growthPerK: 0.004);
        ThermalResult result = plate.Solve(new Cooling(AmbientK, posture, new FaceCooling(null, 0.9), new FaceCooling(null, 0.9)));

        result.RiseK.Min().ShouldBe(Rise, 1e-5);
        result.RiseK.Max().ShouldBe(Rise, 1e-5);
    }

    /// <summary>Stefan and Boltzmann's law per kelvin of rise, emissivity 0.9, surroundings of 25 degC; values worked out elsewhere.</summary>
    [Theory]
    [InlineData(45, 5.979)]
    [InlineData(65, 6.600)]
    [InlineData(85, 7.274)]
    public void RadiationOfAFace(double surfaceC, double perKelvinWPerM2K)
    {
        double rise = surfaceC - 25;
        GridAxis axis = GridAxis.Uniform(0, 0.1, 10e-3);
        Plate plate = Plate.Solid(axis, axis).Heat(perKelvinWPerM2K * rise);
        ThermalResult result = plate.Solve(
            new Cooling(298.15, BoardPosture.Horizontal, new FaceCooling(0, 0.9), new FaceCooling(0, 0)));

        result.RiseK.Max().ShouldBe(rise, rise * 1e-3);
    }

    /// <summary>With a film h and a loss q (1 + a rise) the rise is q / (h - a q): there is none from a q = h on.</summary>
    [Theory]
    [InlineData(0.5, ThermalStatus.Solved)]
    [InlineData(0.9, ThermalStatus.TooHot)]
    [InlineData(1.01, ThermalStatus.Runaway)]
    [InlineData(3, ThermalStatus.Runaway)]
    public void RunawayIsNamed(double share, ThermalStatus expected)
    {
        const double Film = 10;
        const double Growth = 0.004;
        double heat = share * Film / Growth;
        GridAxis axis = GridAxis.Uniform(0, 0.05, 5e-3);
        Plate plate = Plate.Solid(axis, axis).Heat(heat, growthPerK: Growth);
        ThermalResult result = ThermalSolver.Solve(plate.Network, plate.Sources, Plate.Films(Film, 0), []);

        result.Status.ShouldBe(expected);
        if (expected == ThermalStatus.Solved)
        {
            double rise = heat / (Film - (Growth * heat));
            result.RiseK.Max().ShouldBe(rise, rise * 1e-7);
        }
        else
        {
            result.Explanation.ShouldNotBeEmpty();
        }
    }

    [Fact]
    public void HeatThatCanNotLeaveIsNamed()
    {
        GridAxis axis = GridAxis.Uniform(0, 0.05, 5e-3);
        Plate plate = Plate.Solid(axis, axis).Heat(100);
        ThermalSolver.Solve(plate.Network, plate.Sources, Plate.Films(0, 0), []).Status.ShouldBe(ThermalStatus.NoWayOut);
    }
}
