using CopperPath.Artwork;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Copper;

/// <summary>What the places of the plated holes tell of whether an inner layer is drawn as copper or as absent copper.</summary>
internal enum DrawnAs
{
    /// <summary>Too few holes are flashed on the layer, or what is there is as on any layer.</summary>
    Copper,

    /// <summary>Flashed at its holes are clearances and thermal reliefs, and nothing joins them.</summary>
    AbsentCopper,

    /// <summary>Lands that nothing on the layer joins, so that it would carry no current; as clearances they are small.</summary>
    Unclear,
}

/// <summary>
/// The signs of a plane drawn as absent copper: at a hole that it passes stands a disc wider than the hole's land on the
/// outer layers, at one that it meets a thermal relief, whose ring keeps clear of the wall, or nothing; and no line or
/// area of the layer comes near. Lands of a layer drawn as copper are no wider than the outer ones, and some are joined
/// by lines or areas. Common practice, no source.
/// </summary>
/// <param name="Flashed">Plated holes with a flash of the layer about them that can be compared with the land outside.</param>
/// <param name="Cleared">Those whose flash reads as a clearance or a thermal relief.</param>
/// <param name="Joined">
/// Plated holes, flashed or not, that would meet copper with a line or an area in it, were the layer drawn as copper.
/// </param>
/// <param name="LineShare">Share of the board that such copper would cover.</param>
internal sealed record DrawnPolarity(int Flashed, int Cleared, int Joined, double LineShare)
{
    /// <summary>How far a flash may lie from its hole, as where coordinates are rounded to coarse digits.</summary>
    private const long SamePlaceNm = 20_000;

    /// <summary>A clearance is at least so much wider than the land: fabricators ask for 0.2 mm about a hole's wall.</summary>
    private const long WiderNm = 100_000;

    /// <summary>Fewer flashed holes tell nothing.</summary>
    private const int FewestHoles = 3;

    /// <summary>Share of holes that must agree; connector pins and the border of the plane make up the rest.</summary>
    private const double Most = 0.8;

    /// <summary>Splits and the border of a plane cover less of a board.</summary>
    private const double LargestLineShare = 0.3;

    /// <summary>Points of a hole's wall that are looked at.</summary>
    private const int WallPoints = 16;

    public DrawnAs Answer =>
        Flashed < FewestHoles || LineShare > LargestLineShare ? DrawnAs.Copper
        : Cleared >= Most * Flashed && Joined <= (1 - Most) * Flashed ? DrawnAs.AbsentCopper
        : Joined == 0 ? DrawnAs.Unclear
        : DrawnAs.Copper;

    /// <summary>True where the flashes can not be clearances: no wider than the lands outside.</summary>
    public bool HasLandsOnly => Flashed >= FewestHoles && Cleared <= (1 - Most) * Flashed;

    /// <param name="layer">The drawing of the layer.</param>
    /// <param name="drawn">What it covers; empty where it is known to be absent copper, so that nothing joins there.</param>
    /// <param name="outer">Top and bottom, for the size of the lands.</param>
    /// <param name="holes">Round holes through the layer that are plated, or may be.</param>
    /// <param name="boardMm2">Area of the board, square millimetres.</param>
    public static DrawnPolarity Of(
        LayerArtwork layer, IReadOnlyList<PolygonNm> drawn, IReadOnlyList<LayerArtwork> outer,
        IReadOnlyList<DrilledFeature> holes, double boardMm2)
    {
        FlashesAt flashes = new(layer);
        (DrilledFeature Hole, PaintedObject Flash)[] flashed = [.. holes.Select(hole => (hole, Flash: flashes.Find(hole.Path[0])!))
            .Where(pair => pair.Flash is not null)];
        if (flashed.Length < FewestHoles)
        {
            return new DrawnPolarity(flashed.Length, 0, 0, 0);
        }

        FlashesAt[] lands = [.. outer.Select(artwork => new FlashesAt(artwork))];
        WallContact contact = new();
        int compared = 0, cleared = 0;
        foreach ((DrilledFeature hole, PaintedObject flash) in flashed)
        {
            long landNm = lands.Max(land => land.Find(hole.Path[0]) is { } found ? WidthNm(found) : 0);
            bool isRelief = !contact.Of(flash, hole);
            compared += isRelief || landNm > 0 ? 1 : 0;
            cleared += isRelief || (landNm > 0 && WidthNm(flash) >= landNm + WiderNm) ? 1 : 0;
        }

        PolygonLocator locator = new(drawn);
        HashSet<int> lined = [.. layer.Objects
            .Where(painted => painted is { Kind: not PaintKind.Flash, Polarity: Polarity.Dark, Rings.Count: > 0 })
            .Select(painted => locator.Find(painted.Rings[0][0] + painted.Offset)).Where(island => island >= 0)];
        int joined = holes.Count(hole => lined.Contains(locator.Find(hole.Path[0]))
            || (flashes.Find(hole.Path[0]) is { } flash && lined.Contains(locator.Find(flash.Rings[0][0] + flash.Offset))));
        double linedMm2 = lined.Sum(island => drawn[island].AreaNm2) * 1e-12;
        return new DrawnPolarity(compared, cleared, joined, boardMm2 > 0 ? linedMm2 / boardMm2 : 1);
    }

    private static long WidthNm(PaintedObject flash)
    {
        BoxNm box = BoxNm.Around(flash.Rings.Select(ring => BoxNm.Of(ring)));
        return Math.Max(box.WidthNm, box.HeightNm);
    }

    /// <summary>Whether a flash covers any of a hole's wall, a hair outside it; asked once for each shape and drill.</summary>
    private sealed class WallContact
    {
        private readonly Dictionary<(IReadOnlyList<PointNm[]> Rings, long DiameterNm), bool> _known = [];

        public bool Of(PaintedObject flash, DrilledFeature hole)
        {
            if (!_known.TryGetValue((flash.Rings, hole.ToolDiameterNm), out bool meets))
            {
                PolygonLocator shape = new(PolygonOperations.Union(flash.Rings));
                double radiusNm = (hole.ToolDiameterNm / 2.0) + 1_500;
                meets = Enumerable.Range(0, WallPoints).Any(i =>
                {
                    (double sin, double cos) = Math.SinCos(Math.Tau * i / WallPoints);
                    PointNm at = hole.Path[0] + new PointNm((long)Math.Round(radiusNm * cos), (long)Math.Round(radiusNm * sin));
                    return shape.Find(at - flash.Offset) >= 0;
                });
                _known.Add((flash.Rings, hole.ToolDiameterNm), meets);
            }

            return meets;
        }
    }

    /// <summary>Dark flashes of a layer by place; of several at one place the widest.</summary>
    private sealed class FlashesAt
    {
        private readonly Dictionary<(long, long), List<PaintedObject>> _byCell = [];

        public FlashesAt(LayerArtwork layer)
        {
            foreach (PaintedObject flash in layer.Objects.Where(painted =>
                painted is { Kind: PaintKind.Flash, Polarity: Polarity.Dark, Rings.Count: > 0 }))
            {
                (long, long) cell = CellOf(flash.Anchor);
                if (!_byCell.TryGetValue(cell, out List<PaintedObject>? there))
                {
                    _byCell[cell] = there = [];
                }

                there.Add(flash);
            }
        }

        public PaintedObject? Find(PointNm at)
        {
            (long x, long y) = CellOf(at);
            PaintedObject? widest = null;
            for (long dx = -1; dx <= 1; dx++)
            {
                for (long dy = -1; dy <= 1; dy++)
                {
                    foreach (PaintedObject flash in _byCell.GetValueOrDefault((x + dx, y + dy), []))
                    {
                        if (flash.Anchor.DistanceNmTo(at) <= SamePlaceNm && (widest is null || WidthNm(flash) > WidthNm(widest)))
                        {
                            widest = flash;
                        }
                    }
                }
            }

            return widest;
        }

        private static (long X, long Y) CellOf(PointNm at) =>
            ((long)Math.Floor((double)at.X / SamePlaceNm), (long)Math.Floor((double)at.Y / SamePlaceNm));
    }
}
