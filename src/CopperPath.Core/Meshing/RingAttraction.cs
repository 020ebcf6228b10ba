using CopperPath.Geometry;

namespace CopperPath.Meshing;

/// <summary>
/// Lays marked rings onto the outlines they follow. A pad and the copper it is part of are drawn by the same aperture,
/// but each is rounded to the welding grid on its own, and two edges that part by a fraction of a step over their whole
/// length bound slivers no mesh can fill well. Corners of a ring move to outlines within reach, and its edges bend
/// through corners of outlines within reach; the copper itself stays as it is.
/// </summary>
internal sealed class RingAttraction
{
    /// <summary>How far a ring may move, in steps of the welding grid: what rounding both lines may part them by, doubled.</summary>
    private const int ReachSteps = 4;

    private readonly SegmentGrid _grid;
    private readonly List<(PointNm A, PointNm B)> _edges = [];
    private readonly List<int> _near = [];

    /// <param name="copper">Rings of the copper in steps of the welding grid.</param>
    /// <param name="bounds">Where all rings lie.</param>
    public RingAttraction(IReadOnlyList<PointNm[]> copper, BoxNm bounds)
    {
        _grid = new SegmentGrid(bounds, copper.Sum(ring => ring.Length));
        foreach (PointNm[] ring in copper)
        {
            Add(ring);
        }
    }

    /// <summary>The ring laid onto the copper and the rings before it, which later rings are laid onto in turn.</summary>
    public PointNm[] Attract(PointNm[] ring)
    {
        PointNm[] corners = Array.ConvertAll(ring, Attracted);
        List<PointNm> bent = [];
        for (int i = 0; i < corners.Length; i++)
        {
            bent.Add(corners[i]);
            bent.AddRange(CornersAlong(corners[i], corners[(i + 1) % corners.Length]));
        }

        PointNm[] result = [.. bent.Where((p, i) => p != bent[(i + 1) % bent.Count])];
        Add(result);
        return result;
    }

    private void Add(PointNm[] ring)
    {
        for (int i = 0; i < ring.Length; i++)
        {
            PointNm a = ring[i], b = ring[(i + 1) % ring.Length];
            _grid.Add(_edges.Count, a.X, a.Y, b.X, b.Y);
            _edges.Add((a, b));
        }
    }

    /// <summary>The nearest corner within reach, else the nearest place on an edge within reach, else the point itself.</summary>
    private PointNm Attracted(PointNm p)
    {
        Collect(p, p);
        (double Distance, PointNm At) corner = (ReachSteps, p), foot = (ReachSteps, p);
        foreach (int e in _near)
        {
            (PointNm a, PointNm b) = _edges[e];
            if (!IsWithinReach(p, a, b))
            {
                continue;
            }

            double distance = p.DistanceNmTo(a);
            corner = distance < corner.Distance ? (distance, a) : corner;
            (double part, double aside) = Project(p, a, b);
            if (part is > 0 and < 1 && aside < foot.Distance)
            {
                PointNm at = new(a.X + (long)Math.Round(part * (b.X - a.X)), a.Y + (long)Math.Round(part * (b.Y - a.Y)));
                foot = (aside, at);
            }
        }

        return corner.Distance < ReachSteps ? corner.At : foot.At;
    }

    private PointNm[] CornersAlong(PointNm from, PointNm to)
    {
        Collect(from, to);
        if (!_near.Exists(e => IsAlong(_edges[e].A, from, to)))
        {
            return [];
        }

        return [.. _near.Select(e => _edges[e].A).Distinct()
            .Where(corner => IsAlong(corner, from, to))
            .Select(corner => (Corner: corner, Place: Project(corner, from, to)))
            .OrderBy(each => each.Place.Part).ThenBy(each => each.Corner.X).ThenBy(each => each.Corner.Y)
            .Select(each => each.Corner)];
    }

    private static bool IsAlong(PointNm corner, PointNm from, PointNm to) =>
        corner != from && corner != to && IsWithinReach(corner, from, to) && Project(corner, from, to) is { Part: > 0 and < 1, Aside: < ReachSteps };

    /// <summary>Whether a point is in the box of an edge, grown by the reach: cheaper to ask than its distance.</summary>
    private static bool IsWithinReach(PointNm p, PointNm a, PointNm b) =>
        p.X >= Math.Min(a.X, b.X) - ReachSteps && p.X <= Math.Max(a.X, b.X) + ReachSteps
        && p.Y >= Math.Min(a.Y, b.Y) - ReachSteps && p.Y <= Math.Max(a.Y, b.Y) + ReachSteps;

    private void Collect(PointNm a, PointNm b)
    {
        _near.Clear();
        _grid.Collect(new BoxNm(
            Math.Min(a.X, b.X) - ReachSteps, Math.Min(a.Y, b.Y) - ReachSteps,
            Math.Max(a.X, b.X) + ReachSteps, Math.Max(a.Y, b.Y) + ReachSteps), _near);
    }

    /// <summary>Where along a to b a point is nearest, as a fraction, and how far it is from the line.</summary>
    private static (double Part, double Aside) Project(PointNm p, PointNm a, PointNm b)
    {
        double dx = b.X - a.X, dy = b.Y - a.Y, px = p.X - a.X, py = p.Y - a.Y;
        double squared = (dx * dx) + (dy * dy);
        return squared == 0 ? (-1, double.PositiveInfinity)
            : (((px * dx) + (py * dy)) / squared, Math.Abs((px * dy) - (py * dx)) / Math.Sqrt(squared));
    }
}
