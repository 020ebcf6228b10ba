namespace CopperPath.Thermal;

/// <summary>How one face of the board meets the air.</summary>
public enum FacePosture
{
    Vertical,

    /// <summary>Horizontal, looking up.</summary>
    Up,

    /// <summary>Horizontal, looking down.</summary>
    Down,
}
