using System.Runtime.InteropServices;
using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>
/// Centre lines of strokes in drawing order. A stroke that starts where the one before ended goes on with its line,
/// unless that line is closed.
/// </summary>
internal sealed class CentreLines
{
    private readonly List<PointNm> _points = [];
    private readonly List<int> _starts = [];

    /// <summary>Centre lines of all strokes of a drawing, blocks and repeats expanded; arcs as chords.</summary>
    public static CentreLines Of(Drawing drawing, double toleranceNm)
    {
        var lines = new CentreLines();
        lines.AddStrokes(drawing, Similarity.Identity, toleranceNm);
        return lines;
    }

    /// <summary>Adds the start of a stroke; <see cref="AddPoint"/> follows.</summary>
    public void BeginStroke(PointNm from)
    {
        if (_points.Count == 0 || _points[^1] != from || IsClosed())
        {
            _starts.Add(_points.Count);
            _points.Add(from);
        }
    }

    public void AddPoint(PointNm point) => _points.Add(point);

    private void AddStrokes(Drawing drawing, in Similarity outer, double toleranceNm)
    {
        foreach (ref readonly DrawOperation operation in drawing.Operations)
        {
            if (operation.Kind == DrawKind.Stroke)
            {
                AddStroke(outer.Apply(operation.Start), drawing.Step(operation.FirstStep).Transformed(outer), toleranceNm);
            }
            else if (operation.Style.Aperture is BlockAperture { Drawing: { ObjectCount: > 0 } block })
            {
                var inner = new CentreLines();
                inner.AddStrokes(block, outer.After(operation.Style.Similarity), toleranceNm);
                Append(inner, outer.Apply(operation.Start));
            }
            else if (operation.Style.Aperture is RepeatedBody { Drawing.ObjectCount: > 0 } body)
            {
                var inner = new CentreLines();
                inner.AddStrokes(body.Drawing, outer, toleranceNm);
                AppendCopies(inner, body);
            }
        }
    }

    private void AddStroke(PointNm from, in PathStep step, double toleranceNm)
    {
        BeginStroke(from);
        if (step.Turn != Turn.Straight)
        {
            step.ArcFrom(from).AppendInner(_points, toleranceNm);
        }

        AddPoint(step.To);
    }

    private void AppendCopies(CentreLines inner, RepeatedBody body)
    {
        for (long x = 0; inner._starts.Count > 0 && x < body.CountX; x++)
        {
            for (long y = 0; y < body.CountY; y++)
            {
                Append(inner, new PointNm(x * body.Step.X, y * body.Step.Y));
            }
        }
    }

    private void Append(CentreLines other, PointNm offset)
    {
        foreach (int start in other._starts)
        {
            _starts.Add(_points.Count + start);
        }

        foreach (PointNm point in other._points)
        {
            _points.Add(point + offset);
        }
    }

    /// <summary>
    /// All lines joined end to end where they meet exactly. A line whose last point is its first is closed. Where
    /// more than two meet, the earliest in drawing order is taken.
    /// </summary>
    public List<PointNm[]> Joined()
    {
        var joiner = new Joiner(_points, _starts);
        return joiner.Run();
    }

    /// <summary>True when the line being drawn has come back to its start: what follows is another line.</summary>
    private bool IsClosed() => _points.Count - _starts[^1] > 2 && _points[_starts[^1]] == _points[^1];

    /// <summary>Follows lines from end to end through an index of their end points.</summary>
    private sealed class Joiner(List<PointNm> points, List<int> starts)
    {
        private readonly bool[] _used = new bool[starts.Count];

        /// <summary>First line that has an end at the point, as a link; -1 ends a list.</summary>
        private readonly Dictionary<PointNm, int> _firstAt = new(starts.Count);

        /// <summary>Link 2i is the start of line i, link 2i+1 its end; each names the next link at the same point.</summary>
        private readonly int[] _nextAt = new int[2 * starts.Count];

        public List<PointNm[]> Run()
        {
            for (int link = _nextAt.Length - 1; link >= 0; link--)
            {
                ref int first = ref CollectionsMarshal.GetValueRefOrAddDefault(_firstAt, EndAt(link), out bool known);
                _nextAt[link] = known ? first : -1;
                first = link;
            }

            var joined = new List<PointNm[]>();
            for (int line = 0; line < starts.Count; line++)
            {
                if (!_used[line])
                {
                    joined.Add(From(line));
                }
            }

            return joined;
        }

        private PointNm[] From(int line)
        {
            _used[line] = true;
            ReadOnlySpan<PointNm> own = PointsOf(line);
            List<PointNm> forwards = [.. own];
            Extend(forwards, own[0]);
            if (forwards[^1] == own[0] && forwards.Count > 2)
            {
                return [.. forwards];
            }

            List<PointNm> backwards = [own[0]];
            Extend(backwards, forwards[^1]);
            backwards.Reverse();
            backwards.RemoveAt(backwards.Count - 1);
            return [.. backwards, .. forwards];
        }

        /// <summary>Goes on from the last point while an unused line starts or ends there, until the goal is met.</summary>
        private void Extend(List<PointNm> path, PointNm goal)
        {
            while (path.Count < 3 || path[^1] != goal)
            {
                int link = UnusedAt(path[^1]);
                if (link < 0)
                {
                    return;
                }

                _used[link / 2] = true;
                ReadOnlySpan<PointNm> next = PointsOf(link / 2);
                int added = path.Count;
                path.AddRange(next);
                if (link % 2 == 1)
                {
                    path.Reverse(added, next.Length);
                }

                path.RemoveAt(added);
            }
        }

        private int UnusedAt(PointNm point)
        {
            if (!_firstAt.TryGetValue(point, out int link))
            {
                return -1;
            }

            while (link >= 0 && _used[link / 2])
            {
                link = _nextAt[link];
            }

            // Used links are never wanted again: forgetting them keeps crowded points cheap.
            _firstAt[point] = link;
            return link;
        }

        private PointNm EndAt(int link)
        {
            ReadOnlySpan<PointNm> line = PointsOf(link / 2);
            return link % 2 == 0 ? line[0] : line[^1];
        }

        private ReadOnlySpan<PointNm> PointsOf(int line)
        {
            int start = starts[line];
            int end = line + 1 < starts.Count ? starts[line + 1] : points.Count;
            return CollectionsMarshal.AsSpan(points)[start..end];
        }
    }
}
