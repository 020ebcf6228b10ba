using System.Text;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Copper;

/// <summary>Outlines in many pieces, with many cut-outs.</summary>
public sealed class ProfileBuilderTests
{
    /// <summary>A circle of 200 mm in chords, drawn in any order and either way; a polygon of n corners has the area n / 2 r^2 sin(2 pi / n).</summary>
    [Fact]
    public void ChordsInAnyOrderBecomeOneOutline()
    {
        const int Chords = 20_000;
        const double RadiusNm = 200e6;
        var random = new Random(3);
        (long X, long Y)[] corners = [.. Enumerable.Range(0, Chords).Select(i => Math.SinCos(Math.Tau * i / Chords))
            .Select(at => ((long)Math.Round(RadiusNm * at.Cos), (long)Math.Round(RadiusNm * at.Sin)))];
        int[] order = [.. Enumerable.Range(0, Chords)];
        random.Shuffle(order);
        string text = StackedGerber.Text("%ADD10C,0.1*%\nD10*\nG01*\n", Chords, i =>
        {
            (int from, int to) = (order[i], (order[i] + 1) % Chords);
            ((long X, long Y) a, (long X, long Y) b) = random.Next(2) == 0 ? (corners[from], corners[to]) : (corners[to], corners[from]);
            return $"X{a.X}Y{a.Y}D02*\nX{b.X}Y{b.Y}D01*\n";
        });

        PolygonNm board = Built(text).ShouldHaveSingleItem();

        board.Holes.ShouldBeEmpty();
        board.AreaNm2.ShouldBe(Chords / 2 * RadiusNm * RadiusNm * Math.Sin(Math.Tau / Chords), tolerance: Math.Tau * RadiusNm);
    }

    /// <summary>Loops alternate between board and cut-out from the outside in.</summary>
    [Fact]
    public void ThousandsOfCutOutsAreCutOutAndIslandsInThemAreBoard()
    {
        string text = StackedGerber.Text("G01*\n%LPD*%\n", 1, _ => Box(0, 0, 100_000_000)
            + string.Concat(Enumerable.Range(0, 3_600).Select(i => Box(1_000_000 + (i % 60 * 1_500_000), 1_000_000 + (i / 60 * 1_500_000), 1_000_000)))
            + Box(1_250_000, 1_250_000, 500_000));

        IReadOnlyList<PolygonNm> pieces = Built(text);

        pieces.Count.ShouldBe(2);
        pieces.Sum(piece => piece.Holes.Length).ShouldBe(3_600);
        pieces.Sum(piece => piece.AreaNm2).ShouldBe(1e16 - (3_600 * 1e12) + 2.5e11);

        static string Box(long x, long y, long side) => StackedGerber.Region([(x, y), (x + side, y), (x + side, y + side), (x, y + side)]);
    }

    private static IReadOnlyList<PolygonNm> Built(string text) =>
        ProfileBuilder.Build([GerberReader.Read("outline.gbr", Encoding.ASCII.GetBytes(text)).Artwork!]);
}
