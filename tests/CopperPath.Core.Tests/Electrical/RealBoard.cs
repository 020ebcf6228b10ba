using CopperPath.Artwork;
using CopperPath.Electrical;
using CopperPath.Geometry;
using CopperPath.Nets;

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

    /// <summary>One ampere between the two pads, or plated holes where there are fewer than two pads, that lie farthest apart.</summary>
    public static IReadOnlyList<BoundTerminal>? FarthestTerminals(Net net)
    {
        List<(PointNm At, Contact Contact)> places =
            [.. net.Pads.Select((pad, i) => (pad.At, new Contact($"pad {i}", [.. pad.Outlines.Select(ring => new ContactArea(pad.Layer, ring))], [])))];
        if (places.Count < 2)
        {
            places.AddRange(net.Barrels.Select((barrel, i) => (barrel.Centre, new Contact($"hole {i}", [], [barrel]))));
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

        return best.Nm == 0 ? null :
        [
            new BoundTerminal("source", [places[best.A].Contact], true, 1),
            new BoundTerminal("sink", [places[best.B].Contact], true, -1),
        ];
    }
}
