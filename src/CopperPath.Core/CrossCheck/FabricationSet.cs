using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Reading.BoardFiles;
using CopperPath.Reading.Netlist;

namespace CopperPath.CrossCheck;

/// <summary>All that was read of a board, to be held against itself.</summary>
/// <param name="Path">Folder or archive, for remarks on what is not there.</param>
/// <param name="Identified">The files and what each was taken for.</param>
/// <param name="Layers">Copper, top to bottom; at least one.</param>
/// <param name="Profile">Board outline as filled polygons; empty when none closes.</param>
/// <param name="ProfileArtwork">The drawings of the outline; empty when there is no profile file.</param>
/// <param name="Masks">Openings in the solder mask, each with the copper face it lies over.</param>
/// <param name="Drills">Drill files read.</param>
/// <param name="Nets">Nets, and where each hole meets copper.</param>
/// <param name="Netlist">The netlist, or null.</param>
internal sealed record FabricationSet(
    string Path,
    BoardIdentification Identified,
    IReadOnlyList<CopperLayer> Layers,
    IReadOnlyList<PolygonNm> Profile,
    IReadOnlyList<LayerArtwork> ProfileArtwork,
    IReadOnlyList<MaskArtwork> Masks,
    IReadOnlyList<DrillArtwork> Drills,
    NetList Nets,
    BoardNetlist? Netlist)
{
    /// <summary>Landmarks of each layer, in the order of <see cref="Layers"/>.</summary>
    public IReadOnlyList<IReadOnlyList<Landmark>> Landmarks { get; } =
        [.. Layers.Select(LandmarkFinder.Of)];

    /// <summary>Holes that no file states to be unplated: they belong into lands.</summary>
    public IReadOnlyList<HoleLanding> HolesForLands { get; } =
        [.. Nets.Holes.Where(hole => hole.Feature.Plating != Plating.NonPlated)];
}

/// <summary>Openings in the solder mask of one face.</summary>
/// <param name="IsTop">Whether it lies over the top.</param>
/// <param name="Artwork">The drawing; what is dark in it is open.</param>
internal sealed record MaskArtwork(bool IsTop, LayerArtwork Artwork);
