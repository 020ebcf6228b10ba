using System.Runtime.CompilerServices;
using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>A point or direction in nanometres before it is rounded to the grid.</summary>
internal readonly record struct Vector(double X, double Y)
{
    public double Length => Math.Sqrt((X * X) + (Y * Y));

    public double AngleRad => Math.Atan2(Y, X);

    public static Vector operator +(Vector a, Vector b) => new(a.X + b.X, a.Y + b.Y);

    public static Vector operator -(Vector a, Vector b) => new(a.X - b.X, a.Y - b.Y);

    public static Vector operator *(double factor, Vector v) => new(factor * v.X, factor * v.Y);

    public static Vector Of(PointNm p) => new(p.X, p.Y);

    public PointNm Rounded() => new(Round(X), Round(Y));

    /// <summary>Halves go away from zero, so that a shape symmetric about the origin stays symmetric.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static long Round(double value) => (long)(value + Math.CopySign(0.5, value));
}

/// <summary>Sine and cosine of angles in degrees, exact at multiples of 90.</summary>
internal static class Angle
{
    public static (double Sine, double Cosine) SinCosDeg(double degrees)
    {
        double turned = Math.IEEERemainder(degrees, 360);
        return turned switch
        {
            0 => (0, 1),
            90 => (1, 0),
            -90 => (-1, 0),
            180 or -180 => (0, -1),
            _ => Math.SinCos(turned * Math.PI / 180),
        };
    }
}
