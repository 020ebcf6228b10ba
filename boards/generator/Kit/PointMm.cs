namespace CopperPath.DemoBoards.Kit;

/// <summary>A point on the board, in millimetres; x runs right and y up, seen from the top side.</summary>
public readonly record struct PointMm(double X, double Y)
{
    public static PointMm operator +(PointMm a, PointMm b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>The point turned about the origin by so many quarter turns counter-clockwise (exact, no trigonometry).</summary>
    public PointMm Turned(int quarterTurns) => (((quarterTurns % 4) + 4) % 4) switch
    {
        1 => new(-Y, X),
        2 => new(-X, -Y),
        3 => new(Y, -X),
        _ => this,
    };

    public double DistanceTo(PointMm other) => double.Hypot(X - other.X, Y - other.Y);
}
