namespace CopperPath.DemoBoards.Kit;

/// <summary>One pad of a footprint, placed about the part's origin.</summary>
public sealed record FootprintPad(
    string Pin, double X, double Y, PadShape Shape, PadUse Use = PadUse.Surface, double DrillMm = 0, bool Relieved = false);

/// <summary>A part's land pattern, with the body's outline for the legend.</summary>
public sealed record Footprint(double BodyWidthMm, double BodyHeightMm, IReadOnlyList<FootprintPad> Pads)
{
    /// <summary>Two equal pads on the x axis, pin 1 to the left: chip parts, inductors, fuses.</summary>
    public static Footprint TwoPads(double halfPitchMm, double padWidthMm, double padHeightMm, double bodyWidthMm, double bodyHeightMm) =>
        new(
            bodyWidthMm,
            bodyHeightMm,
            [
                new("1", -halfPitchMm, 0, PadShape.Surface(padWidthMm, padHeightMm)),
                new("2", halfPitchMm, 0, PadShape.Surface(padWidthMm, padHeightMm)),
            ]);
}
