using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.Nets;

/// <summary>A pad: an object flashed (or drawn as a region with a pin) on the copper of a net.</summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="At">Flash origin, or the anchor of the region.</param>
/// <param name="Pin">Component pin where the file names it, else null.</param>
/// <param name="Shape">The drawn object; its rings plus its offset are the pad's outline.</param>
public sealed record Pad(int Layer, PointNm At, PinName? Pin, PaintedObject Shape)
{
    /// <summary>Part it probably belongs to, guessed from a table of placements where no file names its pin; else null.</summary>
    public string? GuessedPart { get; init; }

    /// <summary>Outer rings of the pad in board coordinates.</summary>
    public IEnumerable<PointNm[]> Outlines => Shape.Rings
        .Where(ring => Ring.SignedAreaNm2(ring) >= 0)
        .Select(ring => Array.ConvertAll(ring, p => p + Shape.Offset));
}

/// <summary>The copper of a net on one layer.</summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="Islands">Its separate pieces, before drilling.</param>
public sealed record NetSheet(int Layer, IReadOnlyList<PolygonNm> Islands)
{
    public double AreaM2 => Islands.Sum(island => island.AreaNm2) * 1e-18;
}

/// <summary>Copper that is one conductor: islands of all layers joined by plated barrels.</summary>
/// <param name="Name">Name claimed by the files, or a generated one that says where its copper is.</param>
/// <param name="NameIsGenerated">True when no file names the net.</param>
/// <param name="Sheets">Its copper per layer, ascending; only layers where it has any.</param>
/// <param name="Barrels">Plated holes that touch it.</param>
/// <param name="Pads">Pads on it, in layer and file order.</param>
public sealed record Net(
    string Name,
    bool NameIsGenerated,
    IReadOnlyList<NetSheet> Sheets,
    IReadOnlyList<Barrel> Barrels,
    IReadOnlyList<Pad> Pads)
{
    /// <summary>Every name an object of the artwork claims for this conductor, in the order of the alphabet.</summary>
    public IReadOnlyList<string> ClaimedNames { get; init; } = [];

    /// <summary>True where the claimed names contradict: no object that carries several of them ties all on purpose.</summary>
    public bool NamesContradict { get; init; }

    public double AreaM2 => Sheets.Sum(sheet => sheet.AreaM2);

    /// <summary>Parts guessed to stand on its pads, each once, in the order of the pads.</summary>
    public IReadOnlyList<string> GuessedParts => [.. Pads.Select(pad => pad.GuessedPart).OfType<string>().Distinct()];

    public NetSheet? SheetOn(int layer) => Sheets.FirstOrDefault(sheet => sheet.Layer == layer);
}
