using CopperPath.Geometry;
using CopperPath.Polygons;
using CopperPath.Quantities;

namespace CopperPath.Meshing;

/// <summary>Turns the copper of one net on one layer into a triangle mesh.</summary>
public static class SheetMesher
{
    /// <summary>
    /// Welds and simplifies the outlines, triangulates them and refines the triangles until they are as regular and as
    /// fine as asked, as far as the artwork allows.
    /// </summary>
    /// <param name="domain">The copper and the rings to be marked in it.</param>
    /// <param name="quality">How fine and regular; its unusable values are named in the result.</param>
    /// <param name="targetEdgeM">
    /// Further limit on the edge length as a function of board coordinates, metres in and out; for refinement where an
    /// earlier solution asks for it. Must be deterministic and positive.
    /// </param>
    public static SheetMeshing Mesh(
        SheetDomain domain, MeshQuality quality, Func<double, double, double>? targetEdgeM = null)
    {
        if (UnusableQuality(quality) is { } unusable)
        {
            return new SheetMeshing(MeshingOutcome.UnusableQuality, null, null, unusable);
        }

        if (domain.MarkedRings.FirstOrDefault(ring => ring.Marker <= 0) is { } unmarked)
        {
            string reason = FormattableString.Invariant($"a ring carries marker {unmarked.Marker}; expected 1 or more");
            return new SheetMeshing(MeshingOutcome.UnusableMarker, null, null, reason);
        }

        if (UnusablePoint(domain) is { } point)
        {
            return new SheetMeshing(
                MeshingOutcome.CoordinatesTooLarge,
                null,
                null,
                FormattableString.Invariant($"point ({point.X}, {point.Y}) nm is beyond 10 m"));
        }

        long gridNm = Math.Max(1, (long)Math.Round(Units.NmFromMetres(quality.WeldingGridM)));
        OutlineGraph? welded;
        try
        {
            welded = OutlineGraph.Of(domain, gridNm);
        }
        catch (EntangledOutlinesException entangled)
        {
            return new SheetMeshing(MeshingOutcome.OutlinesCross, null, null, FormattableString.Invariant(
                $"outlines cross or touch each other too often to be meshed, most near X {entangled.Place.X * gridNm * 1e-6:0.###} mm, Y {entangled.Place.Y * gridNm * 1e-6:0.###} mm"));
        }

        if (welded is null)
        {
            return NoCopper();
        }

        OutlineGraph graph = OutlineSimplification.Of(welded, quality.SimplificationToleranceM / welded.UnitM);
        Triangulation? mesh = ConstrainedTriangulation.Of(graph, out int[] vertexOf);
        if (mesh is null)
        {
            return new SheetMeshing(MeshingOutcome.OutlinesCross, null, null, "outlines cross after welding");
        }

        Faces.Mark(mesh, graph, domain.MarkedRings);
        ConstrainedTriangulation.DissolveHiddenOutlines(mesh);
        mesh.RemoveRegion(Faces.Outside);
        if (!Enumerable.Range(0, mesh.TriangleCount).Any(t => mesh.Region[t] != Triangulation.None))
        {
            return NoCopper();
        }

        return Refine(domain, quality, targetEdgeM, graph, mesh, vertexOf);
    }

    private static SheetMeshing Refine(
        SheetDomain domain,
        MeshQuality quality,
        Func<double, double, double>? targetEdgeM,
        OutlineGraph graph,
        Triangulation mesh,
        int[] vertexOf)
    {
        double unit = graph.UnitM, maximumEdge = quality.MaximumEdgeM / unit, minimumEdge = quality.MinimumEdgeM / unit;
        var segments = new SegmentEnds(mesh, graph, vertexOf);
        var targets = new EdgeTargets(
            mesh, maximumEdge, 3 * minimumEdge, targetEdgeM is null ? null : InUnits(targetEdgeM, graph));
        double areaM2 = new TriangleAreas(mesh).Sum * unit * unit;
        double minimumAngle = quality.MinimumAngleDegrees * Math.PI / 180;
        int outlineVertices = CountUsed(mesh);

        // First regular triangles only: their size follows the features, so that widths can be measured everywhere.
        bool[] isHeldMarker = domain.HeldMarkers();
        var refinement = new Refinement(
            mesh, segments, targets, minimumEdge, minimumAngle, quality.VertexLimit, isHeldMarker);
        refinement.Run();
        var widths = new FeatureWidths(mesh, segments, targets);
        widths.LowerAroundRings(graph, quality.EdgesAroundRing);
        widths.LowerAcrossNecks(quality.EdgesAcrossNeck, maximumEdge);
        widths.LowerAtReentrantCorners(quality.ReentrantCornerFraction);
        targets.LimitGrowth(quality.Grading);
        if (!refinement.ReachedVertexLimit)
        {
            refinement.Run();
        }

        if (!targets.AreUsable)
        {
            return new SheetMeshing(
                MeshingOutcome.UnusableQuality, null, null, "the target edge function returned a value that is not positive");
        }

        SheetMesh result = MeshAssembly.Of(mesh, graph, isHeldMarker, out int pinches);
        int forced = Enumerable.Range(0, mesh.TriangleCount)
            .Count(t => mesh.Region[t] != Triangulation.None && refinement.IsThin(t));
        var evidence = new MeshingEvidence(
            domain.Copper.Sum(p => p.Rings.Sum(r => r.Length)) + domain.MarkedRings.Sum(r => r.Ring.Length),
            outlineVertices,
            domain.Copper.Sum(p => p.AreaNm2) / (Units.NmPerM * Units.NmPerM),
            areaM2,
            result.VertexCount - outlineVertices - pinches,
            forced,
            pinches);
        if (refinement.ReachedVertexLimit)
        {
            string reason = FormattableString.Invariant($"refinement stopped at {quality.VertexLimit} vertices");
            return new SheetMeshing(MeshingOutcome.VertexLimitReached, result, evidence, reason);
        }

        return new SheetMeshing(MeshingOutcome.Meshed, result, evidence, "");
    }

    private static Func<double, double, double> InUnits(Func<double, double, double> targetEdgeM, OutlineGraph graph) =>
        (x, y) => targetEdgeM(graph.OriginXM + (x * graph.UnitM), graph.OriginYM + (y * graph.UnitM)) / graph.UnitM;

    private static int CountUsed(Triangulation mesh)
    {
        int used = 0;
        for (int v = 0; v < mesh.VertexCount; v++)
        {
            used += mesh.HalfEdgeAt[v] == Triangulation.None ? 0 : 1;
        }

        return used;
    }

    private static SheetMeshing NoCopper() =>
        new(MeshingOutcome.NoCopper, null, null, "no copper is wider than the welding grid");

    private static string? UnusableQuality(MeshQuality quality)
    {
        (string Name, double Value, double Least, double Greatest)[] ranges =
        [
            (nameof(quality.MaximumEdgeM), quality.MaximumEdgeM, 1e-6, 1e3),
            (nameof(quality.MinimumAngleDegrees), quality.MinimumAngleDegrees, 1, 33),
            (nameof(quality.EdgesAcrossNeck), quality.EdgesAcrossNeck, 1, 100),
            (nameof(quality.SimplificationToleranceM), quality.SimplificationToleranceM, 0, 1e-3),
            (nameof(quality.WeldingGridM), quality.WeldingGridM, 1e-9, 1e-5),
            (nameof(quality.MinimumEdgeM), quality.MinimumEdgeM, 1e-8, 1e-3),
            (nameof(quality.Grading), quality.Grading, 0.1, 1),
            (nameof(quality.ReentrantCornerFraction), quality.ReentrantCornerFraction, 0.01, 1),
            (nameof(quality.EdgesAroundRing), quality.EdgesAroundRing, 3, 1000),
            (nameof(quality.VertexLimit), quality.VertexLimit, 100, 100_000_000),
        ];
        foreach ((string name, double value, double least, double greatest) in ranges)
        {
            if (!(value >= least && value <= greatest))
            {
                return FormattableString.Invariant($"{name} is {value}; expected {least} to {greatest}");
            }
        }

        return null;
    }

    private static PointNm? UnusablePoint(SheetDomain domain)
    {
        IEnumerable<PointNm[]> rings = domain.Copper.SelectMany(p => p.Rings).Concat(domain.MarkedRings.Select(r => r.Ring));
        foreach (PointNm[] ring in rings)
        {
            foreach (PointNm p in ring)
            {
                if (Math.Abs(p.X) > PointNm.LimitNm || Math.Abs(p.Y) > PointNm.LimitNm)
                {
                    return p;
                }
            }
        }

        return null;
    }
}
