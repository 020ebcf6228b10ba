using System.Globalization;
using CopperPath.Geometry;

namespace CopperPath.Nets;

/// <summary>How far a netlist and the rebuilt nets agree. The netlist names and checks; it never joins copper.</summary>
/// <param name="File">The netlist.</param>
/// <param name="Shift">What was added to its coordinates to bring its holes onto the drilled ones.</param>
/// <param name="Points">Points that name a net or say that there is none.</param>
/// <param name="PointsOnCopper">Those with copper there.</param>
/// <param name="Names">Net names with at least one point on copper.</param>
/// <param name="NamesInAgreement">Names with all their points on one rebuilt net that bears no other of its names.</param>
/// <param name="MergedNets">Rebuilt nets that bear several of its names.</param>
/// <param name="SplitNames">Names on several rebuilt nets.</param>
/// <param name="NetsNamed">Rebuilt nets that have their name from it, because the artwork names them not.</param>
/// <param name="PinsNamed">Pads that have their pin from it.</param>
/// <param name="NamesUnlikeArtwork">Nets that the artwork names otherwise.</param>
public sealed record NetlistAgreement(
    string File,
    PointNm Shift,
    int Points,
    int PointsOnCopper,
    int Names,
    int NamesInAgreement,
    int MergedNets,
    int SplitNames,
    int NetsNamed,
    int PinsNamed,
    int NamesUnlikeArtwork)
{
    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"{File}: {PointsOnCopper} of {Points} points on copper; {NamesInAgreement} of {Names} names agree with the copper ({MergedNets} nets bear several names, {SplitNames} names are on several nets); {NetsNamed} nets and {PinsNamed} pads named by it; {NamesUnlikeArtwork} nets named otherwise in the artwork");
}
