using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>
/// A current in one sheet that flows exactly: uniform in each triangle, equal on both sides of every edge, none
/// through the edge of the copper, and into every contact and barrel what the equations of the potential feed it.
/// <para>
/// By Thomson's principle any such current makes at least the heat of the true one (W. Thomson and P. G. Tait, Treatise
/// on Natural Philosophy, 1867), while the currents of an approximate potential make at most that heat; the two differ
/// by just the heat of their difference (W. Prager and J. L. Synge, Q. Appl. Math. 5, 1947). The current is put
/// together vertex by vertex from what the shape function of the vertex passes through the triangles around it
/// (D. Braess and J. Schoberl, Math. Comp. 77, 2008); <see cref="Eddies"/> then let it flow with less heat.
/// </para>
/// </summary>
internal sealed class CurrentTubes
{
    private readonly SheetMesh _mesh;
    private readonly TriangleLinks _links;
    private readonly double[] _sourceX;
    private readonly double[] _sourceY;

    /// <summary>Flux out through each directed edge, amperes.</summary>
    private readonly double[] _flux;
    private readonly List<int> _fan = [];
    private readonly List<double> _passed = [];

    private CurrentTubes(SheetMesh mesh, TriangleLinks links, double[] sourceX, double[] sourceY)
    {
        _mesh = mesh;
        _links = links;
        _sourceX = sourceX;
        _sourceY = sourceY;
        _flux = new double[mesh.Triangles.Length];
    }

    /// <param name="mesh">The sheet; marked triangles are contacts and barrels, each at one potential.</param>
    /// <param name="links">Its edges.</param>
    /// <param name="sourceX">Mean sheet current of the potential in each triangle, x, amperes per metre; 0 in marked triangles.</param>
    /// <param name="sourceY">The same, y.</param>
    /// <returns>The balanced sheet current in each triangle, amperes per metre.</returns>
    public static (double[] X, double[] Y) Balance(SheetMesh mesh, TriangleLinks links, double[] sourceX, double[] sourceY)
    {
        CurrentTubes tubes = new(mesh, links, sourceX, sourceY);
        tubes.PassAroundEveryVertex();
        return tubes.UniformCurrents();
    }

    private void PassAroundEveryVertex()
    {
        bool[] isDone = new bool[_mesh.Triangles.Length];
        for (int corner = 0; corner < isDone.Length; corner++)
        {
            if (!isDone[corner] && !_mesh.IsHeld(corner / 3))
            {
                PassAround(corner, isDone);
            }
        }
    }

    /// <summary>
    /// Divides what one vertex passes among the edges that meet in it. Its triangles form a fan, each entered through
    /// the edge on its clockwise side; in every triangle as much must be gained as its source takes from the vertex's
    /// shape function, which leaves at most one number free: an eddy around the vertex.
    /// </summary>
    private void PassAround(int corner, bool[] isDone)
    {
        (bool isClosed, bool startsAtRim, bool endsAtRim) = GatherFan(corner);
        _passed.Clear();
        double passed = 0, wished = 0;
        for (int i = 0; i < _fan.Count; i++)
        {
            isDone[_fan[i]] = true;
            _passed.Add(passed);
            wished += HalfFluxAcross(_fan[i], isClosed || i > 0) - passed;
            passed += GainedFrom(_fan[i]);
        }

        int edges = _fan.Count;
        if (!isClosed)
        {
            wished += HalfFluxAcrossLast(_fan[^1]) - passed;
            edges++;
        }

        double eddy = isClosed || (startsAtRim && endsAtRim) ? wished / edges
            : startsAtRim ? -passed
            : 0;
        for (int i = 0; i < _fan.Count; i++)
        {
            int entering = _fan[i];
            double next = i + 1 < _fan.Count ? _passed[i + 1] : isClosed ? _passed[0] : passed;
            _flux[entering] -= _passed[i] + eddy;
            _flux[TriangleLinks.Previous(entering)] += next + eddy;
        }
    }

    /// <summary>Lists the edges that leave the vertex, counter-clockwise, through plain copper.</summary>
    private (bool IsClosed, bool StartsAtRim, bool EndsAtRim) GatherFan(int corner)
    {
        int start = corner;
        int twin = _links.Twin(start);
        while (IsPlain(twin))
        {
            start = TriangleLinks.Next(twin);
            if (start == corner)
            {
                break;
            }

            twin = _links.Twin(start);
        }

        bool isClosed = IsPlain(twin);
        _fan.Clear();
        int edge = start;
        while (true)
        {
            _fan.Add(edge);
            int onward = _links.Twin(TriangleLinks.Previous(edge));
            if (!IsPlain(onward) || onward == start)
            {
                return (isClosed, twin != TriangleLinks.None, onward != TriangleLinks.None);
            }

            edge = onward;
        }
    }

    private bool IsPlain(int edge) => edge != TriangleLinks.None && !_mesh.IsHeld(edge / 3);

    /// <summary>What a triangle must pass on beyond what it is handed: area times source . grad(shape function).</summary>
    /// <remarks>grad(shape function) is the opposite edge, turned left, over twice the area.</remarks>
    private double GainedFrom(int edge) => HalfFlux(TriangleLinks.Next(edge), edge / 3);

    /// <summary>Half the source's flux across an edge that leaves the vertex: its share of the edge's two ends.</summary>
    private double HalfFluxAcross(int edge, bool hasNeighbour)
    {
        double own = HalfFlux(edge, edge / 3);
        return hasNeighbour ? (own + HalfFlux(edge, _links.Twin(edge) / 3)) / 2 : own;
    }

    /// <summary>The same across the last edge of an open fan, which runs towards the vertex.</summary>
    private double HalfFluxAcrossLast(int edge) => -HalfFlux(TriangleLinks.Previous(edge), edge / 3);

    /// <summary>Half of a triangle's source flux from the right of an edge to its left.</summary>
    private double HalfFlux(int edge, int triangle)
    {
        (double dx, double dy) = Along(edge);
        return ((_sourceX[triangle] * -dy) + (_sourceY[triangle] * dx)) / 2;
    }

    private (double Dx, double Dy) Along(int edge)
    {
        int a = _mesh.Triangles[edge], b = _mesh.Triangles[TriangleLinks.Next(edge)];
        return (_mesh.XM[b] - _mesh.XM[a], _mesh.YM[b] - _mesh.YM[a]);
    }

    /// <summary>
    /// As much enters each triangle as leaves it, so the lowest Raviart-Thomas field with these fluxes is uniform:
    /// J = sum of flux times (centroid - opposite corner) over twice the area.
    /// </summary>
    private (double[] X, double[] Y) UniformCurrents()
    {
        double[] x = new double[_mesh.TriangleCount], y = new double[_mesh.TriangleCount];
        for (int t = 0; t < x.Length; t++)
        {
            if (_mesh.IsHeld(t))
            {
                continue;
            }

            // Corners relative to the first one; the edge opposite corner k is the one after it.
            (double bx, double by) = Along(3 * t);
            (double cx, double cy) = Along((3 * t) + 2);
            (cx, cy) = (-cx, -cy);
            double twiceArea = (bx * cy) - (by * cx);
            double atA = _flux[(3 * t) + 1], atB = _flux[(3 * t) + 2], atC = _flux[3 * t];
            double sum = (atA + atB + atC) / 3;
            x[t] = ((sum * (bx + cx)) - (atB * bx) - (atC * cx)) / twiceArea;
            y[t] = ((sum * (by + cy)) - (atB * by) - (atC * cy)) / twiceArea;
        }

        return (x, y);
    }
}
