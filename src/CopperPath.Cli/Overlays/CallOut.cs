using CopperPath.Geometry;

namespace CopperPath.Cli.Overlays;

/// <summary>A numbered remark on one spot of the board.</summary>
/// <param name="Number">Number shown at the spot and in the list, 0 to 9999.</param>
/// <param name="SpotNm">The spot itself.</param>
/// <param name="Rank">How serious the remark is.</param>
/// <param name="Text">The remark, wrapped in the list below the picture.</param>
public sealed record CallOut(int Number, PointNm SpotNm, CallOutRank Rank, string Text)
{
    /// <summary>What the remark is about as a whole, such as a slot or a group of holes; null where it is the spot alone.</summary>
    public BoxNm? ExtentNm { get; init; }
}

/// <summary>How serious a remark is; shown by the shape of its number plate, not by colour alone.</summary>
public enum CallOutRank
{
    /// <summary>For information.</summary>
    Note,

    /// <summary>Within limits, yet worth a look.</summary>
    Caution,

    /// <summary>A limit is exceeded.</summary>
    Fail,
}
