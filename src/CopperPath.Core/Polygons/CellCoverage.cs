namespace CopperPath.Polygons;

/// <summary>
/// Says what changes across the segments of a cell. Winding numbers are known at the cell's lower left corner; from
/// there a path along the cell's side and then across it leads to the place in question, and each segment the path
/// crosses changes the winding number of its source.
/// </summary>
/// <remarks>
/// Places in question lie where a segment leaves a hot pixel, on the line through that side of the pixel. As a pixel
/// owns its lower and left sides, the lines are thought to run a very little further left, and a far smaller little
/// further down, than the sides they stand for: then no crossing and no end of a segment lies on them.
/// </remarks>
internal sealed class CellCoverage(CoverageRule rule)
{
    /// <summary>Nearer than this, in nanometres, exact arithmetic decides which of two places comes first.</summary>
    private const double Doubt = 1e-4;

    private PixelBox _box;
    private int _state;
    private int _segmentCount;
    private int _sourceCount;
    private int[] _sources = [];
    private int[] _cornerWindings = [];
    private int[] _windings = [];
    private int[] _coincident = [];
    private int _coincidentCount;
    private Member[] _members = [];

    /// <summary>Units of work done so far: segments that paths were compared with.</summary>
    public long Work { get; private set; }

    /// <summary>Begins a cell.</summary>
    public void Begin(int mostSegments, PixelBox box, int state)
    {
        _box = box;
        _state = state;
        _segmentCount = _sourceCount = 0;
        if (_members.Length < mostSegments)
        {
            _sources = new int[2 * mostSegments];
            _cornerWindings = new int[2 * mostSegments];
            _windings = new int[2 * mostSegments];
            _members = new Member[2 * mostSegments];
            _coincident = new int[2 * mostSegments];
        }
    }

    /// <summary>Adds a segment of the cell; segments of one source follow each other.</summary>
    public void Add(in Segment segment)
    {
        if (_sourceCount == 0 || _sources[_sourceCount - 1] != segment.Source)
        {
            _sources[_sourceCount] = segment.Source;
            _cornerWindings[_sourceCount++] = 0;
        }

        _members[_segmentCount++] = new Member(_sourceCount - 1, segment.SideOfCorner(_box.MinX, _box.MinY),
            segment.CrossesLowerSideOf(_box.MinY), segment.CrossesLeftSideOf(_box.MinX));
    }

    /// <summary>How often the source of the last segment winds around the cell's corner.</summary>
    public void Winds(int winding) => _cornerWindings[_sourceCount - 1] = winding;

    /// <summary>
    /// What changes across a segment between a pixel and the next hot pixel it meets: 1 when only its left side is
    /// covered, -1 when only its right side is, else 0. Of segments that go on along the same line it is the last that all
    /// of them change together; across the others nothing changes.
    /// </summary>
    /// <param name="here">The cell's segments.</param>
    /// <param name="which">Number of the segment among them.</param>
    /// <param name="x">A pixel that the segment passes and does not end in.</param>
    /// <param name="y">Ordinate of the pixel.</param>
    public int ChangeBehind(ReadOnlySpan<Segment> here, int which, long x, long y)
    {
        ref readonly Segment s = ref here[which];
        _cornerWindings.AsSpan(0, _sourceCount).CopyTo(_windings);
        _coincidentCount = 0;
        bool leavesRight = s.CrossesLeftSideOf(x + 1)
            && (s.By > s.Ay ? s.SideOfCorner(x + 1, y + 1) > 0 : s.SideOfCorner(x + 1, y) < 0);
        Work += here.Length;
        bool isLast = leavesRight ? GoUp(here, which, x + 1) : GoRight(here, which, s.By > s.Ay ? y + 1 : y);
        if (!isLast)
        {
            return 0;
        }

        bool isRightCovered = rule.IsCovered(State());
        for (int i = 0; i < _coincidentCount; i++)
        {
            int along = _coincident[i];
            _windings[_members[along].Source] += here[along].Delta;
        }

        return (rule.IsCovered(State()) ? 1 : 0) - (isRightCovered ? 1 : 0);
    }

    /// <summary>
    /// Goes along the bottom of the cell to the left side of a column and up there to the segment.
    /// False when a later segment lies on it.
    /// </summary>
    private bool GoUp(ReadOnlySpan<Segment> here, int which, long column)
    {
        for (int i = 0; i < here.Length; i++)
        {
            ref readonly Segment t = ref here[i];
            ref readonly Member member = ref _members[i];
            bool isCrossed = t.CrossesLeftSideOf(column);
            if (!isCrossed && !member.CrossesBottom)
            {
                continue;
            }

            int turn = t.SideOfCorner(column, _box.MinY);
            int before = member.CrossesBottom ? member.SideOfCorner : turn;
            int after = !isCrossed ? turn : i == which ? 0 : SideOnUpright(t, here[which], column);
            if (after == 0)
            {
                if (i > which)
                {
                    return false;
                }

                // Right of what lies together.
                _coincident[_coincidentCount++] = i;
                after = -1;
            }

            _windings[member.Source] += t.Delta * ((after - before) / 2);
        }

        return true;
    }

    /// <summary>
    /// Goes along the left side of the cell to the lower side of a row and from there right to the segment.
    /// False when a later segment lies on it.
    /// </summary>
    private bool GoRight(ReadOnlySpan<Segment> here, int which, long row)
    {
        for (int i = 0; i < here.Length; i++)
        {
            ref readonly Segment t = ref here[i];
            ref readonly Member member = ref _members[i];
            bool isCrossed = t.CrossesLowerSideOf(row);
            if (!isCrossed && !member.CrossesLeft)
            {
                continue;
            }

            int turn = t.SideOfCorner(_box.MinX, row);
            int before = member.CrossesLeft ? member.SideOfCorner : turn;
            int after = !isCrossed ? turn : i == which ? 0 : SideOnLevel(t, here[which], row);
            if (after == 0)
            {
                if (i > which)
                {
                    return false;
                }

                // Right of what lies together.
                _coincident[_coincidentCount++] = i;
                after = -1;
            }

            _windings[member.Source] += t.Delta * ((after - before) / 2);
        }

        return true;
    }

    private int State()
    {
        int state = _state;
        for (int k = 0; k < _sourceCount; k++)
        {
            if (_windings[k] != 0)
            {
                state = rule.With(state, _sources[k]);
            }
        }

        return state;
    }

    /// <summary>On which side of t, 1 left and -1 right, s crosses the left side of a column; 0 when it lies on it.</summary>
    private static int SideOnUpright(in Segment t, in Segment s, long column)
    {
        double above = s.Ay - t.Ay + (s.Dy * ((column - 0.5 - s.Ax) / s.Dx)) - (t.Dy * ((column - 0.5 - t.Ax) / t.Dx));
        if (Math.Abs(above) > Doubt)
        {
            return above > 0 ? 1 : -1;
        }

        Int128 height = s.TwiceHeightAbove(t, column);
        if (height == 0)
        {
            // A little further left the steeper one is lower.
            height = ((Int128)t.Dy * s.Dx) - ((Int128)s.Dy * t.Dx);
        }

        return Int128.Sign(height);
    }

    /// <summary>On which side of t, 1 left and -1 right, s crosses the lower side of a row; 0 when it lies on it.</summary>
    private static int SideOnLevel(in Segment t, in Segment s, long row)
    {
        int sideToTheRight = t.By > t.Ay ? -1 : 1;
        double beyond = s.Ax - t.Ax + (s.Dx * ((row - 0.5 - s.Ay) / s.Dy)) - (t.Dx * ((row - 0.5 - t.Ay) / t.Dy));
        if (Math.Abs(beyond) > Doubt)
        {
            return beyond > 0 ? sideToTheRight : -sideToTheRight;
        }

        // Twice the distance of s to the right of t, times both heights.
        Int128 sHeight = s.Dy, tHeight = t.Dy;
        Int128 distance = (2 * (s.Ax - t.Ax) * sHeight * tHeight)
            + (s.Dx * (Int128)((2 * (row - s.Ay)) - 1) * tHeight) - (t.Dx * (Int128)((2 * (row - t.Ay)) - 1) * sHeight);
        if (distance == 0)
        {
            // A little further down the flatter one, seen upwards, is further left.
            distance = (t.Dx * sHeight) - (s.Dx * tHeight);
        }

        return Int128.Sign(distance) * Math.Sign(s.Dy) * Math.Sign(t.Dy) * sideToTheRight;
    }

    /// <summary>What is known of a segment of the cell.</summary>
    private readonly record struct Member(int Source, int SideOfCorner, bool CrossesBottom, bool CrossesLeft);
}
