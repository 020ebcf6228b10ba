using CopperPath.Copper;
using CopperPath.Geometry;
using CopperPath.Polygons;
using CopperPath.Reading.Netlist;

namespace CopperPath.Nets;

/// <summary>Finds the net at a point of a netlist.</summary>
internal sealed class NetProbe
{
    private const int Directions = 8;

    private readonly IReadOnlyList<CopperLayer> _layers;
    private readonly PolygonLocator[] _locators;
    private readonly Func<TouchedIsland, NetDraft> _netOf;
    private readonly SurveyedHole[] _barrels;
    private readonly PointIndex _barrelCentres;

    /// <param name="layers">Copper, top to bottom.</param>
    /// <param name="locators">One for each layer, over its islands.</param>
    /// <param name="survey">The drilled holes.</param>
    /// <param name="toleranceNm">How far a point may be from the hole it stands for.</param>
    /// <param name="netOf">The net an island belongs to.</param>
    public NetProbe(
        IReadOnlyList<CopperLayer> layers, PolygonLocator[] locators, HoleSurvey survey, long toleranceNm, Func<TouchedIsland, NetDraft> netOf)
    {
        (_layers, _locators, _netOf) = (layers, locators, netOf);
        _barrels = [.. survey.Holes.Where(hole => hole.Landing.IsPlated && hole.Islands.Count > 0)];
        _barrelCentres = new PointIndex(_barrels.Select(hole => BoxNm.Of(hole.Landing.Feature.Path).Centre), toleranceNm);
    }

    /// <summary>The net of the plated hole there, or of the copper there on a layer it can be reached on; else null.</summary>
    public NetDraft? NetAt(NetlistPoint point, long toleranceNm)
    {
        if (point.HoleDiameterNm is not null && _barrelCentres.Nearest(point.Location) is >= 0 and int barrel)
        {
            return _netOf(_barrels[barrel].Islands[0]);
        }

        // The copper round a hole that has no wall of its own begins at its edge.
        long holeRadiusNm = (point.HoleDiameterNm ?? 0) / 2;
        return Layers(point).SelectMany(l => Around(point.Location, toleranceNm, holeRadiusNm)
                .Select(p => _locators[l].Find(p)).Where(island => island >= 0).Take(1).Select(island => new TouchedIsland(l, island)))
            .Select(_netOf).FirstOrDefault();
    }

    /// <summary>Indices of the layers a point speaks of: the one it names, or both faces and then all between.</summary>
    private IEnumerable<int> Layers(NetlistPoint point)
    {
        int last = _layers.Count - 1;
        return point.AccessLayer > 0
            ? Enumerable.Range(0, _layers.Count).Where(l => _layers[l].Number == point.AccessLayer)
            : Enumerable.Range(0, _layers.Count).OrderBy(l => l != 0 && l != last);
    }

    private static IEnumerable<PointNm> Around(PointNm centre, long toleranceNm, long holeRadiusNm)
    {
        yield return centre;
        long[] reaches = holeRadiusNm > 0 ? [toleranceNm, holeRadiusNm + toleranceNm] : [toleranceNm];
        foreach (long reachNm in reaches)
        {
            for (int i = 0; i < Directions; i++)
            {
                (double sine, double cosine) = Math.SinCos(Math.Tau * i / Directions);
                yield return new PointNm(centre.X + (long)(reachNm * cosine), centre.Y + (long)(reachNm * sine));
            }
        }
    }
}
