using System.Globalization;
using CopperPath.Core.Tests.Gallery;
using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>Necks whose width and current are known by construction.</summary>
public sealed class SectionFinderTests
{
    /// <summary>A slanting neck between two pours, turned against every raster: the whole current, the true width.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(17)]
    [InlineData(45)]
    [InlineData(73)]
    public void ANeckIsFoundWithItsWidthAndTheWholeCurrent(double degrees)
    {
        (double X, double Y) Turn(double x, double y)
        {
            (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
            return (50 + (x * cos) - (y * sin), 50 + (x * sin) + (y * cos));
        }

        using SyntheticBoard board = new(1);
        board.Region(1, Turn(-20, -10), Turn(-1, -10), Turn(-1, -0.65), Turn(1, -0.65), Turn(1, -10), Turn(20, -10),
            Turn(20, 10), Turn(1, 10), Turn(1, 0.65), Turn(-1, 0.65), Turn(-1, 10), Turn(-20, 10));
        (double westX, double westY) = Turn(-15, 0);
        (double eastX, double eastY) = Turn(15, 0);
        string brief = board.WriteBrief(string.Create(CultureInfo.InvariantCulture, $$"""
              - name: Test piece
                at: { layer: top, x: {{westX}} mm, y: {{westY}} mm }
                terminals:
                  - { name: west, circle: { layer: top, x: {{westX}} mm, y: {{westY}} mm, diameter: 4 mm }, enters: 6 A }
                  - { name: east, circle: { layer: top, x: {{eastX}} mm, y: {{eastY}} mm, diameter: 4 mm }, leaves: 6 A }
            """));

        IReadOnlyList<Section> sections = Analysis.Check(brief).Nets.ShouldHaveSingleItem().Sections;
        Section worst = sections.MaxBy(section => section.CurrentA * section.CurrentA / Math.Pow(section.WidthM, 1.15))!;

        worst.CurrentA.ShouldBe(6, 6 * 1e-3);
        worst.WidthM.ShouldBe(1.3e-3, 1.3e-3 * 2e-3);
    }

    /// <summary>Any cut right across a bar carries all of it: the balanced current depends on the ends of the cut alone.</summary>
    [Fact]
    public void EveryCutAcrossABarWithAHoleCarriesTheCurrentOfItsSide()
    {
        using SyntheticBoard board = new(1);
        board.Rectangle(1, 0, 0, 40, 10).Draw(1, "%LPC*%%ADD10C,4*%D10*X20000000Y5000000D03*%LPD*%");
        string brief = board.WriteBrief("""
              - name: Test piece
                at: { layer: top, x: 1.5 mm, y: 1.5 mm }
                terminals:
                  - { name: west, rectangle: { layer: top, from: [0 mm, 0 mm], to: [2 mm, 10 mm] }, enters: 4 A }
                  - { name: east, rectangle: { layer: top, from: [38 mm, 0 mm], to: [40 mm, 10 mm] }, leaves: 4 A }
            """);

        IReadOnlyList<Section> sections = Analysis.Check(brief).Nets.ShouldHaveSingleItem().Sections;

        // By symmetry each side of the hole carries half; beside the hole a cut reaches from its rim to the edge.
        Section[] beside = [.. sections.Where(section => Math.Abs(section.AtXM - 20e-3) < 0.5e-3)];
        beside.ShouldNotBeEmpty();
        beside.ShouldAllBe(section => Math.Abs(section.CurrentA - 2) < 0.02 && section.WidthM >= 2.99e-3);
        Section[] clear = [.. sections.Where(section => Math.Abs(section.AtXM - 6e-3) < 1e-3)];
        clear.ShouldNotBeEmpty();
        clear.ShouldAllBe(section => Math.Abs(section.CurrentA - 4) < 0.01);
    }
}
