namespace CopperPath.Reading.Drill;

/// <summary>The words of one line that belong to its motion, sorted by meaning.</summary>
internal sealed class DrillBlock
{
    public DrillWord? X { get; set; }

    public DrillWord? Y { get; set; }

    /// <summary>Coordinates after G85.</summary>
    public DrillWord? SlotX { get; set; }

    public DrillWord? SlotY { get; set; }

    public DrillWord? Radius { get; set; }

    public DrillWord? CentreX { get; set; }

    public DrillWord? CentreY { get; set; }

    public DrillWord? Repeat { get; set; }

    public DrillWord? Slot { get; set; }

    /// <summary>M02: repeat of the stored pattern.</summary>
    public DrillWord? PatternRepeat { get; set; }

    /// <summary>G92 or G93: zero set.</summary>
    public DrillWord? ZeroSet { get; set; }

    /// <summary>True when a tool stands in the line, so that C, F, S, B, H and Z belong to it.</summary>
    public bool HasTool { get; set; }

    public bool HasTarget => X is not null || Y is not null;

    /// <summary>Column of the first coordinate, for remarks.</summary>
    public int Column => (X ?? Y ?? SlotX ?? SlotY ?? Slot ?? Repeat ?? PatternRepeat ?? ZeroSet)?.Column ?? 1;
}
