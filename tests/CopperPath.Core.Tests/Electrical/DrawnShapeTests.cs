using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>The bounds hold for what was drawn, not only for what was meshed: outlines are rounded and thinned out on the way.</summary>
public sealed class DrawnShapeTests
{
    /// <summary>
    /// A strip at an angle to the welding grid: its resistance is length over width whatever the angle. Its potential is
    /// linear, so the meshed shape's bounds meet, beside the true value by what rounding did to the width.
    /// </summary>
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.7)]
    [InlineData(1.2)]
    public void AStripAtAnAngleHasTheResistanceOfTheDrawnWidth(double angle)
    {
        const double Width = 0.15;
        (double X, double Y)[] Turned(double x0, double y0, double x1, double y1) => [.. Plate.Box(x0, y0, x1, y1)
            .Select(p => ((p.X * Math.Cos(angle)) - (p.Y * Math.Sin(angle)), (p.X * Math.Sin(angle)) + (p.Y * Math.Cos(angle))))];
        ConductionResult result = new Plate().Copper(1, Turned(0, 0, 12, Width))
            .Terminal("in", 1, Turned(0, -1, 1, 1)).Terminal("out", -1, Turned(11, -1, 12, 1)).Solve();

        // The corners themselves are drawn in whole nanometres: 1e-5 of the width.
        const double Exact = 10 / Width;
        Exact.ShouldBeInRange(result.DropBoundsV.Least * (1 - 1e-5), result.DropBoundsV.Greatest * (1 + 1e-5));
        result.DropBoundsV.RelativeWidth.ShouldBeLessThan(1e-3);
        Bracket meshed = result.Rounds[^1].MeshedDropBoundsV;
        (Exact < meshed.Least || Exact > meshed.Greatest).ShouldBeTrue("the angles are chosen so that rounding shows");
    }

    /// <summary>
    /// Teeth as deep as the mesher may thin out take part in no current between them. The reference is solved on every
    /// vertex as drawn, ten times as closely.
    /// </summary>
    [Theory]
    [InlineData(0.01, 0.0049)]
    [InlineData(0.02, 0.003)]
    [InlineData(0.008, 0.008)]
    public void ARaggedEdgeLiesInsideTheBounds(double pitch, double depth)
    {
        Plate piece = Comb(pitch, depth);
        ConductionResult result = piece.Solve();
        Bracket reference = AsDrawn(piece);

        result.DropBoundsV.Least.ShouldBeLessThanOrEqualTo(reference.Least);
        result.DropBoundsV.Greatest.ShouldBeGreaterThanOrEqualTo(reference.Greatest);
        result.DropBoundsV.RelativeWidth.ShouldBeLessThanOrEqualTo(SolveDemand.Default.Accuracy);
    }

    /// <summary>Where outlines thinned out by 5 um alone take more than is asked for, they are followed more closely.</summary>
    [Fact]
    public void OutlinesAreFollowedTheCloserTheMoreAccuracyIsAskedFor()
    {
        Plate piece = Comb(0.02, 0.0049);
        ConductionResult coarse = piece.Solve(SolveDemand.Default with { Accuracy = 0.05 });
        ConductionResult fine = piece.Solve(SolveDemand.Default with { Accuracy = 5e-4 });

        coarse.Rounds[^1].OutlineShare.ShouldBeGreaterThan(5e-4);
        fine.Status.ShouldBe(ConductionStatus.Solved, fine.Explanation);
        fine.DropBoundsV.RelativeWidth.ShouldBeLessThanOrEqualTo(5e-4);
        fine.DropV.ShouldBeInRange(coarse.DropBoundsV.Least, coarse.DropBoundsV.Greatest);
    }

    /// <summary>Round voids that leave necks of 0.1 mm, where the current crowds along the arcs the mesher turns into chords.</summary>
    [Fact]
    public void ChordsForArcsLieInsideTheBounds()
    {
        Plate piece = new Plate().Copper(1,
                [Plate.Box(0, 0, 8, 4.1), .. new[] { 2.0, 4, 6 }.SelectMany(x => new[] { 1.1, 3.0 }.Select(y => Plate.Circle(x, y, 0.9, 60).Reverse().ToArray()))])
            .Terminal("in", 1, Plate.Box(0, 0, 0.5, 4.1)).Terminal("out", -1, Plate.Box(7.5, 0, 8, 4.1));
        ConductionResult result = piece.Solve();
        Bracket reference = AsDrawn(piece);

        result.DropBoundsV.Least.ShouldBeLessThanOrEqualTo(reference.Least);
        result.DropBoundsV.Greatest.ShouldBeGreaterThanOrEqualTo(reference.Greatest);
    }

    /// <summary>A strip 1 mm wide between contacts, with square teeth along both edges.</summary>
    private static Plate Comb(double pitch, double depth)
    {
        int teeth = (int)Math.Round(3 / pitch);
        IEnumerable<(double, double)> Edge(double y, int outwards) => Enumerable.Range(0, teeth).SelectMany(i => new[]
        {
            (i * pitch, y), (i * pitch, y + (outwards * depth)), ((i + 0.5) * pitch, y + (outwards * depth)), ((i + 0.5) * pitch, y),
        }).Append((teeth * pitch, y));
        return new Plate().Copper(1, [.. Edge(0, -1), .. Edge(1, 1).Reverse()])
            .Terminal("in", 1, Plate.Box(-1, -1, 0.5, 2)).Terminal("out", -1, Plate.Box(2.5, -1, 4, 2));
    }

    private static Bracket AsDrawn(Plate piece)
    {
        ConductionResult result = piece.Solve(SolveDemand.Default with
        {
            Accuracy = SolveDemand.Default.Accuracy / 10,
            StartingMesh = SolveDemand.Default.StartingMesh with { SimplificationToleranceM = 0, WeldingGridM = 1e-9, MinimumEdgeM = 1e-7 },
        });
        return result.Rounds[^1].MeshedDropBoundsV;
    }
}
