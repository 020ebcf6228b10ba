using System.Globalization;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Index.Strtree;

namespace CopperPath.DemoBoards.Kit;

/// <summary>Checks a filled board before it is written: no two nets too near one another, and every net in one piece.</summary>
public static class RuleCheck
{
    // Arcs of pours are drawn by chords, so a clearance may come out this much less than asked for.
    private const double ChordAllowanceMm = 0.02;

    /// <summary>What is wrong with the board; empty when it may be made.</summary>
    public static IReadOnlyList<string> Find(FilledBoard filled)
    {
        // The large pieces first: each piece is indexed once and the later, smaller ones are tried against it.
        var pieces = filled.Poured
            .OrderByDescending(pour => pour.Area.NumPoints)
            .Select(pour => new Piece(pour.Net, pour.Layer, pour.Area, $"pour of {pour.Net}"))
            .Concat(filled.Drawn.Select(copper => new Piece(copper.Net, copper.Layer, copper.Area, copper.Name, copper.Hole)))
            .ToArray();
        var faults = new List<string>();
        var joined = new DisjointSets(pieces.Length);
        for (var layer = 1; layer <= filled.Board.LayerCount; layer++)
        {
            CheckLayer(pieces, layer, joined, faults);
        }

        JoinThroughHoles(pieces, joined);
        FindBrokenNets(pieces, joined, faults);
        return faults;
    }

    private static void CheckLayer(Piece[] pieces, int layer, DisjointSets joined, List<string> faults)
    {
        var near = new STRtree<int>();
        for (var i = 0; i < pieces.Length; i++)
        {
            if (pieces[i].Layer == layer)
            {
                near.Insert(pieces[i].Area.EnvelopeInternal, i);
            }
        }

        for (var i = 0; i < pieces.Length; i++)
        {
            if (pieces[i].Layer != layer)
            {
                continue;
            }

            var reach = Shapes.Grown(pieces[i].Area, CopperRules.ClearanceMm - ChordAllowanceMm);
            var within = PreparedGeometryFactory.Prepare(reach);
            var own = PreparedGeometryFactory.Prepare(pieces[i].Area);
            foreach (var other in near.Query(reach.EnvelopeInternal).Where(other => other > i).Order())
            {
                if (pieces[i].IsOfNet && pieces[i].Net == pieces[other].Net)
                {
                    if (own.Intersects(pieces[other].Area))
                    {
                        joined.Join(i, other);
                    }
                }
                else if (within.Intersects(pieces[other].Area))
                {
                    faults.Add($"layer {layer}: {pieces[i].Name} [{pieces[i].Net}] and {pieces[other].Name} [{pieces[other].Net}] are too near{Place(pieces[other])}");
                }
            }
        }
    }

    private static void JoinThroughHoles(Piece[] pieces, DisjointSets joined)
    {
        var lands = Enumerable.Range(0, pieces.Length).Where(i => pieces[i].Hole is not null).GroupBy(i => pieces[i].Hole);
        foreach (var hole in lands)
        {
            var first = hole.First();
            foreach (var land in hole)
            {
                joined.Join(first, land);
            }
        }
    }

    private static void FindBrokenNets(Piece[] pieces, DisjointSets joined, List<string> faults)
    {
        var byNet = Enumerable.Range(0, pieces.Length).Where(i => pieces[i].IsOfNet).GroupBy(i => pieces[i].Net);
        foreach (var net in byNet)
        {
            var groups = net.GroupBy(joined.RootOf).ToList();
            foreach (var group in groups.Skip(1))
            {
                var first = pieces[group.First()];
                faults.Add($"net {net.Key} is not in one piece: {first.Name} on layer {first.Layer} is apart{Place(first)}");
            }
        }
    }

    private static string Place(Piece piece)
    {
        var centre = piece.Area.EnvelopeInternal.Centre;
        return string.Create(CultureInfo.InvariantCulture, $", around {centre.X:0.##}, {centre.Y:0.##} mm");
    }

    private sealed record Piece(string Net, int Layer, Geometry Area, string Name, PointMm? Hole = null)
    {
        public bool IsOfNet => Net.Length > 0 && Net != Pad.NotConnected;
    }
}
