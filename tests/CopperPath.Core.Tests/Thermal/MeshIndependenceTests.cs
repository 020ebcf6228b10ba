using CopperPath.Core.Tests.Gallery;
using CopperPath.Geometry;
using CopperPath.Judging;
using CopperPath.Thermal;

namespace CopperPath.Core.Tests.Thermal;

/// <summary>What the cells are must not show in the answer.</summary>
public sealed class MeshIndependenceTests
{
    /// <summary>
    /// A neck of 1 mm whose sides come within 0.2 mm of another net, over a plane: the hard case, as on the demo board. The
    /// cells chosen by themselves and cells of 0.1 mm throughout agree within 4 % in peak and 2 % in mean, and on the place. What
    /// is left is the laminate in the gap, whose length a cell knows to its own width only.
    /// </summary>
    [Fact]
    public void ANeckBesideOtherCopperHasOneAnswer()
    {
        NetTemperatures chosen = NeckOn("");
        NetTemperatures fine = NeckOn("cell: 0.1 mm");

        fine.PeakK.ShouldBeGreaterThan(1.3 * fine.MeanK);
        chosen.PeakK.ShouldBe(fine.PeakK, 0.04 * fine.PeakK);
        chosen.MeanK.ShouldBe(fine.MeanK, 0.02 * fine.PeakK);
        chosen.XM.ShouldBeInRange(14e-3, 21e-3);
        fine.XM.ShouldBeInRange(14e-3, 21e-3);
    }

    /// <summary>Two nets in one cell: the wider has it, and they are not joined though both cross the lines around it.</summary>
    [Fact]
    public void NetsThatShareACellAreNotJoined()
    {
        PolygonNm left = new(Plate.Ring((0, 0), (1.3e-3, 0), (1.3e-3, 2e-3), (0, 2e-3)), []);
        PolygonNm right = new(Plate.Ring((1.5e-3, 0), (4e-3, 0), (4e-3, 2e-3), (1.5e-3, 2e-3)), []);
        TreeCells cells = new(new CellTree(new CellBox(0, 0, 4e-3, 2e-3), 1e-3), [new HeatPlane(1, Plate.CopperM, 0, 0)]);
        CellCover cover = CellCover.Of(cells, [[left], [right]]);

        cover.AreaM2[Column(1, 0)].ShouldBe(0.8e-6, 1e-15);
        Joined(1, 0, 0, 0).ShouldBe(0);
        Joined(1, 0, 2, 0).ShouldBe(1e-3, 1e-12);
        Joined(0, 0, 0, 1).ShouldBe(1e-3, 1e-12);
        Joined(1, 0, 1, 1).ShouldBe(0.5e-3, 1e-12);

        int Column(int i, int j) => cells.ColumnAt((i + 0.5) * 1e-3, (j + 0.5) * 1e-3);

        double Joined(int i, int j, int otherI, int otherJ) => cover.JoinedM(cells, cells.Faces.Single(face =>
            (face.Low, face.High) == (Column(i, j), Column(otherI, otherJ)) || (face.High, face.Low) == (Column(i, j), Column(otherI, otherJ))));
    }

    private static NetTemperatures NeckOn(string cell)
    {
        using SyntheticBoard board = new(2);
        board.Rectangle(1, 0, 0, 15, 12).Rectangle(1, 15, 5.5, 20, 6.5).Rectangle(1, 20, 0, 35, 12);
        board.Rectangle(1, 15.2, 0, 19.8, 5.3).Rectangle(1, 15.2, 6.7, 19.8, 12).Rectangle(2, 0, 0, 35, 12);
        string brief = board.WriteBrief($$"""
              - name: Neck
                at: { layer: top, x: 5 mm, y: 5 mm }
                terminals:
                  - { name: left, rectangle: { layer: top, from: [0 mm, 0 mm], to: [1 mm, 12 mm] }, enters: 6 A }
                  - { name: right, rectangle: { layer: top, from: [34 mm, 0 mm], to: [35 mm, 12 mm] }, leaves: 6 A }
            thermal: { {{cell}} }
            """);
        File.WriteAllText(brief, File.ReadAllText(brief).Replace("[1.5 mm]", "[0.2 mm]", StringComparison.Ordinal)
            .Replace("thermal: {  }", "", StringComparison.Ordinal));
        Review review = Analysis.Check(brief);
        return NetTemperatures.Of(review.Nets.Single(), review.Own.ShouldNotBeNull());
    }
}
