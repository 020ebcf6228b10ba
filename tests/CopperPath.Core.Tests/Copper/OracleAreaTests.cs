using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Reading.Gerber;

namespace CopperPath.Core.Tests.Copper;

/// <summary>
/// Every copper layer of the real boards: the same number of pieces as NetTopologySuite finds, and the same area to one part
/// in a hundred million. Its figures were taken once, by the command at the head of <c>oracle-areas.csv</c>.
/// </summary>
public sealed class OracleAreaTests
{
    private const string Heading = "Areas of every copper layer";

    public static TheoryData<string> Boards => [.. OracleArea.All.Select(row => row.Board).Distinct()];

    [Fact]
    public void FiguresAreThereForEveryLayerOfElevenBoards()
    {
        OracleArea.All.Select(row => row.Board).Distinct().Count().ShouldBe(11);
        OracleArea.All.Count.ShouldBe(52);
        OracleArea.All.Select(row => (row.Board, row.File)).ShouldBeUnique();
    }

    [Theory]
    [MemberData(nameof(Boards))]
    public void CopperHasTheAreaTheOracleFound(string board)
    {
        OracleArea[] layers = [.. OracleArea.All.Where(row => row.Board == board)];
        string[] rows = new string[layers.Length];
        for (int i = 0; i < layers.Length; i++)
        {
            OracleArea oracle = layers[i];
            LayerArtwork artwork = GerberReader.Read(
                oracle.File, File.ReadAllBytes(SharedData.Require("boards-open", board, oracle.File)),
                new GerberReadOptions { PurposeIsCopper = true }).Artwork.ShouldNotBeNull();
            (artwork.Objects.Count, artwork.Objects.Sum(painted => painted.Rings.Sum(ring => ring.Length)))
                .ShouldBe((oracle.Objects, oracle.Vertices), $"{oracle.File}: outlines are no longer those the oracle painted");

            IReadOnlyList<PolygonNm> copper = CopperBuilder.Painted(artwork);

            double areaNm2 = copper.Sum(polygon => polygon.AreaNm2);
            Math.Abs(areaNm2 - oracle.AreaNm2).ShouldBeLessThanOrEqualTo(1e-8 * oracle.AreaNm2, oracle.File);
            copper.Count.ShouldBe(oracle.Pieces, oracle.File);
            rows[i] = Row(oracle, areaNm2, copper.Count);
        }

        CopperCheckedDocument.ShouldSay(Heading, board, rows);
    }

    private static string Row(OracleArea oracle, double areaNm2, int pieces) => string.Create(CultureInfo.InvariantCulture,
        $"| {oracle.Board} | `{oracle.File}` | {oracle.Objects} | {oracle.Vertices} | {oracle.Runs} | {areaNm2 / 1e12:F6} | {oracle.AreaNm2 / 1e12:F6} | {Math.Abs(areaNm2 - oracle.AreaNm2) / oracle.AreaNm2:0.0e+0} | {pieces} | {oracle.Pieces} |");
}
