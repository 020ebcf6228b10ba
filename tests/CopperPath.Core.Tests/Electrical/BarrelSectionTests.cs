using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Geometry;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>Sections and resistances of barrels 1.6 mm long at 20 degrees Celsius: A = pi (d + t) t or pi (D - t) t, R = rho L / A (geometry).</summary>
public sealed class BarrelSectionTests
{
    [Theory]
    [InlineData(0.30, 25, false, 0.025525, 1.08071)]
    [InlineData(0.30, 25, true, 0.021598, 1.27720)]
    [InlineData(0.30, 20, false, 0.020106, 1.37200)]
    [InlineData(0.30, 20, true, 0.017593, 1.56799)]
    [InlineData(0.20, 20, false, 0.013823, 1.99563)]
    [InlineData(0.50, 25, true, 0.037306, 0.73943)]
    public void SectionAndResistanceFollowTheFaceTheDiameterMeans(
        double diameterMm, double platingUm, bool isDrill, double sectionMm2, double milliohm)
    {
        double platingM = platingUm * 1e-6;
        Stackup stack = new([35e-6], [], platingM, 1.7241e-8);
        stack = isDrill ? stack with { WallOutsideToolM = 0 } : stack;
        DrilledFeature hole = new([new PointNm(0, 0)], (long)Math.Round(diameterMm * 1e6), Plating.Plated, null, SourcePosition.WholeFile("holes.drl"));

        double areaM2 = BarrelSection.AreaM2(hole, stack);

        (areaM2 * 1e6).ShouldBe(sectionMm2, sectionMm2 * 1e-4);
        (1.7241e-8 * 1.6e-3 / areaM2 * 1e3).ShouldBe(milliohm, milliohm * 1e-4);
    }
}
