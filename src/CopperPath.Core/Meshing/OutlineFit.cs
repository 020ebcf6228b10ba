using CopperPath.Geometry;
using CopperPath.Quantities;

namespace CopperPath.Meshing;

/// <summary>How the drawn outline runs beside one edge of a mesh.</summary>
/// <param name="Edge">Number of the directed edge, 3 t + k; a triangle of plain copper lies on its left.</param>
/// <param name="GainM2">Conducting area drawn beyond the edge less that drawn short of it, square metres.</param>
/// <param name="RoughM2">
/// Area no current uses though it is drawn: a wavy edge conducts like a straight one that lies further in by amplitude times
/// root mean square slope over the square root of 2, and by no more than the amplitude (see docs/field-solve.md). The square
/// root of 2 is left out, for what is not a sine.
/// </param>
public readonly record struct EdgeFit(int Edge, double GainM2, double RoughM2);

/// <summary>
/// Compares the outlines of a mesh with those it was made from: what welding, laying rings onto outlines and thinning out
/// have moved. Rims of held rings count as well, those of plated holes excepted, whose shape is chosen (see HoleOutline).
/// </summary>
public sealed class OutlineFit
{
    /// <summary>The drawn outline is looked at this often, nanometres.</summary>
    private const double StepNm = 100_000;

    /// <summary>Beyond 45 degrees an edge is as rough as it can be.</summary>
    private const double SteepestSlope = 1;

    private readonly SheetMesh _mesh;
    private readonly double _reachNm;
    private readonly Dictionary<int, (double GainM2, double StrayM, double LengthM, double SquaredSlopeM)> _fits = [];
    private readonly List<int> _near = [];

    private OutlineFit(SheetMesh mesh, double reachM)
    {
        _mesh = mesh;
        _reachNm = Units.NmFromMetres(reachM);
    }

    /// <param name="domain">What was drawn.</param>
    /// <param name="mesh">Its mesh, refined or not.</param>
    /// <param name="firstRim">Marker of the first held ring whose rim is to follow the drawn one.</param>
    /// <param name="reachM">How far an outline may have moved, metres.</param>
    /// <returns>Every edge beside which the drawn outline runs elsewhere, in ascending order.</returns>
    public static IReadOnlyList<EdgeFit> Of(SheetDomain domain, SheetMesh mesh, int firstRim, double reachM)
    {
        OutlineFit fit = new(mesh, reachM);
        List<int> outline = [], rims = [];
        for (int edge = 0; edge < mesh.Triangles.Length; edge++)
        {
            int twin = mesh.Links.Twin(edge);
            if (twin == TriangleLinks.None)
            {
                outline.Add(edge);
            }
            else if (!mesh.IsHeld(edge / 3) && mesh.TriangleMarkers[twin / 3] >= firstRim)
            {
                rims.Add(edge);
            }
        }

        // What is drawn right of an outline is more copper; what is drawn left of a rim makes its contact larger.
        fit.Compare(domain.Copper.SelectMany(piece => piece.Rings), outline, -1);
        fit.Compare(domain.MarkedRings.Where(ring => ring.IsHeld && ring.Marker >= firstRim).Select(ring => ring.Ring), rims, 1);
        return fit.Result();
    }

    private void Compare(IEnumerable<PointNm[]> rings, List<int> edges, int gainingSide)
    {
        if (edges.Count == 0)
        {
            return;
        }

        SegmentGrid grid = new(BoxNm.Of(edges.Select(Origin)), edges.Count);
        foreach (int edge in edges)
        {
            (PointNm a, PointNm b) = (Origin(edge), Origin(TriangleLinks.Next(edge)));
            grid.Add(edge, a.X, a.Y, b.X, b.Y);
        }

        foreach (PointNm[] ring in rings)
        {
            for (int i = 0; i < ring.Length; i++)
            {
                CompareEdge(ring[i], ring[(i + 1) % ring.Length], grid, gainingSide);
            }
        }
    }

    private void CompareEdge(PointNm from, PointNm to, SegmentGrid grid, int gainingSide)
    {
        double lengthNm = from.DistanceNmTo(to);
        int steps = Math.Max(1, (int)Math.Ceiling(lengthNm / StepNm));
        double stepM = Units.MetresFromNm(lengthNm / steps);
        (double dx, double dy) = (to.X - from.X, to.Y - from.Y);
        Compare(from.X, from.Y, dx, dy, 0, grid, gainingSide);
        for (int k = 0; k < steps; k++)
        {
            double part = (k + 0.5) / steps;
            Compare(from.X + (part * dx), from.Y + (part * dy), dx, dy, stepM, grid, gainingSide);
        }
    }

    /// <summary>Books a step of the drawn outline at the edge nearest to it.</summary>
    private void Compare(double xNm, double yNm, double dx, double dy, double stepM, SegmentGrid grid, int gainingSide)
    {
        _near.Clear();
        grid.Collect(new BoxNm(
            (long)(xNm - _reachNm), (long)(yNm - _reachNm), (long)(xNm + _reachNm), (long)(yNm + _reachNm)), _near);
        (int nearest, double least, double asideNm, double slope) = (TriangleLinks.None, _reachNm * _reachNm, 0, 0);
        foreach (int edge in _near)
        {
            int a = _mesh.Triangles[edge], b = _mesh.Triangles[TriangleLinks.Next(edge)];
            double ax = Units.NmFromMetres(_mesh.XM[a]), ay = Units.NmFromMetres(_mesh.YM[a]);
            double ux = Units.NmFromMetres(_mesh.XM[b]) - ax, uy = Units.NmFromMetres(_mesh.YM[b]) - ay;
            double px = xNm - ax, py = yNm - ay, squared = (ux * ux) + (uy * uy);
            double part = Math.Clamp(((px * ux) + (py * uy)) / squared, 0, 1);
            double qx = px - (part * ux), qy = py - (part * uy);
            double distance = (qx * qx) + (qy * qy);
            if (distance < least || (distance == least && edge < nearest))
            {
                double along = Math.Abs((ux * dx) + (uy * dy)), across = Math.Abs((ux * dy) - (uy * dx));
                (nearest, least) = (edge, distance);
                asideNm = ((ux * py) - (uy * px)) / Math.Sqrt(squared);
                slope = across < SteepestSlope * along ? across / along : SteepestSlope;
            }
        }

        if (nearest == TriangleLinks.None)
        {
            return;
        }

        double asideM = Units.MetresFromNm(asideNm);
        (double gainM2, double strayM, double lengthM, double squaredSlopeM) = _fits.GetValueOrDefault(nearest);
        _fits[nearest] = (gainM2 + (gainingSide * asideM * stepM), Math.Max(strayM, Math.Abs(asideM)), lengthM + stepM, squaredSlopeM + (slope * slope * stepM));
    }

    private EdgeFit[] Result() => [.. _fits.Where(fit => fit.Value.StrayM > 0).OrderBy(fit => fit.Key).Select(fit =>
    {
        (double gainM2, double strayM, double lengthM, double squaredSlopeM) = fit.Value;
        double slope = lengthM > 0 ? Math.Sqrt(squaredSlopeM / lengthM) : 0;
        return new EdgeFit(fit.Key, gainM2, strayM * Math.Min(1, slope) * lengthM);
    })];

    private PointNm Origin(int edge) => new(
        (long)Math.Round(Units.NmFromMetres(_mesh.XM[_mesh.Triangles[edge]])), (long)Math.Round(Units.NmFromMetres(_mesh.YM[_mesh.Triangles[edge]])));
}
