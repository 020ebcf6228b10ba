using CopperPath.Artwork;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;
using CopperPath.Polygons;

namespace CopperPath.Core.Tests.Electrical;

/// <summary>A board of the shared data as solves need it: its nets, its cuts and a plain stack of layers.</summary>
internal sealed class RealBoard
{
    /// <summary>Boards of the shared data, all of them.</summary>
    public static readonly string[] Names =
    [
        "bitaxe-ultra", "eez-aux-ps", "eez-dcp405-r4", "esp32-poe-b2", "micro-driver-v2", "opsis", "picopd-v12",
        "simplefoc-powershield", "sonata-one-r09", "thunderscope-r53", "vesc-4",
    ];

    private RealBoard(Board board)
    {
        Nets = board.Nets.ShouldNotBeNull().Nets;
        Cuts = BoardRebuilder.UnplatedCuts(board);
        int layers = board.Nets.Layers.Count;

        // The files state no thicknesses; those of a usual 1.6 mm board (common practice, no source).
        Stack = new Stackup(
            [.. Enumerable.Repeat(35e-6, layers)],
            [.. Enumerable.Repeat((1.6e-3 - (layers * 35e-6)) / (layers - 1), layers - 1)],
            PlatingM: 20e-6,
            ResistivityOhmM: 1.7241e-8);
    }

    public IReadOnlyList<Net> Nets { get; }

    public IReadOnlyList<DrilledFeature> Cuts { get; }

    public Stackup Stack { get; }

    public static RealBoard Open(string name) =>
        new(BoardRebuilder.Rebuild(SharedData.Require("boards-open", name), null, new StageClock(null)));

    /// <summary>
    /// One ampere between the two pads that lie farthest apart. A net whose pads all lie in one place, as the lands of a
    /// mounting hole do, offers its plated holes and spots of 0.5 mm on the outermost corners of its copper instead.
    /// </summary>
    public static IReadOnlyList<BoundTerminal> FarthestTerminals(Net net)
    {
        List<(PointNm At, Contact Contact)> places = [.. net.Pads.Select((pad, i) => (At: pad.At, Contact: Spot($"pad {i}", pad.Layer, [.. pad.Outlines])))];
        if (places.Select(place => place.At).Distinct().Count() < 2)
        {
            places.Clear();
            places.AddRange(net.Barrels.Select((barrel, i) => (barrel.Centre, new Contact($"hole {i}", [], [barrel]))));
            foreach (NetSheet sheet in net.Sheets)
            {
                PointNm[] corners = [.. sheet.Islands.SelectMany(island => island.Outer)];
                places.AddRange(new[] { corners.MinBy(p => p.X + p.Y), corners.MaxBy(p => p.X + p.Y), corners.MinBy(p => p.X - p.Y), corners.MaxBy(p => p.X - p.Y) }
                    .Select(corner => (corner, Spot("corner", sheet.Layer, [HoleOutline.Circle(corner, 250_000)]))));
            }
        }

        (double Nm, int A, int B) best = (0, 0, 0);
        for (int a = 0; a < places.Count; a++)
        {
            for (int b = a + 1; b < places.Count; b++)
            {
                double distanceNm = places[a].At.DistanceNmTo(places[b].At);
                best = distanceNm > best.Nm ? (distanceNm, a, b) : best;
            }
        }

        return
        [
            new BoundTerminal("source", [places[best.A].Contact], true, 1),
            new BoundTerminal("sink", [places[best.B].Contact], true, -1),
        ];
    }

    /// <summary>The linear equations of a net between its farthest terminals, on triangles no larger than stated.</summary>
    public ConductanceSystem EquationsOf(Net net, double maximumEdgeM)
    {
        IReadOnlyList<BoundTerminal> terminals = FarthestTerminals(net);
        List<Contact> contacts = [.. terminals.SelectMany(terminal => terminal.Contacts)];
        NetMesh mesh = NetMesh.Build(net, contacts, Cuts, Stack, SolveDemand.Default.StartingMesh with { MaximumEdgeM = maximumEdgeM }).Mesh.ShouldNotBeNull();
        NodeMap nodes = NodeMap.Build(net, mesh, terminals);
        return ConductanceSystem.Assemble(mesh, nodes, BarrelLink.Of(net, nodes, Stack), terminals, Stack);
    }

    /// <summary>A pad drawn in several pieces is one area.</summary>
    private static Contact Spot(string name, int layer, PointNm[][] rings) =>
        new(name, [.. PolygonOperations.Union(rings).Select(piece => new ContactArea(layer, piece.Outer))], []);
}
