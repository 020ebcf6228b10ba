using CopperPath.Capacity;

namespace CopperPath.Core.Tests.Capacity;

/// <summary>The figure for a short neck against the equations of a heated fin, stepped through without any closed form.</summary>
public sealed class ShortNeckTests
{
    private const double ResistivityOhmM = 1.9e-8;
    private const double CopperWPerMK = 385;

    /// <summary>
    /// k A theta'' = g theta - I^2 rho / A between ends at 0, g from what the long conductor loses: central differences on 4000 steps,
    /// solved by elimination (any textbook of numerical analysis).
    /// </summary>
    [Theory]
    [InlineData(0.5e-3)]
    [InlineData(3e-3)]
    [InlineData(20e-3)]
    [InlineData(80e-3)]
    public void TheMiddleOfANeckIsThatOfAFin(double lengthM)
    {
        const double CurrentA = 8, WidthM = 2.4e-3, ThicknessM = 35e-6;
        const int Steps = 4000;
        double sectionM2 = WidthM * ThicknessM;
        double longK = Ipc2152StyleFit.RiseK(CurrentA, WidthM, ThicknessM);
        double heatWPerM = CurrentA * CurrentA * ResistivityOhmM / sectionM2;
        double lossWPerMK = heatWPerM / longK;
        double dx = lengthM / Steps, conduction = CopperWPerMK * sectionM2 / (dx * dx);
        double[] upper = new double[Steps], right = new double[Steps];
        for (int i = 1; i < Steps; i++)
        {
            double pivot = (2 * conduction) + lossWPerMK - (i > 1 ? conduction * upper[i - 1] : 0);
            upper[i] = conduction / pivot;
            right[i] = (heatWPerM + (i > 1 ? conduction * right[i - 1] : 0)) / pivot;
        }

        double theta = 0;
        for (int i = Steps - 1; i >= Steps / 2; i--)
        {
            theta = right[i] + (upper[i] * theta);
        }

        double heatLengthM = ShortNeck.HeatLengthM(CurrentA, sectionM2, longK, ResistivityOhmM, CopperWPerMK);
        ShortNeck.RiseK(longK, lengthM, heatLengthM).ShouldBe(theta, 1e-4 * longK);
    }

    /// <summary>Without loss to the surroundings the middle of a heated bar is I^2 rho L^2 / (8 k A^2) above its ends (parabola); a long one is the chart's.</summary>
    [Fact]
    public void ShortAndLongEndsOfTheFormulaAreThoseOfABarAndOfTheChart()
    {
        const double CurrentA = 9, SectionM2 = 70e-9, LongK = 92.6, LengthM = 1e-3;
        double heatLengthM = ShortNeck.HeatLengthM(CurrentA, SectionM2, LongK, ResistivityOhmM, CopperWPerMK);

        double parabolaK = CurrentA * CurrentA * ResistivityOhmM * LengthM * LengthM / (8 * CopperWPerMK * SectionM2 * SectionM2);
        ShortNeck.RiseK(LongK, LengthM, heatLengthM).ShouldBe(parabolaK, 3e-3 * parabolaK);
        ShortNeck.RiseK(LongK, 40 * heatLengthM, heatLengthM).ShouldBe(LongK, 1e-6);
        ShortNeck.RiseK(LongK, 0, heatLengthM).ShouldBe(0);
    }
}
