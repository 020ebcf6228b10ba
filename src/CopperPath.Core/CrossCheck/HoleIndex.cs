using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.CrossCheck;

/// <summary>Finds a hole, slot or cut at a place or in a land.</summary>
internal sealed class HoleIndex
{
    private readonly BoxNm[] _paths;
    private readonly PointIndex _centres;

    public HoleIndex(IEnumerable<DrilledFeature> features)
    {
        _paths = [.. features.Select(feature => BoxNm.Of(feature.Path))];
        _centres = new PointIndex(_paths.Select(path => path.Centre), RegistrationSearch.SamePlaceNm);
    }

    /// <summary>A hole in the middle of the land, or else any whose path enters it, as of slots and long pads.</summary>
    public bool HasHoleIn(Landmark land) => _centres.HasNear(land.At) || Array.Exists(_paths, path => path.Touches(land.Box));

    /// <summary>A hole at the place, as near as the allowance beyond what rounds.</summary>
    public bool HasHoleAt(PointNm place, long allowanceNm) =>
        _centres.HasNear(place) || Array.Exists(_paths, path => path.GrownBy(allowanceNm).Contains(place));
}
