using CopperPath.Artwork;
using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;

namespace CopperPath.Core.Tests.Nets;

/// <summary>
/// Net names of the artwork's objects (X2 attribute .N, Gerber layer format 2021.02, 5.6.13) laid over the nets that
/// geometry alone found. Counted here from the objects and the finished nets, not from what the net finder says of them.
/// </summary>
internal sealed class NameAgreement
{
    private readonly SortedDictionary<string, List<(Net Net, PaintedObject Object)>> _placesOfName = new(StringComparer.Ordinal);

    public NameAgreement(NetList nets)
    {
        foreach (CopperLayer layer in nets.Layers)
        {
            (Net Net, PolygonNm Island)[] islands = [.. nets.Nets.SelectMany(net =>
                (net.SheetOn(layer.Number)?.Islands ?? []).Select(island => (net, island)))];
            PolygonLocator locator = new([.. islands.Select(entry => entry.Island)]);
            foreach (PaintedObject painted in layer.Artwork.Objects.Where(painted => painted.Polarity == Polarity.Dark))
            {
                string[] names = [.. painted.Labels.Nets.Where(name => name is not ("" or "N/C"))];
                if (names.Length > 0)
                {
                    Place(painted, names, islands, locator);
                }
            }
        }
    }

    /// <summary>Objects with a name.</summary>
    public int Named { get; private set; }

    /// <summary>Of them, those of which no point was found on copper.</summary>
    public int OffCopper { get; private set; }

    public int Names => _placesOfName.Count;

    /// <summary>Names whose objects lie on one net each, on which no other name lies.</summary>
    public int Agreeing => _placesOfName.Keys.Count(name => NetsOf(name) is [var net] && NamesOn(net).Count == 1);

    /// <summary>Nets with several names on them.</summary>
    public IReadOnlyList<(Net Net, IReadOnlyList<string> Names)> Merged =>
        [.. _placesOfName.Keys.SelectMany(NetsOf).Distinct().Select(net => (net, NamesOn(net))).Where(entry => entry.Item2.Count > 1)];

    /// <summary>Names on several nets, the nets by falling area, each with the objects of that name on it.</summary>
    public IReadOnlyList<(string Name, IReadOnlyList<(Net Net, PaintedObject[] Objects)> Pieces)> Split =>
        [.. _placesOfName.Where(entry => NetsOf(entry.Key).Count > 1).Select(entry => (entry.Key, PiecesOf(entry.Value)))];

    private void Place(PaintedObject painted, string[] names, (Net Net, PolygonNm Island)[] islands, PolygonLocator locator)
    {
        Named++;
        int island = RepresentativePoints.Of(painted).Select(locator.Find).FirstOrDefault(i => i >= 0, -1);
        if (island < 0)
        {
            OffCopper++;
            return;
        }

        foreach (string name in names)
        {
            if (!_placesOfName.TryGetValue(name, out List<(Net, PaintedObject)>? places))
            {
                _placesOfName[name] = places = [];
            }

            places.Add((islands[island].Net, painted));
        }
    }

    private IReadOnlyList<Net> NetsOf(string name) => [.. _placesOfName[name].Select(place => place.Net).Distinct()];

    private IReadOnlyList<string> NamesOn(Net net) =>
        [.. _placesOfName.Where(entry => entry.Value.Any(place => place.Net == net)).Select(entry => entry.Key)];

    private static IReadOnlyList<(Net Net, PaintedObject[] Objects)> PiecesOf(List<(Net Net, PaintedObject Object)> places) =>
        [.. places.GroupBy(place => place.Net, place => place.Object)
            .OrderByDescending(piece => piece.Key.AreaM2).ThenBy(piece => piece.Key.Name, StringComparer.Ordinal)
            .Select(piece => (piece.Key, piece.ToArray()))];
}
