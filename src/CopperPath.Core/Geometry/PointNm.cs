using CopperPath.Quantities;

namespace CopperPath.Geometry;

/// <summary>
/// A point of the fabrication data in integer nanometres. Exact geometry lives in this type only;
/// it becomes metres once, in Meshing (see docs/decisions/0001-integer-nanometres.md).
/// Readers keep |X| and |Y| at or below <see cref="LimitNm"/>, so that cross products of
/// differences fit 128-bit integers with room to spare.
/// </summary>
/// <param name="X">Abscissa in nanometres, to the right.</param>
/// <param name="Y">Ordinate in nanometres, upwards.</param>
public readonly record struct PointNm(long X, long Y)
{
    /// <summary>Largest coordinate a reader accepts: 10 m, far beyond any panel.</summary>
    public const long LimitNm = 10_000_000_000;

    /// <summary>The point nearest to a place in metres, such as that of a finding.</summary>
    public static PointNm FromMetres(double xM, double yM) =>
        new((long)Math.Round(Units.NmFromMetres(xM)), (long)Math.Round(Units.NmFromMetres(yM)));

    public static PointNm operator +(PointNm a, PointNm b) => new(a.X + b.X, a.Y + b.Y);

    public static PointNm operator -(PointNm a, PointNm b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>Distance to another point, in nanometres.</summary>
    public double DistanceNmTo(PointNm other) => Math.Sqrt(Square(X - other.X) + Square(Y - other.Y));

    private static double Square(double value) => value * value;
}
