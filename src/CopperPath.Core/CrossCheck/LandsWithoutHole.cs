using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Nets;

namespace CopperPath.CrossCheck;

/// <summary>
/// Lands made for holes where there is none. Files with attributes say which lands are made for holes; in others a land
/// as wide as high at one place of both faces is, if it joins other copper (fiducials and test lands do not), and so is
/// every round land between the faces, where nothing can be soldered. Common practice, no source.
/// </summary>
internal sealed class LandsWithoutHole
{
    private static readonly string[] _forHoles = ["ViaPad", "ComponentPad"];

    /// <summary>Share of the lands from which holes are missing, and no land is merely odd.</summary>
    private const double FaultOfSet = 0.01;

    /// <summary>More copper than a land of one size on each layer, which a hole may join, has more to it than lands.</summary>
    private const double LandAlone = 1.2;

    private readonly FabricationSet _set;
    private readonly Lazy<Dictionary<(int, PointNm), Net>> _nets;
    private readonly HashSet<PointNm>[] _evenOnFace;

    private LandsWithoutHole(FabricationSet set)
    {
        _set = set;
        _nets = new(NetsOfPads);
        _evenOnFace = [EvenLands(set.Landmarks[0]), EvenLands(set.Landmarks[^1])];
    }

    public static IEnumerable<Diagnostic> Run(FabricationSet set)
    {
        LandsWithoutHole check = new(set);
        HoleIndex holes = new(set.Drills.SelectMany(drill => drill.Features));
        HashSet<PointNm> lands = [];
        List<PointNm> empty = [];
        string? file = null;
        for (int l = 0; l < set.Layers.Count; l++)
        {
            foreach (Landmark land in set.Landmarks[l].Where(land => land.Kind == LandmarkKind.Land && !lands.Contains(land.At)))
            {
                // What joins the land is asked last, and of few lands.
                (bool isForHole, bool mustBeJoined) = check.IsForHole(land, l);
                bool hasHole = isForHole && holes.HasHoleIn(land);
                if (isForHole && (hasHole || !mustBeJoined || check.IsJoined(land)))
                {
                    lands.Add(land.At);
                    if (!hasHole)
                    {
                        empty.Add(land.At);
                        file ??= set.Layers[l].File;
                    }
                }
            }
        }

        if (empty.Count > 0)
        {
            FormattableString found = $"{empty.Count} of {lands.Count} lands made for holes without one, {SetRemark.At(empty)}";
            const string Expected = "a hole in every land of a via or a leaded part: holes, or a drill file, may be missing";
            yield return empty.Count >= FaultOfSet * lands.Count ? SetRemark.Doubt(SetCode.LandsWithoutHole, file!, found, Expected)
                : SetRemark.Warning(SetCode.LandsWithoutHole, file!, found, Expected);
        }
    }

    private (bool IsForHole, bool MustBeJoined) IsForHole(Landmark land, int l)
    {
        string? function = land.Function?.Split(',')[0];
        if (function is not (null or "Other" or "Material"))
        {
            return (_forHoles.Contains(function), false);
        }

        bool isFace = l == 0 || l == _set.Layers.Count - 1;
        return isFace
            ? (_set.Layers.Count > 1 && land.IsEven && Array.TrueForAll(_evenOnFace, face => face.Contains(land.At)), true)
            : (land.IsRound, false);
    }

    /// <summary>Whether the land has copper beyond itself, here or on the other face.</summary>
    private bool IsJoined(Landmark land) =>
        new[] { _set.Layers[0], _set.Layers[^1] }.Any(face => _nets.Value.TryGetValue((face.Number, land.At), out Net? net)
            && net.AreaM2 > LandAlone * _set.Layers.Count * 1e-18 * land.Box.WidthNm * land.Box.HeightNm);

    private Dictionary<(int, PointNm), Net> NetsOfPads()
    {
        Dictionary<(int, PointNm), Net> byPlace = [];
        foreach (Net net in _set.Nets.Nets)
        {
            foreach (Pad pad in net.Pads)
            {
                byPlace.TryAdd((pad.Layer, pad.At), net);
            }
        }

        return byPlace;
    }

    private static HashSet<PointNm> EvenLands(IReadOnlyList<Landmark> landmarks) =>
        [.. landmarks.Where(land => land.Kind == LandmarkKind.Land && land.IsEven).Select(land => land.At)];
}
