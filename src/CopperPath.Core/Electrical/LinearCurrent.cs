namespace CopperPath.Electrical;

/// <summary>
/// A sheet current that changes linearly over a triangle, by its values in the middles of the edges opposite corners
/// 0, 1 and 2, amperes per metre.
/// </summary>
internal readonly record struct LinearCurrent(double X0, double Y0, double X1, double Y1, double X2, double Y2)
{
    /// <summary>A uniform current.</summary>
    public LinearCurrent(double x, double y)
        : this(x, y, x, y, x, y)
    {
    }

    /// <summary>
    /// The gradient of bulges along the three edges (see <see cref="QuadraticSheet"/>), times a factor.
    /// </summary>
    /// <param name="g">The triangle.</param>
    /// <param name="bulges">Bulge opposite each corner.</param>
    /// <param name="factor">What the gradient is multiplied by.</param>
    public static LinearCurrent AlongBulges(in TriangleGradient g, ReadOnlySpan<double> bulges, double factor)
    {
        double s0 = 2 * factor * (bulges[1] + bulges[2] - bulges[0]);
        double s1 = 2 * factor * (bulges[2] + bulges[0] - bulges[1]);
        double s2 = 2 * factor * (bulges[0] + bulges[1] - bulges[2]);
        return new LinearCurrent(s0 * g.X0, s0 * g.Y0, s1 * g.X1, s1 * g.Y1, s2 * g.X2, s2 * g.Y2);
    }

    /// <summary>Mean over the triangle.</summary>
    public (double X, double Y) Mean => ((X0 + X1 + X2) / 3, (Y0 + Y1 + Y2) / 3);

    /// <summary>The current turned a quarter clockwise: a stream function's current from its gradient.</summary>
    public LinearCurrent Turned => new(Y0, -X0, Y1, -X1, Y2, -X2);

    /// <summary>Value at corner 0, 1 or 2: the middles of the two edges that meet there less that of the third.</summary>
    public (double X, double Y) AtCorner(int corner) => (
        X0 + X1 + X2 - (2 * (corner == 0 ? X0 : corner == 1 ? X1 : X2)),
        Y0 + Y1 + Y2 - (2 * (corner == 0 ? Y0 : corner == 1 ? Y1 : Y2)));

    /// <summary>Its magnitude.</summary>
    public double MagnitudeAtCorner(int corner)
    {
        (double x, double y) = AtCorner(corner);
        return Math.Sqrt((x * x) + (y * y));
    }

    public static LinearCurrent operator +(LinearCurrent a, LinearCurrent b) =>
        new(a.X0 + b.X0, a.Y0 + b.Y0, a.X1 + b.X1, a.Y1 + b.Y1, a.X2 + b.X2, a.Y2 + b.Y2);

    public static LinearCurrent operator -(LinearCurrent a, LinearCurrent b) =>
        new(a.X0 - b.X0, a.Y0 - b.Y0, a.X1 - b.X1, a.Y1 - b.Y1, a.X2 - b.X2, a.Y2 - b.Y2);

    /// <summary>Mean over the triangle of the product of two currents, exactly.</summary>
    public static double MeanProduct(in LinearCurrent a, in LinearCurrent b) =>
        ((a.X0 * b.X0) + (a.Y0 * b.Y0) + (a.X1 * b.X1) + (a.Y1 * b.Y1) + (a.X2 * b.X2) + (a.Y2 * b.Y2)) / 3;

    public static LinearCurrent operator *(LinearCurrent a, double factor) =>
        new(a.X0 * factor, a.Y0 * factor, a.X1 * factor, a.Y1 * factor, a.X2 * factor, a.Y2 * factor);
}
