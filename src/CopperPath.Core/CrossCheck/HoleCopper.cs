using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.CrossCheck;

/// <summary>
/// The copper at the wall of each hole that may be plated. Drawings show it whole around the wall, or keep clear of it,
/// and show it on both outer faces of the hole: an external land is required around every plated hole, and it may be
/// broken by drilling, not by drawing (IPC-2221 and IPC-6012, from memory).
/// </summary>
internal static class HoleCopper
{
    /// <summary>
    /// Share of a layer's holes from which a fault is one of the set and not of a single land. Sound boards show none at all.
    /// </summary>
    private const double FaultOfSet = 0.1;

    public static IEnumerable<Diagnostic> Run(FabricationSet set)
    {
        foreach (int layer in set.Layers.Select(layer => layer.Number))
        {
            string file = set.Layers.First(copper => copper.Number == layer).File;
            (HoleLanding Hole, LayerLanding Landing)[] meeting = [.. set.HolesForLands.Where(hole => hole.MeetsCopper)
                .SelectMany(hole => hole.Layers.Where(landing => landing.Layer == layer).Select(landing => (hole, landing)))];
            PointNm[] broken = [.. meeting.Where(pair => pair.Landing.Share > 0 && !pair.Landing.IsWhole).Select(pair => pair.Hole.Centre)];
            int withCopper = meeting.Count(pair => pair.Landing.Share > 0);
            if (broken.Length > 0)
            {
                yield return Remark(SetCode.BrokenRings, file, broken.Length >= FaultOfSet * withCopper,
                    $"{broken.Length} of {withCopper} holes that break out of their copper on layer {layer}, {SetRemark.At(broken)}",
                    "copper all around the wall of a plated hole, or clear of it: drills or layer may be shifted");
            }

            PointNm[] landless = [.. meeting.Where(pair => pair.Landing.Share == 0 && IsFace(pair.Hole, layer)).Select(pair => pair.Hole.Centre)];
            int facing = meeting.Count(pair => IsFace(pair.Hole, layer));
            if (landless.Length > 0)
            {
                yield return Remark(SetCode.HolesWithoutLand, file, landless.Length >= FaultOfSet * facing,
                    $"{landless.Length} of {facing} holes without land on the outer layer {layer}, {SetRemark.At(landless)}",
                    "a land on both faces of a plated hole: the layer may be cut short, shifted or another's");
            }
        }

        HoleLanding[] stated = [.. set.Nets.Holes.Where(hole => hole.Feature.Plating == Plating.Plated)];
        PointNm[] bare = [.. stated.Where(hole => !hole.MeetsCopper).Select(hole => hole.Centre)];
        if (bare.Length > 0 && bare.Length >= FaultOfSet * stated.Length)
        {
            yield return SetRemark.Doubt(SetCode.HolesInTheBare, stated.First(hole => !hole.MeetsCopper).File,
                $"{bare.Length} of {stated.Length} plated holes that meet no copper on any layer, {SetRemark.At(bare)}",
                "plated holes in lands: the drill numbers may be misread, or a layer missing");
        }
    }

    private static Diagnostic Remark(string code, string file, bool isDoubt, FormattableString found, string expected) =>
        isDoubt ? SetRemark.Doubt(code, file, found, expected) : SetRemark.Warning(code, file, found, expected);

    private static bool IsFace(HoleLanding hole, int layer) => hole.Layers[0].Layer == layer || hole.Layers[^1].Layer == layer;
}
