using CopperPath.Copper;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.Core.Tests.Copper;

/// <summary>
/// A plane drawn as absent copper (<c>.FilePolarity,Negative</c>), from files to nets: the copper is what the image
/// leaves inside the board outline. Areas are exact figures of plane geometry.
/// </summary>
public sealed class NegativePlaneTests : IDisposable
{
    private const string Head = "%FSLAX34Y34*%\n%MOMM*%\n";

    private const string Profile = "%TF.FileFunction,Profile,NP*%\n" + Head
        + "%ADD10C,0.1*%\nG01*\nD10*\nX0Y0D02*\nX200000D01*\nY100000D01*\nX0D01*\nY0D01*\nM02*";

    private const string Top = "%TF.FileFunction,Copper,L1,Top*%\n%TF.FilePolarity,Positive*%\n" + Head
        + "%ADD10C,1.5*%\nD10*\n%TO.N,SIGNAL*%\nX50000Y50000D03*\n%TO.N,GROUND*%\nX150000Y50000D03*\nM02*";

    /// <summary>
    /// A clearance of 2 mm at (5, 5) with copper of 1 mm put back in it, and a thermal relief of 2 mm outside, 1 mm
    /// inside and 0.25 mm spokes at (15, 5).
    /// </summary>
    private const string Plane = "%TF.FileFunction,Copper,L2,Bot,Plane*%\n%TF.FilePolarity,Negative*%\n" + Head
        + "%ADD10C,2*%\n%ADD11C,1*%\n%AMRELIEF*7,0,0,2,1,0.25,0*%\n%ADD12RELIEF*%\n"
        + "D10*\nX50000Y50000D03*\n%LPC*%\nD11*\nX50000Y50000D03*\n%LPD*%\nD12*\nX150000Y50000D03*\nM02*";

    private const string Drill = "M48\n; #@! TF.FileFunction,Plated,1,2,PTH\nMETRIC\nT1C0.5\n%\nT1\nX5.0Y5.0\nX15.0Y5.0\nM30\n";

    /// <summary>A quarter in size of the thermal of 8, 4 and 1, whose area is 29.656744: case K56 of the readers' list.</summary>
    private const double ThermalMm2 = 29.656744 / 16;

    private readonly string _folder = Directory.CreateTempSubdirectory("copperpath-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void CopperIsWhatTheImageLeavesInsideTheOutline()
    {
        Board board = Read(("profile.gbr", Profile), ("top.gbr", Top), ("plane.gbr", Plane), ("board.drl", Drill));

        board.CopperIsUncertain.ShouldBeFalse(string.Join('\n', board.Diagnostics));
        NetList nets = board.Nets.ShouldNotBeNull();
        CopperLayer plane = nets.Layers[1];
        plane.Islands.Count.ShouldBe(2, "the plane, and the pad put back in its clearance");
        double expectedMm2 = 200 - Math.PI + (Math.PI / 4) - ThermalMm2;
        (plane.AreaM2 * 1e6).ShouldBe(expectedMm2, 2e-4);
        plane.Bounds.ShouldBe(new BoxNm(0, 0, 20_000_000, 10_000_000));
    }

    [Fact]
    public void HolesMeetThePlaneThroughItsSpokesAndPassItsClearances()
    {
        NetList nets = Read(("profile.gbr", Profile), ("top.gbr", Top), ("plane.gbr", Plane), ("board.drl", Drill))
            .Nets.ShouldNotBeNull();

        nets.At(2, new PointNm(1_000_000, 1_000_000)).ShouldNotBeNull().Name.ShouldBe("GROUND");
        nets.At(2, new PointNm(5_300_000, 5_000_000)).ShouldNotBeNull().Name.ShouldBe("SIGNAL");
        nets.At(2, new PointNm(5_700_000, 5_000_000)).ShouldBeNull();
    }

    [Fact]
    public void HonouringItIsInformation()
    {
        Board board = Read(("profile.gbr", Profile), ("top.gbr", Top), ("plane.gbr", Plane), ("board.drl", Drill));

        board.Diagnostics.Where(d => d.Position.File == "plane.gbr")
            .Select(d => (d.Code, d.Severity))
            .ShouldBe([("GBR009", Severity.Note), ("CUP002", Severity.Note)]);
    }

    [Fact]
    public void WithoutAnOutlineItCanNotBeHonouredAndNothingPasses()
    {
        Board board = Read(("top.gbr", Top), ("plane.gbr", Plane), ("board.drl", Drill));

        board.CopperIsUncertain.ShouldBeTrue();
        board.Diagnostics.ShouldContain(d => d.ToString() ==
            "plane.gbr: error CUP001: found a layer drawn as absent copper, and no board outline; "
            + "expected a profile file, inside which the copper is what the image leaves");
        board.Nets.ShouldNotBeNull().Layers.Select(layer => layer.Number).ShouldBe([1]);
    }

    [Fact]
    public void AnOutlineThatDoesNotCloseIsNoOutline()
    {
        string open = Profile.Replace("X0D01*\nY0D01*\n", "", StringComparison.Ordinal);
        Board board = Read(("profile.gbr", open), ("top.gbr", Top), ("plane.gbr", Plane), ("board.drl", Drill));

        board.Diagnostics.ShouldContain(d => d.Code == "CUP001" && d.AffectsCopper);
    }

    private Board Read(params (string Name, string Text)[] files)
    {
        foreach ((string name, string text) in files)
        {
            File.WriteAllText(Path.Combine(_folder, name), text);
        }

        return Analysis.Survey(_folder).Board;
    }
}
