using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Meshing;

/// <summary>
/// The outlines of a sheet as a plane graph: edges meet at their ends only. Coordinates are whole numbers of
/// <see cref="UnitM"/> from an origin near the middle, as <see cref="ExactPredicates"/> wants them.
/// </summary>
internal sealed class OutlineGraph
{
    /// <summary>Source number of the copper itself; the marked ring i is source i + 1.</summary>
    public const int CopperSource = 0;

    // The triangulation starts from a square twice as large; its diagonal differences still fit the predicates.
    private const int CoordinateBits = ExactPredicates.DifferenceBits - 3;
    private const int FinestUnitsPerNm = 1 << 16;

    public required double UnitM { get; init; }

    public required double OriginXM { get; init; }

    public required double OriginYM { get; init; }

    public required double[] X { get; init; }

    public required double[] Y { get; init; }

    public required int[] From { get; init; }

    public required int[] To { get; init; }

    /// <summary>What changes from the right to the left of each edge, a number into <see cref="Labels"/>.</summary>
    public required int[] LabelOf { get; init; }

    public required IReadOnlyList<Contribution[]> Labels { get; init; }

    /// <summary>Welds the rings of a domain on a grid and lays them over each other; null when nothing is left.</summary>
    public static OutlineGraph? Of(SheetDomain domain, long gridNm)
    {
        var segments = new SegmentSet();
        PointNm[][] copper = [.. domain.Copper.SelectMany(piece => piece.Rings).Select(ring => OnGrid(ring, gridNm))];
        PointNm[][] marked = [.. domain.MarkedRings.Select(ring => OnGrid(ring.Ring, gridNm))];
        segments.AddRings(copper, CopperSource);
        RingAttraction attraction = new(copper, BoxNm.Around(copper.Concat(marked).Select(BoxNm.Of)));
        for (int i = 0; i < marked.Length; i++)
        {
            segments.AddRings([attraction.Attract(marked[i])], i + 1);
        }

        NodedEdges noded = NodedEdges.Of(segments);
        return noded.Count == 0 ? null : InUnits(noded, gridNm);
    }

    private static PointNm[] OnGrid(PointNm[] ring, long gridNm)
    {
        PointNm[] rounded = new PointNm[ring.Length];
        for (int i = 0; i < ring.Length; i++)
        {
            rounded[i] = new PointNm(Rounded(ring[i].X, gridNm), Rounded(ring[i].Y, gridNm));
        }

        return rounded;
    }

    private static long Rounded(long value, long grid)
    {
        long shifted = value + (grid / 2);
        return (shifted >= 0 ? shifted : shifted - grid + 1) / grid;
    }

    private static OutlineGraph InUnits(NodedEdges noded, long gridNm)
    {
        BoxNm box = BoxNm.Of(noded.Vertices);
        PointNm centre = box.Centre;
        long reach = Math.Max(1, Math.Max(box.WidthNm, box.HeightNm));
        long unitsPerGrid = gridNm * FinestUnitsPerNm;
        while (unitsPerGrid > 1 && reach * unitsPerGrid > 1L << CoordinateBits)
        {
            unitsPerGrid /= 2;
        }

        (int[] labelOf, bool[] isTurned, List<Contribution[]> labels) = Label(noded);
        int[] from = (int[])noded.From.Clone(), to = (int[])noded.To.Clone();
        for (int e = 0; e < from.Length; e++)
        {
            if (isTurned[e])
            {
                (from[e], to[e]) = (to[e], from[e]);
            }
        }

        return new OutlineGraph
        {
            UnitM = Quantities.Units.MetresFromNm((double)gridNm / unitsPerGrid),
            OriginXM = Quantities.Units.MetresFromNm((double)centre.X * gridNm),
            OriginYM = Quantities.Units.MetresFromNm((double)centre.Y * gridNm),
            X = [.. noded.Vertices.Select(p => (double)((p.X - centre.X) * unitsPerGrid))],
            Y = [.. noded.Vertices.Select(p => (double)((p.Y - centre.Y) * unitsPerGrid))],
            From = from,
            To = to,
            LabelOf = labelOf,
            Labels = labels,
        };
    }

    /// <summary>Numbers the different contributions; edges are turned so that the first of each is positive.</summary>
    private static (int[] LabelOf, bool[] IsTurned, List<Contribution[]> Labels) Label(NodedEdges noded)
    {
        int[] labelOf = new int[noded.Count];
        bool[] isTurned = new bool[noded.Count];
        List<Contribution[]> labels = [];
        Dictionary<ReadOnlyMemory<Contribution>, int> known = new(new SameContributions());
        for (int e = 0; e < noded.Count; e++)
        {
            Memory<Contribution> own = noded.Contributions.AsMemory(noded.FirstContribution[e]..noded.FirstContribution[e + 1]);
            isTurned[e] = own.Span[0].Delta < 0;
            if (isTurned[e])
            {
                own = Array.ConvertAll(own.ToArray(), c => c with { Delta = -c.Delta });
            }

            if (!known.TryGetValue(own, out labelOf[e]))
            {
                labelOf[e] = labels.Count;
                known.Add(own, labels.Count);
                labels.Add(own.ToArray());
            }
        }

        return (labelOf, isTurned, labels);
    }

    private sealed class SameContributions : IEqualityComparer<ReadOnlyMemory<Contribution>>
    {
        public bool Equals(ReadOnlyMemory<Contribution> x, ReadOnlyMemory<Contribution> y) => x.Span.SequenceEqual(y.Span);

        public int GetHashCode(ReadOnlyMemory<Contribution> contributions)
        {
            HashCode hash = default;
            foreach (Contribution each in contributions.Span)
            {
                hash.Add(each.Source);
                hash.Add(each.Delta);
            }

            return hash.ToHashCode();
        }
    }
}
