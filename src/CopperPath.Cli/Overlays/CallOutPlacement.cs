using SkiaSharp;

namespace CopperPath.Cli.Overlays;

/// <summary>
/// Finds places for number plates: near their spots where the copper leaves room, else in the gutters around the view.
/// A greedy search in number order, then passes in which each plate may move to a better place while the others stay
/// and pairs in each other's way are taken up and laid again.
/// Hard rules: no plate on another plate, on any ring, on what any call-out is about, or outside the frame. All else is a cost to be kept low.
/// </summary>
internal sealed class CallOutPlacement
{
    private const int Passes = 4;
    private const int MostRelays = 200;
    private const int Directions = 24;
    private const double CrossingCost = 30;
    private const double LeaderOverPlateCost = 60;
    private const double LeaderOverRingCost = 12;
    private const double ShadedCopperCost = 14;
    private const double QuietCopperCost = 1.5;
    private const double ViaCost = 20;
    private const double GutterCost = 1;

    private static readonly double[] DistancesInPlates = [1.3, 1.7, 2.2, 2.8, 3.6, 4.6, 6];

    private readonly SKRect _view;
    private readonly CoverMap _cover;
    private readonly SKSize _plate;
    private readonly float _gap;
    private readonly SKPoint[] _spots;
    private readonly float[] _rings;
    private readonly CallOutObstacles _obstacles;
    private readonly SKPoint?[] _centres;
    private readonly IReadOnlyList<SKPoint> _slots;
    private int _relaysLeft = MostRelays;

    private CallOutPlacement(
        SKRect view, CoverMap cover, SKSize plate, float gap, SKPoint[] spots, float[] rings, CallOutObstacles obstacles, IReadOnlyList<SKPoint> slots)
    {
        _view = view;
        _cover = cover;
        _plate = plate;
        _gap = gap;
        _spots = spots;
        _rings = rings;
        _obstacles = obstacles;
        _centres = new SKPoint?[spots.Length];
        _slots = slots;
    }

    /// <summary>Centres of the plates, one per spot; null where no place was free.</summary>
    public static SKPoint?[] Find(
        SKRect view, CoverMap cover, SKSize plate, float gap, SKPoint[] spots, float[] rings, CallOutObstacles obstacles, IReadOnlyList<SKPoint> slots)
    {
        CallOutPlacement search = new(view, cover, plate, gap, spots, rings, obstacles, slots);
        for (int pass = 0; pass < Passes; pass++)
        {
            bool hasMoved = false;
            for (int i = 0; i < spots.Length; i++)
            {
                SKPoint? better = search.BestFor(i);
                hasMoved |= better != search._centres[i];
                search._centres[i] = better;
            }

            hasMoved |= search.Untangle();
            if (!hasMoved)
            {
                break;
            }
        }

        return search._centres;
    }

    /// <summary>Ring radii: full size where spots stand apart, smaller in clusters so that rings stay distinct.</summary>
    public static float[] RingRadii(SKPoint[] spots, float fullPx, float leastPx)
    {
        float[] radii = new float[spots.Length];
        for (int i = 0; i < spots.Length; i++)
        {
            float nearest = float.PositiveInfinity;
            for (int j = 0; j < spots.Length; j++)
            {
                nearest = j == i ? nearest : Math.Min(nearest, SKPoint.Distance(spots[i], spots[j]));
            }

            radii[i] = Math.Clamp(0.45f * nearest, leastPx, fullPx);
        }

        return radii;
    }

    /// <summary>Slot centres in the gutters, row by row outwards; slots keep the gap from each other.</summary>
    public static IReadOnlyList<SKPoint> GutterSlots(SKRect frame, SKSize plate, float gap, int rows)
    {
        List<SKPoint> slots = [];
        float pitchX = plate.Width + gap;
        float pitchY = plate.Height + gap;
        for (int row = rows - 1; row >= 0; row--)
        {
            float insetX = gap + (plate.Width / 2) + (row * pitchX);
            float insetY = gap + (plate.Height / 2) + (row * pitchY);
            AddLine(frame.Left + insetX, frame.Right - insetX, pitchX, x =>
            {
                slots.Add(new SKPoint(x, frame.Top + insetY));
                slots.Add(new SKPoint(x, frame.Bottom - insetY));
            });
            AddLine(frame.Top + insetY + pitchY, frame.Bottom - insetY - pitchY, pitchY, y =>
            {
                slots.Add(new SKPoint(frame.Left + insetX, y));
                slots.Add(new SKPoint(frame.Right - insetX, y));
            });
        }

        return slots;
    }

    /// <summary>Where the leader leaves the plate: the crossing of its edge with the line to the spot.</summary>
    public static SKPoint PlateEdgeTowards(SKPoint spot, SKPoint centre, SKSize plate)
    {
        float dx = spot.X - centre.X;
        float dy = spot.Y - centre.Y;
        float shrink = Math.Max(Math.Abs(dx) / (plate.Width / 2), Math.Abs(dy) / (plate.Height / 2));
        return shrink <= 1 ? spot : new SKPoint(centre.X + (dx / shrink), centre.Y + (dy / shrink));
    }

    /// <summary>Where the leader leaves the ring.</summary>
    public static SKPoint RingEdgeTowards(SKPoint centre, SKPoint spot, float radius)
    {
        float distance = SKPoint.Distance(centre, spot);
        return distance <= radius ? spot : Along(spot, centre, radius / distance);
    }

    /// <summary>Where the way from outside to a spot in a box enters the box.</summary>
    public static SKPoint BoxEdgeTowards(SKPoint from, SKPoint spot, SKRect box)
    {
        float enter = 0;
        float leave = 1;
        return Clips(spot.X - from.X, box.Left - from.X, box.Right - from.X, ref enter, ref leave)
            && Clips(spot.Y - from.Y, box.Top - from.Y, box.Bottom - from.Y, ref enter, ref leave) ? Along(from, spot, enter) : spot;
    }

    public static SKRect BoxAround(SKPoint centre, SKSize size) =>
        SKRect.Create(centre.X - (size.Width / 2), centre.Y - (size.Height / 2), size.Width, size.Height);

    private static void AddLine(float from, float to, float pitch, Action<float> add)
    {
        int count = to < from ? 0 : (int)((to - from) / pitch) + 1;
        float spread = count > 1 ? (to - from) / (count - 1) : 0;
        for (int i = 0; i < count; i++)
        {
            add(count == 1 ? (from + to) / 2 : from + (i * spread));
        }
    }

    private bool Untangle()
    {
        bool hasMoved = false;
        for (int i = 0; i < _spots.Length; i++)
        {
            for (int j = i + 1; j < _spots.Length; j++)
            {
                hasMoved |= _centres[i] is SKPoint a && _centres[j] is SKPoint b
                    && MutualCost(i, a, j, b) > 0 && (Relay(i, j) || Relay(j, i));
            }
        }

        return hasMoved;
    }

    // Takes two plates up and lays them again in the order given; keeps the result only if it is better. Hundreds of
    // call-outs on one spot can not all be untangled, so the tries are counted.
    private bool Relay(int first, int second)
    {
        if (_relaysLeft == 0)
        {
            return false;
        }

        _relaysLeft--;
        (SKPoint? oldFirst, SKPoint? oldSecond) = (_centres[first], _centres[second]);
        double oldCost = CostNow(first) + CostNow(second);
        (_centres[first], _centres[second]) = (null, null);
        _centres[first] = BestFor(first);
        _centres[second] = BestFor(second);
        if (_centres[first] is not null && _centres[second] is not null
            && CostNow(first) + CostNow(second) < oldCost - 1e-6)
        {
            return true;
        }

        (_centres[first], _centres[second]) = (oldFirst, oldSecond);
        return false;
    }

    private double CostNow(int i)
    {
        SKPoint centre = _centres[i]!.Value;
        return PlaceCost(i, centre) + LeaderCost(i, centre, double.PositiveInfinity);
    }

    private double PlaceCost(int i, SKPoint centre)
    {
        SKRect box = BoxAround(centre, _plate);
        double length = SKPoint.Distance(centre, _spots[i]) / _plate.Height;
        if (!_view.Contains(box))
        {
            return length + GutterCost;
        }

        (double shaded, double quiet, double vias) = _cover.Shares(box);
        return length + (ShadedCopperCost * shaded) + (QuietCopperCost * quiet) + (ViaCost * vias);
    }

    private SKPoint? BestFor(int i)
    {
        IEnumerable<(double LeastCost, SKPoint Centre)> candidates =
            _slots.Concat(PlacesNear(i)).Select(centre => (PlaceCost(i, centre), centre));
        SKPoint? best = null;
        double bestCost = double.PositiveInfinity;
        foreach ((double leastCost, SKPoint centre) in candidates.OrderBy(c => c.LeastCost))
        {
            if (leastCost >= bestCost)
            {
                break;
            }

            if (!IsFree(i, centre))
            {
                continue;
            }

            double cost = leastCost + LeaderCost(i, centre, bestCost - leastCost);
            if (cost < bestCost)
            {
                bestCost = cost;
                best = centre;
            }
        }

        return best;
    }

    private IEnumerable<SKPoint> PlacesNear(int i)
    {
        foreach (double distance in DistancesInPlates)
        {
            double reachX = (distance * _plate.Height) + ((_plate.Width - _plate.Height) / 2);
            double reachY = distance * _plate.Height;
            for (int d = 0; d < Directions; d++)
            {
                // Half a step off the axes: slanted leaders read better against mostly square artwork.
                (double sin, double cos) = Math.SinCos((d + 0.5) * 2 * Math.PI / Directions);
                SKPoint centre = new((float)(_spots[i].X + (reachX * cos)), (float)(_spots[i].Y + (reachY * sin)));
                if (_view.Contains(BoxAround(centre, _plate)))
                {
                    yield return centre;
                }
            }
        }
    }

    private bool IsFree(int i, SKPoint centre)
    {
        for (int j = 0; j < _spots.Length; j++)
        {
            if (j != i && _centres[j] is SKPoint other
                && Math.Abs(other.X - centre.X) < _plate.Width + _gap - 0.01f
                && Math.Abs(other.Y - centre.Y) < _plate.Height + _gap - 0.01f)
            {
                return false;
            }

            float dx = Math.Max(0, Math.Abs(_spots[j].X - centre.X) - (_plate.Width / 2));
            float dy = Math.Max(0, Math.Abs(_spots[j].Y - centre.Y) - (_plate.Height / 2));
            float clear = _rings[j] + (_gap / 2);
            if ((dx * dx) + (dy * dy) < clear * clear)
            {
                return false;
            }
        }

        return _obstacles.LeaveFree(BoxAround(centre, _plate));
    }

    private double LeaderCost(int i, SKPoint centre, double limit)
    {
        SKPoint start = RingEdgeTowards(centre, _spots[i], _rings[i]);
        SKPoint end = PlateEdgeTowards(_spots[i], centre, _plate);
        double cost = 0;
        for (int j = 0; j < _spots.Length && cost < limit; j++)
        {
            if (j != i)
            {
                cost += DistanceToSegment(_spots[j], start, end) < _rings[j] + 1 ? LeaderOverRingCost : 0;
                cost += _centres[j] is SKPoint other ? MutualCost(i, centre, j, other) : 0;
            }
        }

        return cost;
    }

    // What two laid call-outs cost each other: crossing leaders, a leader under the other's plate.
    private double MutualCost(int i, SKPoint centre, int j, SKPoint other)
    {
        SKPoint start = RingEdgeTowards(centre, _spots[i], _rings[i]);
        SKPoint end = PlateEdgeTowards(_spots[i], centre, _plate);
        SKPoint otherStart = RingEdgeTowards(other, _spots[j], _rings[j]);
        SKPoint otherEnd = PlateEdgeTowards(_spots[j], other, _plate);
        double cost = SegmentsCross(start, end, otherStart, otherEnd) ? CrossingCost : 0;
        cost += SegmentMeets(start, end, BoxAround(other, _plate)) ? LeaderOverPlateCost : 0;
        cost += SegmentMeets(otherStart, otherEnd, BoxAround(centre, _plate)) ? LeaderOverPlateCost : 0;
        return cost;
    }

    private static SKPoint Along(SKPoint a, SKPoint b, float part) => new(a.X + ((b.X - a.X) * part), a.Y + ((b.Y - a.Y) * part));

    private static float DistanceToSegment(SKPoint p, SKPoint a, SKPoint b)
    {
        float dx = b.X - a.X;
        float dy = b.Y - a.Y;
        float squared = (dx * dx) + (dy * dy);
        float part = squared == 0 ? 0 : Math.Clamp((((p.X - a.X) * dx) + ((p.Y - a.Y) * dy)) / squared, 0, 1);
        return SKPoint.Distance(p, Along(a, b, part));
    }

    private static bool SegmentsCross(SKPoint a, SKPoint b, SKPoint c, SKPoint d) =>
        Turn(a, b, c) * Turn(a, b, d) < 0 && Turn(c, d, a) * Turn(c, d, b) < 0;

    private static float Turn(SKPoint a, SKPoint b, SKPoint c) =>
        ((b.X - a.X) * (c.Y - a.Y)) - ((b.Y - a.Y) * (c.X - a.X));

    // Liang and Barsky's clipping of a line against a box (ACM TOG 3(1), 1984), asked only whether anything is left.
    internal static bool SegmentMeets(SKPoint a, SKPoint b, SKRect box)
    {
        float enter = 0;
        float leave = 1;
        return Clips(b.X - a.X, box.Left - a.X, box.Right - a.X, ref enter, ref leave)
            && Clips(b.Y - a.Y, box.Top - a.Y, box.Bottom - a.Y, ref enter, ref leave);
    }

    private static bool Clips(float delta, float low, float high, ref float enter, ref float leave)
    {
        if (delta == 0)
        {
            return low <= 0 && high >= 0;
        }

        float first = Math.Min(low / delta, high / delta);
        float last = Math.Max(low / delta, high / delta);
        enter = Math.Max(enter, first);
        leave = Math.Min(leave, last);
        return enter <= leave;
    }
}
