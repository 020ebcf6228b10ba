using CopperPath.Electrical;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// Potential and current density, point by point, against fields known in closed form (textbook: polar and bipolar
/// coordinates of Laplace's equation), and what symmetry says about fields that are not known.
/// </summary>
public sealed class ExactFieldTests
{
    /// <summary>Between radii a and b: V = ln(b/r) / (2 pi), J = 1 / (2 pi r), for one ampere and one ohm per square.</summary>
    [Fact]
    public void RadialFieldHoldsAtEveryVertexAndTriangle()
    {
        const double hub = 4e-3, rim = 20e-3;
        SheetField field = ExactCases.All.Single(each => each.Name == "annulus 5").Piece().Solve(Plate.OneMesh(0.4e-3)).Sheets[0];

        double drop = Math.Log(rim / hub) / (2 * Math.PI);
        ForEachVertexOutsideContacts(field, (x, y, v) =>
            v.ShouldBe(Math.Log(rim / Math.Sqrt((x * x) + (y * y))) / (2 * Math.PI), 2e-3 * drop));
        ForEachTriangle(field, (x, y, jx, jy) =>
        {
            double r = Math.Sqrt((x * x) + (y * y));
            double expected = 1 / (2 * Math.PI * r);
            (((jx * x) + (jy * y)) / r).ShouldBe(expected, 0.1 * expected);
            (((jx * y) - (jy * x)) / r).ShouldBe(0, 0.1 * expected);
        });
    }

    /// <summary>
    /// Between two discs: V = ln(r2 / r1) / (2 pi) with r1, r2 the distances from the limiting points, in a whole plane;
    /// a disc cut along a line of flow carries half, so the potential doubles.
    /// </summary>
    [Fact]
    public void FieldOfTwoDiscsHoldsAtEveryVertex()
    {
        ExactCase piece = ExactCases.All.Single(each => each.Name == "two discs, D/2a 3, cut along a line of flow");
        SheetField field = piece.Piece().Solve(Plate.OneMesh(0.1e-3)).Sheets[0];

        double limiting = Math.Sqrt(16 - (16.0 / 9)) * 1e-3;
        ForEachVertexOutsideContacts(field, (x, y, v) =>
        {
            double near = ((x + limiting) * (x + limiting)) + (y * y), far = ((x - limiting) * (x - limiting)) + (y * y);
            (v - (piece.Squares / 2)).ShouldBe(Math.Log(far / near) / (2 * Math.PI), 2e-3 * piece.Squares);
        });
    }

    /// <summary>A T and a cross are symmetric: what flows into arms that mirror each other is the same.</summary>
    [Fact]
    public void MirroredTerminalsShareEqually()
    {
        ConductionResult result = ExactCases.All.Single(each => each.Name == "T, stem to both arms").Piece().Solve();

        // The two arms are one terminal; currents recovered through the bar left and right of the stem.
        double west = 0, east = 0;
        foreach (Section section in SectionFinder.Find(result.Sheets[0], section => section.CurrentA / section.WidthM)
            .Where(each => Math.Abs(each.WidthM - 10e-3) < 0.2e-3))
        {
            west = section.AtXM < -15e-3 ? section.CurrentA : west;
            east = section.AtXM > 15e-3 ? section.CurrentA : east;
        }

        west.ShouldBe(0.5, 1e-3);
        east.ShouldBe(0.5, 1e-3);
    }

    /// <summary>The same piece turned by an odd angle, and at ten times the size, has the same number of squares.</summary>
    [Theory]
    [InlineData(17, 1)]
    [InlineData(45, 1)]
    [InlineData(0, 4)]
    public void SquaresDependOnShapeOnly(double degrees, double scale)
    {
        double squares = 6 + 1 - (2 / Math.PI * Math.Log(2));
        double cos = Math.Cos(degrees * Math.PI / 180) * scale, sin = Math.Sin(degrees * Math.PI / 180) * scale;
        (double X, double Y)[] Turned(params (double X, double Y)[] ring) =>
            [.. ring.Select(p => ((p.X * cos) - (p.Y * sin), (p.X * sin) + (p.Y * cos)))];
        ConductionResult result = new Plate()
            .Copper(1, Turned((-32, 0), (10, 0), (10, 42), (0, 42), (0, 10), (-32, 10)))
            .Terminal("west", 1, Turned(Plate.Box(-32, 0, -30, 10)))
            .Terminal("north", -1, Turned(Plate.Box(0, 40, 10, 42))).Solve();

        result.DropV.ShouldBe(squares, 2e-3 * squares);
    }

    private static void ForEachVertexOutsideContacts(SheetField field, Action<double, double, double> check)
    {
        bool[] isInContact = new bool[field.Mesh.VertexCount];
        for (int t = 0; t < field.Mesh.TriangleCount; t++)
        {
            for (int k = 0; k < 3 && field.Mesh.TriangleMarkers[t] != 0; k++)
            {
                isInContact[field.Mesh.Triangles[(3 * t) + k]] = true;
            }
        }

        int checkedCount = 0;
        for (int v = 0; v < field.Mesh.VertexCount; v++)
        {
            if (!isInContact[v] && !double.IsNaN(field.PotentialV[v]))
            {
                check(field.Mesh.XM[v], field.Mesh.YM[v], field.PotentialV[v]);
                checkedCount++;
            }
        }

        checkedCount.ShouldBeGreaterThan(1000);
    }

    private static void ForEachTriangle(SheetField field, Action<double, double, double, double> check)
    {
        for (int t = 0; t < field.Mesh.TriangleCount; t++)
        {
            if (field.Mesh.TriangleMarkers[t] == 0 && field.SheetCurrentAPerM(t) > 0)
            {
                (double x, double y) = MeshWalker.Centroid(field.Mesh, t);
                check(x, y, field.SheetCurrentXAPerM[t], field.SheetCurrentYAPerM[t]);
            }
        }
    }
}
