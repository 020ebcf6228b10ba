using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.Drill;

namespace CopperPath.Core.Tests.Reading.Drill;

/// <summary>A hole told of twice is one hole.</summary>
public class DrillOverlapTests
{
    [Fact]
    public void HolesOfBothFormsAreTakenOnce()
    {
        DrillArtwork program = File("a.drl", 0, Hole(0, 0, 300), Hole(1000, 0, 300), Slot(5000, 0, 8000, 0, 1000));
        DrillArtwork gerber = File("a-drl.gbr", 0, Hole(1000.004, 0, 300.01), Slot(8000, 0, 5000, 0, 1000), Hole(2000, 0, 300));

        (IReadOnlyList<DrillArtwork> files, List<Diagnostic> remarks) = Resolve(program, gerber);

        files.Select(file => file.Features.Count).ShouldBe([3, 1]);
        Diagnostic note = remarks.ShouldHaveSingleItem();
        (note.Code, note.Severity, note.Found).ShouldBe((DrillCode.SameHoles, Severity.Note, "2 holes that a.drl holds too"));
    }

    [Fact]
    public void HoleTwiceInOneFileIsTakenOnce()
    {
        (IReadOnlyList<DrillArtwork> files, List<Diagnostic> remarks) = Resolve(File("a.drl", 0, Hole(0, 0, 300), Hole(0, 0, 300)));

        files[0].Features.ShouldHaveSingleItem();
        remarks.ShouldHaveSingleItem().Found.ShouldBe("1 holes that stand in it twice");
    }

    [Fact]
    public void StackedHolesOfDifferentSpansAreKept()
    {
        DrillArtwork blind = File("1-2.drl", 1, Hole(0, 0, 100));
        DrillArtwork buried = File("2-3.drl", 2, Hole(0, 0, 100));

        (IReadOnlyList<DrillArtwork> files, List<Diagnostic> remarks) = Resolve(blind, buried);

        files.Select(file => file.Features.Count).ShouldBe([1, 1]);
        remarks.ShouldBeEmpty();
    }

    [Theory]
    [InlineData(300, Plating.NonPlated, true, "a hole 0.3 mm wide, unplated, where a.drl:1:1 has a hole 0.3 mm wide, plated,")]
    [InlineData(500, Plating.Plated, false, "a hole 0.5 mm wide, plated, where a.drl:1:1 has a hole 0.3 mm wide, plated,")]
    public void DisagreementIsReportedAndTheFirstStatementStands(double diameterUm, Plating plating, bool affectsCopper, string found)
    {
        (IReadOnlyList<DrillArtwork> files, List<Diagnostic> remarks) = Resolve(
            File("a.drl", 0, Hole(0, 0, 300)), File("b.drl", 0, Hole(0, 0, diameterUm) with { Plating = plating }));

        files[0].Features.ShouldHaveSingleItem().Plating.ShouldBe(Plating.Plated);
        files[1].Features.ShouldBeEmpty();
        Diagnostic warning = remarks.Single(d => d.Severity == Severity.Warning);
        (warning.Code, warning.AffectsCopper, warning.Found).ShouldBe((DrillCode.HolesDisagree, affectsCopper, found));
    }

    [Fact]
    public void LaterStatementGivesThePlatingTheFirstDoesNot()
    {
        (IReadOnlyList<DrillArtwork> files, _) = Resolve(
            File("a.drl", 0, Hole(0, 0, 300) with { Plating = Plating.Unknown }), File("b.gbr", 0, Hole(0, 0, 300)));

        files[0].Features.ShouldHaveSingleItem().Plating.ShouldBe(Plating.Plated);
    }

    [Fact]
    public void ManyDisagreementsAreCountedNotListed()
    {
        DrilledFeature[] holes = [.. Enumerable.Range(0, 50).Select(i => Hole(1000 * i, 0, 300))];
        (_, List<Diagnostic> remarks) = Resolve(
            File("a.drl", 0, holes), File("b.drl", 0, [.. holes.Select(hole => hole with { Plating = Plating.NonPlated })]));

        remarks.Count(d => d.Code == DrillCode.HolesDisagree).ShouldBe(11);
        remarks[^1].Found.ShouldBe("40 more holes with two statements");
    }

    private static (IReadOnlyList<DrillArtwork> Files, List<Diagnostic> Remarks) Resolve(params DrillArtwork[] files)
    {
        List<Diagnostic> remarks = [];
        return (DrillOverlap.Resolve(files, remarks), remarks);
    }

    private static DrillArtwork File(string name, int firstLayer, params DrilledFeature[] features) =>
        new(name, features, firstLayer, firstLayer == 0 ? 0 : firstLayer + 1);

    private static DrilledFeature Hole(double xUm, double yUm, double diameterUm) =>
        new([At(xUm, yUm)], (long)(diameterUm * 1000), Plating.Plated, null, new SourcePosition("a.drl", 1, 1));

    private static DrilledFeature Slot(double x1Um, double y1Um, double x2Um, double y2Um, double diameterUm) =>
        Hole(x1Um, y1Um, diameterUm) with { Path = [At(x1Um, y1Um), At(x2Um, y2Um)] };

    private static PointNm At(double xUm, double yUm) => new((long)(xUm * 1000), (long)(yUm * 1000));
}
