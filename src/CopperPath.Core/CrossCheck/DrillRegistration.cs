using CopperPath.Diagnostics;
using CopperPath.Nets;

namespace CopperPath.CrossCheck;

/// <summary>
/// Holes against lands and clearances. Where a drill file fits no layer, but all of them when it is moved, it lies off;
/// where it fits some layers and another only when that is moved, the layer lies off.
/// </summary>
internal static class DrillRegistration
{
    /// <summary>
    /// Share of a drill file's holes on landmarks from which a layer is in place. Sound boards show 0.98 and more; one
    /// moved by a pitch of a regular array may keep more than half.
    /// </summary>
    private const double InPlace = 0.9;

    /// <summary>
    /// Pairs of drill file and layer of which a misfit is looked for: it takes a moment each, and a set with more of them
    /// is in doubt already.
    /// </summary>
    private const int MostSearches = 32;

    public static IEnumerable<Diagnostic> Run(FabricationSet set)
    {
        IGrouping<string, HoleLanding>[] drills = [.. set.HolesForLands.GroupBy(hole => hole.File)];
        HashSet<int> accused = [];
        int searches = 0;
        foreach (IGrouping<string, HoleLanding> drill in drills)
        {
            if (searches >= MostSearches)
            {
                yield break;
            }

            Registration[] found = [.. Enumerable.Range(0, set.Layers.Count).Select(l => Of(drill, set, l))];
            searches += found.Count(registration => registration.CanTell && !registration.IsInPlace(InPlace));
            int[] off = [.. Enumerable.Range(0, found.Length).Where(l => found[l].Misfit is not null)];
            if (off.Length == 0)
            {
                continue;
            }

            Misfit first = found[off[0]].Misfit!;
            bool areAlike = off.All(l => found[l].Misfit!.IsLike(first, RegistrationSearch.SamePlaceNm));
            if (areAlike && !found.Any(registration => registration.IsInPlace(InPlace)))
            {
                Registration best = off.Select(l => found[l]).MaxBy(registration => registration.Explained)!;
                yield return SetRemark.Doubt(SetCode.DrillsOff, drill.Key,
                    $"drills that lie {first.Inverse().Against($"{best.Explained} of {best.Possible} pads")}; {best.InPlace} are on a pad as the files stand",
                    "the holes of a drill file in the middle of their lands");
                continue;
            }

            foreach (int l in off.Where(accused.Add))
            {
                yield return SetRemark.Doubt(SetCode.LayerOff, set.Layers[l].File,
                    $"copper layer {set.Layers[l].Number}, whose lands lie {found[l].Misfit!.Against($"{found[l].Explained} of {found[l].Possible} holes of {drill.Key}")}; {found[l].InPlace} meet as the files stand",
                    "the lands of every layer around the same holes");
            }
        }
    }

    /// <summary>How the lands and clearances of a layer lie on the holes of a drill file.</summary>
    public static Registration Of(IEnumerable<HoleLanding> drill, FabricationSet set, int layer)
    {
        int number = set.Layers[layer].Number;
        return RegistrationSearch.Of(
            [.. drill.Where(hole => hole.Layers.Any(landing => landing.Layer == number)).Select(hole => hole.Centre)],
            [.. set.Landmarks[layer].Select(landmark => landmark.At)], InPlace);
    }
}
