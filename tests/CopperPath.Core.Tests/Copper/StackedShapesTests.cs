using System.Text;
using CopperPath.Copper;
using CopperPath.Core.Tests.Polygons;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Copper;

/// <summary>
/// Files of a few lines in which shapes lie on each other, from text to copper. Each of them would take minutes or have no
/// end where borders that run along each other are cut up along all of their length.
/// </summary>
public sealed class StackedShapesTests
{
    [Theory]
    [InlineData(15)]
    [InlineData(10_000)]
    public void EqualFlashesAreOneFlash(int count) => ShouldBeAsOne(n => StackedGerber.Flashes(n, 10, 0), count);

    [Theory]
    [InlineData(20)]
    [InlineData(10_000)]
    public void EqualStrokesAreOneStroke(int count) => ShouldBeAsOne(n => StackedGerber.Strokes(n, 0.5, 0), count);

    [Theory]
    [InlineData(25)]
    [InlineData(10_000)]
    public void EqualArcsAreOneArc(int count) => ShouldBeAsOne(n => StackedGerber.Arcs(n, 0.5, 5_000_000, 0), count);

    [Theory]
    [InlineData(20)]
    [InlineData(10_000)]
    public void EqualRegionsAreOneRegion(int count) => ShouldBeAsOne(n => StackedGerber.Regions(n, 0), count);

    [Fact]
    public void ArcsOfNineTenthsOfAMetreOnEachOtherAreOneArc() =>
        ShouldBeAsOne(n => StackedGerber.Arcs(n, 0.5, 900_000_000, 0), 1_500);

    [Fact]
    public void CirclesOneNanometreApartAgreeWithTheOracle() => ShouldAgree(StackedGerber.Flashes(18, 10, 1));

    [Fact]
    public void StrokesOneNanometreApartAgreeWithTheOracle() => ShouldAgree(StackedGerber.Strokes(300, 0.5, 1), 20);

    [Fact]
    public void ThreeThousandSliversOfOneNanometreAgreeWithTheOracle() => ShouldAgree(StackedGerber.Slivers(3_000, 1, 1), 1);

    /// <summary>
    /// A contour of 20 000 corners anywhere has some 46 million crossings (two chords between random points of a square
    /// cross with probability 25/108; from memory, and a count of our own agrees): it is given up, in words.
    /// </summary>
    [Fact]
    public void AContourThatCrossesItselfEverywhereIsGivenUpWithItsPlace()
    {
        GerberReading reading = GerberReader.Read("plane.gbr", Encoding.ASCII.GetBytes(StackedGerber.RandomContour(20_000, 1)));
        (CopperLayer? layer, IReadOnlyList<Diagnostic> diagnostics) = CopperBuilder.Build(1, reading.Artwork!, []);

        layer.ShouldBeNull();
        Diagnostic only = diagnostics.ShouldHaveSingleItem();
        only.Code.ShouldBe("CUP004");
        only.AffectsCopper.ShouldBeTrue();
        only.Position.File.ShouldBe("plane.gbr");
        only.Position.Line.ShouldBeGreaterThan(0);
        only.ToString().ShouldContain("error CUP004: found outlines that cross or touch each other too often to be united, most near X ");
    }

    /// <summary>
    /// A path, back over itself, and the same path beside it the other way round: no signed area, and crossings everywhere.
    /// Corners are multiples of 1 024 nm, so that the area is exactly nothing.
    /// </summary>
    [Fact]
    public void AContourOfNoSignedAreaThatCrossesItselfEverywhereIsGivenUpToo()
    {
        var random = new Random(2);
        List<(long X, long Y)> path = [.. Enumerable.Range(0, 7_000).Select(_ => (1_024L * random.Next(20_000), 1_024L * random.Next(20_000)))];
        path.Add(path[0]);
        string text = StackedGerber.Text("G01*\n", 1, _ => StackedGerber.Region([.. path, .. path.AsEnumerable().Reverse().Select(p => (p.X + 1_024, p.Y))]));
        GerberReading reading = GerberReader.Read("plane.gbr", Encoding.ASCII.GetBytes(text));

        reading.Diagnostics.Select(diagnostic => diagnostic.Code).ShouldBe(["GBR055"]);
        CopperBuilder.Build(1, reading.Artwork!, []).Diagnostics.ShouldHaveSingleItem().Code.ShouldBe("CUP004");
    }

    private static void ShouldBeAsOne(Func<int, string> textOf, int count)
    {
        IReadOnlyList<PolygonNm> one = Copper(textOf(1)), many = Copper(textOf(count));

        one.ShouldHaveSingleItem();
        many.SelectMany(polygon => polygon.Rings).SelectMany(ring => ring)
            .ShouldBe(one.SelectMany(polygon => polygon.Rings).SelectMany(ring => ring));
    }

    /// <param name="text">The file.</param>
    /// <param name="every">The oracle is given the first, the last and one object in so many between: near ones differ by nothing it could tell.</param>
    private static void ShouldAgree(string text, int every = 1)
    {
        GerberReading reading = GerberReader.Read("stack.gbr", Encoding.ASCII.GetBytes(text));
        IEnumerable<PointNm[]> rings = reading.Artwork!.Objects
            .Where((_, i) => i % every == 0 || i == reading.Artwork.Objects.Count - 1)
            .SelectMany(painted => painted.Rings.Select(ring => Array.ConvertAll(ring, p => p + painted.Offset)));

        Oracle.ShouldAgree(Copper(text), Oracle.UnionOf(rings), "stacked shapes");
    }

    private static IReadOnlyList<PolygonNm> Copper(string text)
    {
        GerberReading reading = GerberReader.Read("stack.gbr", Encoding.ASCII.GetBytes(text));
        reading.Diagnostics.ShouldBeEmpty();
        (CopperLayer? layer, IReadOnlyList<Diagnostic> diagnostics) = CopperBuilder.Build(1, reading.Artwork!, []);
        diagnostics.ShouldBeEmpty();
        return layer!.Islands;
    }
}
