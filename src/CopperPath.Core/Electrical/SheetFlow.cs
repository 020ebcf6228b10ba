using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>
/// Potential and currents of one sheet on the way to a result: the current that follows from the approximate potential,
/// and the balanced one made from it. Their difference bounds the error of both (see <see cref="CurrentTubes"/>).
/// </summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="Mesh">The triangles.</param>
/// <param name="Conductance">Siemens per square, bare and tinned.</param>
/// <param name="PotentialV">At each vertex, volts; not a number on copper no terminal reaches.</param>
/// <param name="PotentialBulgeV">The potential's bulge along the edge opposite each corner, volts.</param>
/// <param name="SourceX">Mean of -G grad V in each triangle, amperes per metre; 0 in contacts and barrels.</param>
/// <param name="SourceY">The same, y.</param>
/// <param name="BalancedX">Balanced sheet current without the eddies along edges, amperes per metre.</param>
/// <param name="BalancedY">The same, y.</param>
/// <param name="EddyBulgeA">The eddies along the edge opposite each corner, amperes.</param>
internal sealed record SheetFlow(
    int Layer,
    SheetMesh Mesh,
    SheetConductance Conductance,
    double[] PotentialV,
    double[] PotentialBulgeV,
    double[] SourceX,
    double[] SourceY,
    double[] BalancedX,
    double[] BalancedY,
    double[] EddyBulgeA)
{
    /// <summary>Heat the potential's own current makes together with another flow's in the same sheet, watts.</summary>
    public double SourceProductW(SheetFlow other) => Sum((g, t) => LinearCurrent.MeanProduct(SourceIn(g, t), other.SourceIn(g, t)));

    /// <summary>Heat the balanced current makes, watts: never less than the true one.</summary>
    public double BalancedLossW() => Sum((g, t) =>
    {
        LinearCurrent balanced = BalancedIn(g, t);
        return LinearCurrent.MeanProduct(balanced, balanced);
    });

    /// <summary>Products of the potential's current with another flow's, and of the balanced one with itself, in a triangle, watts.</summary>
    public (double SourceW, double BalancedW) ProductsW(SheetFlow other, int triangle)
    {
        if (Mesh.IsHeld(triangle))
        {
            return (0, 0);
        }

        TriangleGradient g = new(Mesh, triangle);
        double squares = g.AreaM2 / Conductance.Of(Mesh, triangle);
        LinearCurrent balanced = BalancedIn(g, triangle);
        return (squares * LinearCurrent.MeanProduct(SourceIn(g, triangle), other.SourceIn(g, triangle)),
            squares * LinearCurrent.MeanProduct(balanced, balanced));
    }

    /// <summary>
    /// Magnitude of the current midway between the potential's and the balanced one, at each corner of each triangle,
    /// amperes per metre; 0 in contacts and barrels. By the two bounds its error is half the distance of the two.
    /// </summary>
    public double[] CornerCurrentsAPerM()
    {
        double[] atCorners = new double[Mesh.Triangles.Length];
        for (int t = 0; t < Mesh.TriangleCount; t++)
        {
            if (Mesh.IsHeld(t))
            {
                continue;
            }

            LinearCurrent middle = MiddleIn(t);
            for (int corner = 0; corner < 3; corner++)
            {
                atCorners[(3 * t) + corner] = middle.MagnitudeAtCorner(corner);
            }
        }

        return atCorners;
    }

    /// <summary>Mean square of that current over each triangle, (A/m)2; 0 in contacts and barrels.</summary>
    public double[] MeanSquaresA2PerM2()
    {
        double[] squares = new double[Mesh.TriangleCount];
        for (int t = 0; t < squares.Length; t++)
        {
            if (!Mesh.IsHeld(t))
            {
                LinearCurrent middle = MiddleIn(t);
                squares[t] = LinearCurrent.MeanProduct(middle, middle);
            }
        }

        return squares;
    }

    /// <summary>
    /// Product with the current of another flow along an edge of a plain triangle over the sheet conductance, mean of the
    /// edge's ends, and product of the magnitudes, watts per square metre.
    /// </summary>
    public (double ProductWPerM2, double MagnitudeWPerM2) ProductsAlong(SheetFlow other, int edge)
    {
        int triangle = edge / 3;
        if (Mesh.IsHeld(triangle))
        {
            return (0, 0);
        }

        LinearCurrent own = MiddleIn(triangle), others = ReferenceEquals(this, other) ? own : other.MiddleIn(triangle);
        double product = 0, magnitude = 0;
        foreach (int corner in (ReadOnlySpan<int>)[edge % 3, (edge + 1) % 3])
        {
            (double x, double y) = own.AtCorner(corner);
            (double otherX, double otherY) = others.AtCorner(corner);
            product += ((x * otherX) + (y * otherY)) / 2;
            magnitude += own.MagnitudeAtCorner(corner) * others.MagnitudeAtCorner(corner) / 2;
        }

        double sheetS = Conductance.Of(Mesh, triangle);
        return (product / sheetS, magnitude / sheetS);
    }

    /// <summary>Heat the difference of the two currents would make in a triangle, watts; summed, the distance of the bounds.</summary>
    public double ErrorW(int triangle)
    {
        TriangleGradient g = new(Mesh, triangle);
        LinearCurrent error = ErrorIn(g, triangle);
        return LinearCurrent.MeanProduct(error, error) * g.AreaM2 / Conductance.Of(Mesh, triangle);
    }

    /// <summary>The same as a product with another flow in the same sheet, summed.</summary>
    public double ErrorProductW(SheetFlow other) => Sum((g, t) => LinearCurrent.MeanProduct(ErrorIn(g, t), other.ErrorIn(g, t)));

    private LinearCurrent MiddleIn(int t)
    {
        TriangleGradient g = new(Mesh, t);
        return (BalancedIn(g, t) + SourceIn(g, t)) * 0.5;
    }

    private LinearCurrent ErrorIn(in TriangleGradient g, int t) => BalancedIn(g, t) - SourceIn(g, t);

    private LinearCurrent BalancedIn(in TriangleGradient g, int t) =>
        new LinearCurrent(BalancedX[t], BalancedY[t]) + LinearCurrent.AlongBulges(g, EddyBulgeA.AsSpan(3 * t, 3), 1).Turned;

    private LinearCurrent SourceIn(in TriangleGradient g, int t)
    {
        LinearCurrent curved = LinearCurrent.AlongBulges(g, PotentialBulgeV.AsSpan(3 * t, 3), -Conductance.Of(Mesh, t));
        (double meanX, double meanY) = curved.Mean;
        return new LinearCurrent(SourceX[t] - meanX, SourceY[t] - meanY) + curved;
    }

    private double Sum(Func<TriangleGradient, int, double> meanSquareOf)
    {
        double sumW = 0;
        for (int t = 0; t < Mesh.TriangleCount; t++)
        {
            if (!Mesh.IsHeld(t))
            {
                TriangleGradient g = new(Mesh, t);
                sumW += meanSquareOf(g, t) * g.AreaM2 / Conductance.Of(Mesh, t);
            }
        }

        return sumW;
    }
}
