namespace CopperPath.DemoBoards.Kit;

/// <summary>One pad of a footprint, placed about the part's origin.</summary>
public sealed record FootprintPad(
    string Pin, double X, double Y, PadShape Shape, PadUse Use = PadUse.Surface, double DrillMm = 0, bool Relieved = false);

/// <summary>Where the legend names a part: on it, or beside it at the end of its x axis.</summary>
public enum LabelPlace
{
    Centre,
    LeftEnd,
    RightEnd,
}

/// <summary>A part's land pattern, with the body's outline for the legend (none when 0 wide).</summary>
public sealed record Footprint(double BodyWidthMm, double BodyHeightMm, IReadOnlyList<FootprintPad> Pads, LabelPlace Label = LabelPlace.Centre)
{
    /// <summary>Two equal pads on the x axis, pin 1 to the left: chip parts, inductors, fuses.</summary>
    public static Footprint TwoPads(
        double halfPitchMm, double padWidthMm, double padHeightMm, double bodyWidthMm, double bodyHeightMm, LabelPlace label = LabelPlace.Centre) =>
        new(
            bodyWidthMm,
            bodyHeightMm,
            [
                new("1", -halfPitchMm, 0, PadShape.Surface(padWidthMm, padHeightMm)),
                new("2", halfPitchMm, 0, PadShape.Surface(padWidthMm, padHeightMm)),
            ],
            label);
}
