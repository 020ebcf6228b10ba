namespace CopperPath.DemoBoards.Kit;

/// <summary>A pad's outline about its own centre: a rectangle with rounded corners, in millimetres.</summary>
/// <param name="WidthMm">Extent along x, above 0.</param>
/// <param name="HeightMm">Extent along y, above 0.</param>
/// <param name="CornerMm">Corner radius, from 0 to half the lesser extent; the full half makes a disc or a stadium.</param>
public readonly record struct PadShape(double WidthMm, double HeightMm, double CornerMm)
{
    public bool IsDisc => WidthMm == HeightMm && CornerMm == WidthMm / 2;

    public static PadShape Disc(double diameterMm) => new(diameterMm, diameterMm, diameterMm / 2);

    /// <summary>A surface pad as footprints commonly draw it: corners rounded by a quarter of the short side, 0.25 mm at most.</summary>
    public static PadShape Surface(double widthMm, double heightMm) =>
        new(widthMm, heightMm, Math.Round(Math.Min(0.25, Math.Min(widthMm, heightMm) / 4), 3));

    public PadShape Turned(int quarterTurns) => quarterTurns % 2 == 0 ? this : new(HeightMm, WidthMm, CornerMm);

    /// <summary>The outline moved outward by a margin on all sides (inward when negative).</summary>
    public PadShape Grown(double marginMm)
    {
        var width = Math.Round(WidthMm + 2 * marginMm, 4);
        var height = Math.Round(HeightMm + 2 * marginMm, 4);
        return new(width, height, IsDisc ? width / 2 : Math.Max(0, Math.Round(CornerMm + marginMm, 4)));
    }
}
