namespace CopperPath.Meshing;

/// <summary>
/// Sets edge targets from the shape of the copper: the width measured straight across from each piece of its edge,
/// the size of marked rings, and re-entrant corners.
/// </summary>
internal sealed class FeatureWidths
{
    // Corners of polygons that stand for round holes turn less than this; true corners turn 90 or 45 degrees.
    private const double ReentrantAngle = 215 * Math.PI / 180;

    private readonly Triangulation _mesh;
    private readonly SegmentEnds _segments;
    private readonly EdgeTargets _targets;

    public FeatureWidths(Triangulation mesh, SegmentEnds segments, EdgeTargets targets)
    {
        _mesh = mesh;
        _segments = segments;
        _targets = targets;
    }

    /// <summary>Lowers the targets at both ends of every rim edge to the width there over the number of edges asked.</summary>
    public void LowerAcrossNecks(int edgesAcross, double maximumEdge)
    {
        double reach = edgesAcross * maximumEdge;
        for (int h = 0; h < 3 * _mesh.TriangleCount; h++)
        {
            if (_mesh.Region[h / 3] != Triangulation.None && _mesh.Twin[h] == Triangulation.None)
            {
                double width = WidthAcross(h, reach);
                _targets.Lower(_mesh.Origin[h], width / edgesAcross);
                _targets.Lower(_mesh.Destination(h), width / edgesAcross);
            }
        }
    }

    /// <summary>Lowers the targets on marked rings to their length over the number of edges asked.</summary>
    public void LowerAroundRings(OutlineGraph graph, int edgesAround)
    {
        double[] lengthOfSource = LengthsBySource(graph);
        for (int h = 0; h < 3 * _mesh.TriangleCount; h++)
        {
            if (_mesh.Region[h / 3] == Triangulation.None || _mesh.Constraint[h] == Triangulation.None)
            {
                continue;
            }

            foreach (Polygons.Contribution part in graph.Labels[graph.LabelOf[_mesh.Constraint[h] >> 1]])
            {
                if (part.Source != OutlineGraph.CopperSource)
                {
                    _targets.Lower(_mesh.Origin[h], lengthOfSource[part.Source] / edgesAround);
                    _targets.Lower(_mesh.Destination(h), lengthOfSource[part.Source] / edgesAround);
                }
            }
        }
    }

    /// <summary>Lowers the targets at re-entrant corners of the copper to a fraction of what they are.</summary>
    public void LowerAtReentrantCorners(double fraction)
    {
        for (int v = 0; v < _segments.GivenVertexCount; v++)
        {
            int start = _mesh.HalfEdgeAt[v];
            if (start != Triangulation.None && IsReentrant(start))
            {
                _targets.Lower(v, fraction * _targets.At(v));
            }
        }
    }

    private bool IsReentrant(int start)
    {
        // Turn clockwise to the rim first, so that the whole fan is seen from there.
        int h = start;
        while (_mesh.Twin[h] != Triangulation.None)
        {
            h = Triangulation.Next(_mesh.Twin[h]);
            if (h == start)
            {
                return false;
            }
        }

        double angle = 0;
        while (h != Triangulation.None)
        {
            angle += _segments.CornerAngle(h);
            h = _mesh.Twin[Triangulation.Previous(h)];
        }

        return angle > ReentrantAngle;
    }

    private static double[] LengthsBySource(OutlineGraph graph)
    {
        double[] lengths = new double[1 + graph.Labels.Max(label => label[^1].Source)];
        for (int e = 0; e < graph.From.Length; e++)
        {
            double dx = graph.X[graph.To[e]] - graph.X[graph.From[e]];
            double dy = graph.Y[graph.To[e]] - graph.Y[graph.From[e]];
            foreach (Polygons.Contribution part in graph.Labels[graph.LabelOf[e]])
            {
                lengths[part.Source] += Math.Sqrt((dx * dx) + (dy * dy));
            }
        }

        return lengths;
    }

    /// <summary>
    /// Distance from the middle of a rim half-edge, straight into the copper, to the rim on the other side; infinite
    /// beyond the reach, or when the other side is the neighbouring outline edge, as it is in every corner.
    /// </summary>
    private double WidthAcross(int rim, double reach)
    {
        int a = _mesh.Origin[rim], b = _mesh.Destination(rim);
        double mx = 0.5 * (_mesh.X[a] + _mesh.X[b]), my = 0.5 * (_mesh.Y[a] + _mesh.Y[b]);
        double length = Math.Sqrt(_mesh.SquaredLength(rim));
        double nx = -(_mesh.Y[b] - _mesh.Y[a]) / length, ny = (_mesh.X[b] - _mesh.X[a]) / length;
        int h = rim;
        for (int step = 0; step < _mesh.TriangleCount; step++)
        {
            // The ray came in through h; it leaves to the side of the apex the ray passes on.
            int apex = _mesh.Apex(h);
            double side = (nx * (_mesh.Y[apex] - my)) - (ny * (_mesh.X[apex] - mx));
            h = side > 0 ? Triangulation.Next(h) : Triangulation.Previous(h);
            if (_mesh.Twin[h] == Triangulation.None)
            {
                bool isCorner = _segments.AreAdjacent(_mesh.Constraint[rim] >> 1, _mesh.Constraint[h] >> 1);
                return isCorner ? double.PositiveInfinity : DistanceAlong(h, mx, my, nx, ny);
            }

            if (DistanceAlong(h, mx, my, nx, ny) > reach)
            {
                break;
            }

            h = _mesh.Twin[h];
        }

        return double.PositiveInfinity;
    }

    private double DistanceAlong(int h, double mx, double my, double nx, double ny)
    {
        int a = _mesh.Origin[h], b = _mesh.Destination(h);
        double ax = _mesh.X[a] - mx, ay = _mesh.Y[a] - my, dx = _mesh.X[b] - _mesh.X[a], dy = _mesh.Y[b] - _mesh.Y[a];
        double cross = (nx * dy) - (ny * dx);
        return cross == 0 ? Math.Max(0, (nx * ax) + (ny * ay)) : ((ax * dy) - (ay * dx)) / cross;
    }
}
