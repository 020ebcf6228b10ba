using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>
/// How a stamp or block is turned before it is put in place: mirror first, then rotation, then scale, all about
/// its own origin. A 2 by 2 matrix that keeps angles and changes all lengths by the same factor.
/// </summary>
internal readonly record struct Similarity(double XX, double XY, double YX, double YY)
{
    public static readonly Similarity Identity = new(1, 0, 0, 1);

    /// <summary>Factor on all lengths, positive.</summary>
    public double Scale => Math.Sqrt(Math.Abs(Determinant));

    /// <summary>True when left and right are exchanged, so counter-clockwise becomes clockwise.</summary>
    public bool Mirrors => Determinant < 0;

    private double Determinant => (XX * YY) - (XY * YX);

    /// <param name="flipX">Negate x first.</param>
    /// <param name="flipY">Negate y first.</param>
    /// <param name="rotationDeg">Counter-clockwise, degrees; multiples of 90 are exact.</param>
    /// <param name="scale">Positive factor.</param>
    public static Similarity Of(bool flipX, bool flipY, double rotationDeg, double scale)
    {
        (double sine, double cosine) = Angle.SinCosDeg(rotationDeg);
        double x = flipX ? -scale : scale;
        double y = flipY ? -scale : scale;
        return new Similarity(x * cosine, -y * sine, x * sine, y * cosine);
    }

    /// <summary>The transformation that applies <paramref name="first"/>, then this one.</summary>
    public Similarity After(Similarity first) => new(
        (XX * first.XX) + (XY * first.YX),
        (XX * first.XY) + (XY * first.YY),
        (YX * first.XX) + (YY * first.YX),
        (YX * first.XY) + (YY * first.YY));

    public Vector Apply(Vector v) => new((XX * v.X) + (XY * v.Y), (YX * v.X) + (YY * v.Y));

    public PointNm Apply(PointNm p) => Apply(new Vector(p.X, p.Y)).Rounded();
}
