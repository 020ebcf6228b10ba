using System.Numerics;
using System.Runtime.InteropServices;

namespace CopperPath.Polygons;

/// <summary>
/// Leaves out of a crowded box the sources that cannot be seen there: those with the same border within the box as a
/// later one, those whose straight border lies inside another's, and those that cover the whole box.
/// </summary>
/// <remarks>
/// Coincident and nearly coincident borders stay together however small the boxes are that they are cut into; here
/// all but the outermost go at once. What is left out is covered by what stays, before rounding and after. Where it
/// comes to sight its border crosses another; that is outside the box and <see cref="CoverGrid.Margin"/> more, and hot,
/// so no border that is seen ends unseen. Of borders that coincide the later one stays, and that is the one across
/// which <see cref="CellCoverage"/> says that something changes, in this box and in all others.
/// </remarks>
internal sealed class Thinning(Segment[] segments, CoverageRule rule)
{
    /// <summary>Kept from the other border, in nanometres: far more than the rounding of what is computed.</summary>
    private const double Inside = 0.01;

    /// <summary>Lists of this length are short enough.</summary>
    private const int Enough = 8;

    private const int MostRounds = 12;

    private readonly List<Member> _members = [];
    private readonly List<Straight> _straight = [];
    private readonly List<LineKey> _keys = [];
    private readonly Dictionary<int, int> _lastOfHash = [];
    private readonly List<int> _kept = [];
    private PixelBox _box;
    private PixelBox _wide;

    /// <summary>State of the box from all sources that were left out, after <see cref="Thin"/>.</summary>
    public int State { get; private set; }

    /// <summary>Units of work done since the thinning was made.</summary>
    public long Work { get; private set; }

    /// <summary>What is left of a list; it holds until the next call.</summary>
    /// <param name="list">What passes the box, as a grid lists it.</param>
    /// <param name="box">The box.</param>
    /// <param name="state">State of the box from sources that are not in the list.</param>
    public ReadOnlySpan<int> Thin(ReadOnlySpan<int> list, PixelBox box, int state)
    {
        _box = box;
        _wide = new PixelBox(box.MinX - CoverGrid.Margin, box.MinY - CoverGrid.Margin,
            box.MaxX + CoverGrid.Margin, box.MaxY + CoverGrid.Margin);
        State = state;
        Work += 4 * list.Length;
        ReadSources(list);
        DropWholes();
        DropEquals();
        DropInner();
        _kept.Clear();
        foreach (ref readonly Member member in CollectionsMarshal.AsSpan(_members))
        {
            if (!member.IsDropped && !rule.Hides(State, member.Source))
            {
                _kept.AddRange(list[member.First..member.End]);
            }
        }

        return CollectionsMarshal.AsSpan(_kept);
    }

    private void ReadSources(ReadOnlySpan<int> list)
    {
        _members.Clear();
        _keys.Clear();
        for (int i = 0; i < list.Length;)
        {
            int first = i, firstKey = _keys.Count, winding = 0, passing = -1, source = segments[list[i]].Source;
            for (; i < list.Length && !CoverGrid.IsWinding(list[i]) && segments[list[i]].Source == source; i++)
            {
                ref readonly Segment s = ref segments[list[i]];
                if (s.Touches(_wide))
                {
                    passing = list[i];
                    _keys.Add(LineKey.Of(s, _wide));
                }
            }

            if (i < list.Length && CoverGrid.IsWinding(list[i]))
            {
                winding = CoverGrid.WindingOf(list[i++]);
            }

            _members.Add(new Member(first, i, source, winding, firstKey, _keys.Count, passing));
        }
    }

    /// <summary>Sources without a border in the box, and those whose border has them on both sides.</summary>
    private void DropWholes()
    {
        _straight.Clear();
        Span<Member> members = CollectionsMarshal.AsSpan(_members);
        for (int m = 0; m < members.Length; m++)
        {
            ref Member member = ref members[m];
            int borders = member.EndKey - member.FirstKey;
            if (borders > 1 || (borders == 1 && _keys[member.FirstKey].HasEnd))
            {
                continue;
            }

            (int left, int right) = (member.Winding, member.Winding);
            if (borders == 1)
            {
                ref readonly Segment s = ref segments[member.Passing];
                bool isCornerLeft = s.SideOfCorner(_box.MinX, _box.MinY) > 0;
                (left, right) = isCornerLeft ? (left, left - s.Delta) : (left + s.Delta, left);
            }

            if (left != 0 && right != 0)
            {
                State = rule.With(State, member.Source);
            }

            if ((left != 0) == (right != 0))
            {
                member.IsDropped = true;
            }
            else if (Straight.TryMake(segments[member.Passing], left != 0, m, _wide, out Straight straight))
            {
                _straight.Add(straight);
            }
        }
    }

    /// <summary>Sources with the same border and winding number as a later one that hides them.</summary>
    private void DropEquals()
    {
        _lastOfHash.Clear();
        Span<Member> members = CollectionsMarshal.AsSpan(_members);
        ReadOnlySpan<LineKey> keys = CollectionsMarshal.AsSpan(_keys);
        Work += keys.Length;
        for (int m = members.Length - 1; m >= 0; m--)
        {
            ref Member member = ref members[m];
            if (member.IsDropped)
            {
                continue;
            }

            ReadOnlySpan<LineKey> own = keys[member.FirstKey..member.EndKey];
            HashCode hash = default;
            hash.Add(member.Winding);
            foreach (LineKey key in own)
            {
                hash.Add(key);
            }

            int code = hash.ToHashCode();
            if (!_lastOfHash.TryAdd(code, m))
            {
                ref readonly Member last = ref members[_lastOfHash[code]];
                member.IsDropped = last.Winding == member.Winding && own.SequenceEqual(keys[last.FirstKey..last.EndKey]);
            }
        }
    }

    /// <summary>
    /// Sources with one straight border that lies inside another such source. The others are those that reach
    /// deepest at the middle and the corners of the box, round after round while that helps.
    /// </summary>
    private void DropInner()
    {
        Span<Member> members = CollectionsMarshal.AsSpan(_members);
        _straight.RemoveAll(straight => _members[straight.Member].IsDropped);
        Span<Straight> straight = CollectionsMarshal.AsSpan(_straight);
        double x = (_wide.MaxX - _wide.MinX) / 2.0, y = (_wide.MaxY - _wide.MinY) / 2.0;
        ReadOnlySpan<(double X, double Y)> probes = [(0, 0), (-x, -y), (x, -y), (-x, y), (x, y)];
        for (int round = 0; round < MostRounds && straight.Length > Enough; round++)
        {
            int before = straight.Length;
            foreach ((double probeX, double probeY) in probes)
            {
                int deepest = Deepest(straight, probeX, probeY);
                if (deepest < 0)
                {
                    continue;
                }

                straight[deepest].IsPicked = true;
                Straight outer = straight[deepest];
                int kept = 0;
                Work += 2 * straight.Length;
                for (int i = 0; i < straight.Length; i++)
                {
                    Straight inner = straight[i];
                    bool isHidden = inner.Member != outer.Member && inner.LiesInside(outer)
                        && rule.Hides(rule.With(0, members[outer.Member].Source), members[inner.Member].Source);
                    members[inner.Member].IsDropped = isHidden;
                    if (!isHidden)
                    {
                        straight[kept++] = inner;
                    }
                }

                straight = straight[..kept];
            }

            if (straight.Length > before - (before / 16))
            {
                return;
            }
        }
    }

    private static int Deepest(ReadOnlySpan<Straight> straight, double x, double y)
    {
        int deepest = -1;
        double most = double.NegativeInfinity;
        for (int i = 0; i < straight.Length; i++)
        {
            double depth = straight[i].DepthOf(x, y);
            if (!straight[i].IsPicked && depth > most)
            {
                deepest = i;
                most = depth;
            }
        }

        return deepest;
    }

    /// <summary>A source of the list: its entries, winding number around the corner, and borders in the box.</summary>
    private record struct Member(int First, int End, int Source, int Winding, int FirstKey, int EndKey, int Passing)
    {
        public bool IsDropped;
    }

    /// <summary>What of a segment matters in the box: the line it lies on, and each end in the box or near it.</summary>
    private readonly record struct LineKey(int Form, int Delta, long P, long Q, long R, long S)
    {
        public bool HasEnd => Form != 0;

        public static LineKey Of(in Segment s, PixelBox wide)
        {
            (bool startsHere, bool endsHere) = (wide.Contains(s.Ax, s.Ay), wide.Contains(s.Bx, s.By));
            if (startsHere && endsHere)
            {
                return new LineKey(3, s.Delta, s.Ax, s.Ay, s.Bx, s.By);
            }

            long divisor = CommonDivisor(s.Dx, Math.Abs(s.Dy)), dx = s.Dx / divisor, dy = s.Dy / divisor;
            if (startsHere || endsHere)
            {
                return startsHere ? new LineKey(1, s.Delta, s.Ax, s.Ay, dx, dy) : new LineKey(2, s.Delta, s.Bx, s.By, dx, dy);
            }

            Int128 place = ((Int128)dx * s.Ay) - ((Int128)dy * s.Ax);
            return new LineKey(0, s.Delta, dx, dy, (long)(place >> 64), unchecked((long)(ulong)place));
        }

        /// <summary>Of two numbers that are not negative and not both 0: by halving and subtracting, quicker than dividing.</summary>
        private static long CommonDivisor(long a, long b)
        {
            if (a == 0 || b == 0)
            {
                return a + b;
            }

            int twos = BitOperations.TrailingZeroCount(a | b);
            a >>= BitOperations.TrailingZeroCount(a);
            while (b != 0)
            {
                b >>= BitOperations.TrailingZeroCount(b);
                (a, b) = (Math.Min(a, b), Math.Abs(a - b));
            }

            return a << twos;
        }
    }

    /// <summary>A source that covers one side of a straight line through the box; places are told from its middle.</summary>
    private record struct Straight(int Member, double Nx, double Ny, double C, double FromX, double FromY, double ToX, double ToY)
    {
        public bool IsPicked;

        public static bool TryMake(in Segment s, bool coversLeft, int member, PixelBox wide, out Straight straight)
        {
            double halfX = (wide.MaxX - wide.MinX) / 2.0, halfY = (wide.MaxY - wide.MinY) / 2.0;
            double scale = (coversLeft ? 1 : -1) / Math.Sqrt(((double)s.Dx * s.Dx) + ((double)s.Dy * s.Dy));
            double nx = -s.Dy * scale, ny = s.Dx * scale;
            double c = -(nx * (s.Ax - wide.MinX - halfX)) - (ny * (s.Ay - wide.MinY - halfY));
            (double from, double to) = (double.NegativeInfinity, double.PositiveInfinity);
            Clip(-c * nx, -ny, halfX, ref from, ref to);
            Clip(-c * ny, nx, halfY, ref from, ref to);
            straight = new Straight(member, nx, ny, c,
                (-c * nx) - (from * ny), (-c * ny) + (from * nx), (-c * nx) - (to * ny), (-c * ny) + (to * nx));
            return from <= to && double.IsFinite(from) && double.IsFinite(to);
        }

        /// <summary>How far a place lies inside what is covered, nanometres; negative outside.</summary>
        public readonly double DepthOf(double x, double y) => (Nx * x) + (Ny * y) + C;

        public readonly bool LiesInside(in Straight outer) =>
            outer.DepthOf(FromX, FromY) >= Inside && outer.DepthOf(ToX, ToY) >= Inside
            && DepthOf(outer.FromX, outer.FromY) < 0 && DepthOf(outer.ToX, outer.ToY) < 0;

        private static void Clip(double at, double step, double half, ref double from, ref double to)
        {
            if (step == 0)
            {
                if (Math.Abs(at) > half)
                {
                    to = double.NegativeInfinity;
                }

                return;
            }

            double a = (-half - at) / step, b = (half - at) / step;
            from = Math.Max(from, Math.Min(a, b));
            to = Math.Min(to, Math.Max(a, b));
        }
    }
}
