using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Meshing;
using CopperPath.Nets;
using CopperPath.Polygons;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>
/// A test piece cut from copper of one ohm per square, so that a resistance in ohms is a number of squares. Lengths in
/// millimetres.
/// </summary>
internal sealed class Plate
{
    public const double CopperM = 35e-6;
    public const double PlatingM = 25e-6;

    private readonly SortedDictionary<int, List<PointNm[]>> _copper = [];
    private readonly List<Barrel> _barrels = [];
    private readonly List<BoundTerminal> _terminals = [];

    /// <summary>Length of barrel between the middles of two layers, metres.</summary>
    public double BarrelLengthM { get; init; } = 1.6e-3;

    public int LayerCount { get; init; } = 1;

    public IReadOnlyList<BoundTerminal> Terminals => _terminals;

    public Stackup Stack => new(
        [.. Enumerable.Repeat(CopperM, LayerCount)],
        [.. Enumerable.Repeat(BarrelLengthM - CopperM, LayerCount - 1)],
        PlatingM,
        ResistivityOhmM: CopperM);

    public Net Net => new("piece", false,
        [.. _copper.Select(layer => new NetSheet(layer.Key, PolygonOperations.Union(layer.Value)))], _barrels, []);

    public Plate Copper(int layer, params IReadOnlyList<(double X, double Y)>[] rings)
    {
        if (!_copper.TryGetValue(layer, out List<PointNm[]>? list))
        {
            _copper[layer] = list = [];
        }

        list.AddRange(rings.Select(Ring));
        return this;
    }

    public Plate Rectangle(double x0, double y0, double x1, double y1, int layer = 1) => Copper(layer, Box(x0, y0, x1, y1));

    /// <summary>A terminal whose areas are one contact of the part.</summary>
    public Plate Terminal(string name, double currentA, params IReadOnlyList<(double X, double Y)>[] areas) =>
        Terminal(1, name, currentA, areas);

    public Plate Terminal(int layer, string name, double currentA, params IReadOnlyList<(double X, double Y)>[] areas)
    {
        ContactArea[] places = [.. areas.Select(area => new ContactArea(layer, Ring(area)))];
        _terminals.Add(new BoundTerminal(name, [new Contact(name, places, [])], IsJoined: true, currentA));
        return this;
    }

    /// <summary>A terminal of layer 1 whose areas are contacts of their own, bonded by the part.</summary>
    public Plate Joined(string name, double currentA, params IReadOnlyList<(double X, double Y)>[] areas)
    {
        Contact[] contacts = [.. areas.Select((area, i) => new Contact($"{name} {i + 1}", [new ContactArea(1, Ring(area))], []))];
        _terminals.Add(new BoundTerminal(name, contacts, IsJoined: true, currentA));
        return this;
    }

    /// <summary>A plated slot between two points, or a hole when they are one, that joins all layers.</summary>
    public Plate Slot(double x0, double y0, double x1, double y1, double diameter)
    {
        PointNm[] path = x0 == x1 && y0 == y1 ? [Nm((x0, y0))] : [Nm((x0, y0)), Nm((x1, y1))];
        DrilledFeature feature = new(path, (long)Math.Round(diameter * 1e6), Plating.Plated, null, SourcePosition.WholeFile("piece"));
        _barrels.Add(new Barrel(feature, HoleOutline.Of(feature, 0), [.. Enumerable.Range(1, LayerCount)], false));
        return this;
    }

    /// <param name="demand">Mesh and accuracy; what a review asks for unless stated.</param>
    public ConductionResult Solve(SolveDemand? demand = null)
    {
        ConductionResult result = ConductionSolver.Solve(Net, _terminals, [], Stack, demand ?? SolveDemand.Default);
        result.HasFields.ShouldBeTrue(result.Explanation);
        return result;
    }

    /// <summary>One mesh without refinement, so that solves with other currents share it.</summary>
    public static SolveDemand OneMesh(double maximumEdgeM) => new(new MeshQuality(maximumEdgeM)) { RoundLimit = 1 };

    public static (double X, double Y)[] Box(double x0, double y0, double x1, double y1) =>
        [(x0, y0), (x1, y0), (x1, y1), (x0, y1)];

    /// <summary>A regular polygon with the area of the circle.</summary>
    public static (double X, double Y)[] Circle(double x, double y, double radius, int segments = 720)
    {
        double step = 2 * Math.PI / segments;
        return Arc(x, y, radius * Math.Sqrt(step / Math.Sin(step)), 0, 2 * Math.PI - step, segments - 1);
    }

    /// <summary>Points on an arc, both ends included; angles in radians.</summary>
    public static (double X, double Y)[] Arc(double x, double y, double radius, double from, double to, int segments) =>
        [.. Enumerable.Range(0, segments + 1).Select(i => from + ((to - from) * i / segments))
            .Select(angle => (x + (radius * Math.Cos(angle)), y + (radius * Math.Sin(angle))))];

    private static PointNm[] Ring(IReadOnlyList<(double X, double Y)> corners) => [.. corners.Select(Nm)];

    private static PointNm Nm((double X, double Y) corner) =>
        new((long)Math.Round(corner.X * 1e6), (long)Math.Round(corner.Y * 1e6));
}
