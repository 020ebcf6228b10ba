using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.CrossCheck;

/// <summary>
/// Openings of the solder mask against the pads of their face, and of the other where they do not fit. Openings over
/// holes fit both faces: where there are others, those are asked.
/// </summary>
internal static class MaskRegistration
{
    /// <summary>
    /// Share of openings over pads from which a mask is in place. Sound boards show 0.76 and more: openings over unplated
    /// holes and bare board make up the rest.
    /// </summary>
    private const double InPlace = 0.5;

    /// <summary>Below this the mask fits nothing here.</summary>
    private const double FitsNothing = 0.25;

    /// <summary>Fewer openings may all be over holes and marks.</summary>
    private const int FewestOpenings = 6;

    public static IEnumerable<Diagnostic> Run(FabricationSet set)
    {
        HoleIndex holes = new(set.Drills.SelectMany(drill => drill.Features));
        foreach (MaskArtwork mask in set.Masks)
        {
            Landmark[] all = [.. LandmarkFinder.Of(mask.Artwork).Where(landmark => landmark.Kind == LandmarkKind.Land)];
            Landmark[] overNoHole = [.. all.Where(opening => !holes.HasHoleIn(opening))];
            PointNm[] openings = Lands(overNoHole.Length >= FewestOpenings ? overNoHole : all);
            int own = mask.IsTop ? 0 : set.Layers.Count - 1;
            PointNm[] pads = Lands(set.Landmarks[own]);
            Registration found = RegistrationSearch.Of(openings, pads, InPlace);
            if (!found.CanTell || found.IsInPlace(InPlace))
            {
                continue;
            }

            int layer = set.Layers[own].Number, other = set.Layers[set.Layers.Count - 1 - own].Number;
            PointNm[] others = Lands(set.Landmarks[set.Layers.Count - 1 - own]);
            Registration across = own == set.Layers.Count - 1 - own ? found : RegistrationSearch.Of(openings, others, InPlace);
            if (across.IsInPlace(InPlace) && across.InPlace > 2 * found.InPlace)
            {
                yield return SetRemark.Doubt(SetCode.MaskOfOtherFace, mask.Artwork.File,
                    $"openings over {across.InPlace} of {across.Possible} pads of layer {other} and {found.InPlace} of {found.Possible} of layer {layer}, whose mask it is",
                    "a mask over the pads of its own face: two files may be exchanged");
            }
            else if (found.Misfit is { } misfit)
            {
                yield return SetRemark.Doubt(SetCode.MaskOff, mask.Artwork.File,
                    $"mask openings, whose pads on layer {layer} lie {misfit.Against($"{found.Explained} of {found.Possible} openings")}; {found.InPlace} are over a pad as the files stand",
                    "openings over the pads of their face: mask or copper may be shifted");
            }
            else if (openings.Length >= FewestOpenings && 2 * pads.Length >= openings.Length && found.InPlace < FitsNothing * found.Possible)
            {
                yield return SetRemark.Doubt(SetCode.MaskOff, mask.Artwork.File,
                    $"{openings.Length} mask openings, of which {found.InPlace} are over one of the {pads.Length} pads of layer {layer}",
                    "openings over the pads of their face: mask or copper may be of another layer or board");
            }
        }
    }

    private static PointNm[] Lands(IEnumerable<Landmark> landmarks) =>
        [.. landmarks.Where(landmark => landmark.Kind == LandmarkKind.Land).Select(landmark => landmark.At)];
}
