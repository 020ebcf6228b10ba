namespace CopperPath.Thermal;

/// <summary>How the board is held.</summary>
public enum BoardPosture
{
    /// <summary>Top face up.</summary>
    Horizontal,

    /// <summary>Upright, the ordinate of the files pointing up.</summary>
    Vertical,
}

/// <summary>How one face of the board meets the air.</summary>
public enum FacePosture
{
    Vertical,

    /// <summary>Horizontal, looking up.</summary>
    Up,

    /// <summary>Horizontal, looking down.</summary>
    Down,
}
