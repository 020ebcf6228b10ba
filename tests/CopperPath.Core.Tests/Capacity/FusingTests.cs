using CopperPath.Capacity;
using CopperPath.Quantities;

namespace CopperPath.Core.Tests.Capacity;

/// <summary>
/// Formulas of Onderdonk, IEC 60949 and Preece, all from memory; expected numbers evaluated outside this project
/// (numerical Python). The two adiabatic forms were derived apart and must nearly agree at melting.
/// </summary>
public class FusingTests
{
    private const double Tolerance = 1e-4;
    private const double AmbientK = Units.ZeroCelsiusK + 25;

    [Theory]
    [InlineData(100, 0.01, 256.68)]
    [InlineData(100, 0.1, 81.169)]
    [InlineData(100, 1, 25.668)]
    [InlineData(100, 5, 11.479)]
    [InlineData(10, 1, 2.567)]
    public void OnderdonkGivesTheMeltingCurrent(double widthMil, double timeS, double expectedA)
    {
        double sectionM2 = widthMil * 1.378 * Units.M2PerSquareMil;

        CurrentEstimate estimate = Onderdonk.Current(sectionM2, timeS, AmbientK);

        // The last row is given to four digits only.
        estimate.CurrentA.ShouldBe(expectedA, expectedA * 1.2 * Tolerance);
        estimate.Basis.IsInRange.ShouldBeTrue();
        Onderdonk.Time(sectionM2, estimate.CurrentA, AmbientK).TimeS.ShouldBe(timeS, timeS * 1e-12);
    }

    [Fact]
    public void OnderdonkPerSquareMillimetre() =>
        Onderdonk.Current(1e-6, 1, AmbientK).CurrentA.ShouldBe(288.719, 288.719 * Tolerance);

    [Theory]
    [InlineData(130, 135.454)]
    [InlineData(160, 149.625)]
    [InlineData(250, 181.338)]
    [InlineData(1083, 289.791)]
    public void TheAdiabaticLimitPerSquareMillimetre(double finalC, double expectedA) =>
        AdiabaticLimit.Current(1e-6, 1, Units.ZeroCelsiusK + 20, Units.ZeroCelsiusK + finalC).CurrentA
            .ShouldBe(expectedA, expectedA * Tolerance);

    [Fact]
    public void TwoFormulasOfDifferentOriginAgreeAtMelting()
    {
        double onderdonkA = Onderdonk.Current(1e-6, 1, AmbientK).CurrentA;
        double iecA = AdiabaticLimit.Current(1e-6, 1, AmbientK, Units.ZeroCelsiusK + 1083).CurrentA;

        onderdonkA.ShouldBe(iecA, iecA * 0.005);
    }

    [Theory]
    [InlineData(0.1, 2.530)]
    [InlineData(0.2, 7.155)]
    [InlineData(0.5, 28.284)]
    [InlineData(1.0, 80.0)]
    public void PreeceGivesTheMeltingCurrentOfWire(double diameterMm, double expectedA) =>
        Preece.Current(diameterMm * 1e-3).CurrentA.ShouldBe(expectedA, expectedA * Tolerance);

    [Fact]
    public void LongTimesAreOutsideTheAdiabaticRange()
    {
        Onderdonk.Current(1e-6, 10, AmbientK).Basis.IsInRange.ShouldBeFalse();
        AdiabaticLimit.Current(1e-6, 10, AmbientK, AmbientK + 100).Basis.IsInRange.ShouldBeFalse();
    }
}
