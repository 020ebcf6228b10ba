using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.CrossCheck;

/// <summary>Finds a hole, slot or cut in a land: by its middle and the corners of its path, in cells of a millimetre.</summary>
internal sealed class HoleIndex
{
    private const long CellNm = Units.NmPerMm;

    private readonly ILookup<(long, long), PointNm> _cells;

    public HoleIndex(IEnumerable<DrilledFeature> features) =>
        _cells = features.SelectMany(feature => feature.Path.Append(BoxNm.Of(feature.Path).Centre)).ToLookup(place => Cell(place));

    /// <summary>Whether a hole begins, turns or has its middle in the land or beside its place.</summary>
    public bool HasHoleIn(Landmark land) => HasHoleIn(land.Box) || HasHoleAt(land.At, RegistrationSearch.SamePlaceNm);

    /// <summary>Whether one does so within an allowance of the place along both axes.</summary>
    public bool HasHoleAt(PointNm place, long allowanceNm) => HasHoleIn(BoxNm.Of([place]).GrownBy(allowanceNm));

    private bool HasHoleIn(BoxNm box)
    {
        (long firstX, long firstY) = Cell(new PointNm(box.MinX, box.MinY));
        (long lastX, long lastY) = Cell(new PointNm(box.MaxX, box.MaxY));
        for (long x = firstX; x <= lastX; x++)
        {
            for (long y = firstY; y <= lastY; y++)
            {
                if (_cells[(x, y)].Any(box.Contains))
                {
                    return true;
                }
            }
        }

        return false;
    }

    private static (long, long) Cell(PointNm place) =>
        ((long)Math.Floor((double)place.X / CellNm), (long)Math.Floor((double)place.Y / CellNm));
}
