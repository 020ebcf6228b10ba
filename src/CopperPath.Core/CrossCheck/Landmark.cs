using CopperPath.Geometry;

namespace CopperPath.CrossCheck;

/// <summary>A small thing on a layer that answers to a thing of another file: a land to its hole, an opening to its pad.</summary>
/// <param name="At">Its place: where it was flashed, or its middle.</param>
/// <param name="Box">Its extent.</param>
/// <param name="Kind">What it is.</param>
/// <param name="IsRound">Whether it fills its box as a circle or an octagon does.</param>
/// <param name="Function">Function that the file claims for it, such as <c>ViaPad</c>, or null.</param>
internal readonly record struct Landmark(PointNm At, BoxNm Box, LandmarkKind Kind, bool IsRound, string? Function)
{
    /// <summary>As wide as high: round, square or octagonal, as lands of holes mostly are.</summary>
    public bool IsEven => Math.Abs(Box.WidthNm - Box.HeightNm) * 50 <= Box.WidthNm;
}

/// <summary>What a landmark is.</summary>
internal enum LandmarkKind
{
    /// <summary>Copper, or an opening of the mask: a flash, or a small region.</summary>
    Land,

    /// <summary>A place kept free of copper: a flash of clear polarity, or a round hole in an area.</summary>
    Clearance,
}
