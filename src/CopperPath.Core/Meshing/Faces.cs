using CopperPath.Polygons;

namespace CopperPath.Meshing;

/// <summary>
/// The faces the outlines cut the plane into, numbered in a triangulation, and what covers each of them: found by
/// walking from the outside inwards and adding up what every outline crossed changes.
/// </summary>
internal sealed class Faces
{
    /// <summary>Region of triangles outside the copper, after <see cref="Mark"/>.</summary>
    public const int Outside = -2;

    private readonly List<Contribution[]> _coverage = [];

    private Faces()
    {
    }

    /// <summary>
    /// Sets the Region of every triangle to the lowest marker of the rings around it, 0 where there is no ring,
    /// <see cref="Outside"/> where there is no copper.
    /// </summary>
    public static void Mark(Triangulation mesh, OutlineGraph graph, IReadOnlyList<MarkedRing> rings)
    {
        Faces faces = Number(mesh, graph);
        int[] markerOf = [.. faces._coverage.Select(coverage => MarkerOf(coverage, rings))];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            mesh.Region[t] = markerOf[mesh.Region[t]];
        }
    }

    private static int MarkerOf(Contribution[] coverage, IReadOnlyList<MarkedRing> rings)
    {
        if (!coverage.Any(c => c.Source == OutlineGraph.CopperSource))
        {
            return Outside;
        }

        return coverage
            .Where(c => c.Source != OutlineGraph.CopperSource)
            .Select(c => rings[c.Source - 1].Marker)
            .DefaultIfEmpty(0).Min();
    }

    private static Faces Number(Triangulation mesh, OutlineGraph graph)
    {
        const int unseen = -3;
        var faces = new Faces();
        Array.Fill(mesh.Region, unseen, 0, mesh.TriangleCount);
        Queue<(int Triangle, Contribution[] Coverage)> seeds = new([(mesh.HalfEdgeAt[0] / 3, [])]);
        Stack<int> pending = new();
        while (seeds.TryDequeue(out (int Triangle, Contribution[] Coverage) seed))
        {
            if (mesh.Region[seed.Triangle] != unseen)
            {
                continue;
            }

            int face = faces._coverage.Count;
            faces._coverage.Add(seed.Coverage);
            mesh.Region[seed.Triangle] = face;
            pending.Push(seed.Triangle);
            while (pending.TryPop(out int triangle))
            {
                for (int h = 3 * triangle; h < (3 * triangle) + 3; h++)
                {
                    int twin = mesh.Twin[h];
                    if (twin == Triangulation.None || mesh.Region[twin / 3] != unseen)
                    {
                        continue;
                    }

                    if (mesh.Constraint[h] == Triangulation.None)
                    {
                        mesh.Region[twin / 3] = face;
                        pending.Push(twin / 3);
                    }
                    else
                    {
                        seeds.Enqueue((twin / 3, Across(seed.Coverage, graph, mesh.Constraint[h])));
                    }
                }
            }
        }

        return faces;
    }

    private static Contribution[] Across(Contribution[] coverage, OutlineGraph graph, int constraint)
    {
        // A half-edge along its outline has the outline's left side on its own left: leaving it subtracts.
        int sign = (constraint & 1) == 0 ? -1 : 1;
        Contribution[] label = graph.Labels[graph.LabelOf[constraint >> 1]];
        List<Contribution> sum = [];
        int i = 0, j = 0;
        while (i < coverage.Length || j < label.Length)
        {
            if (j == label.Length || (i < coverage.Length && coverage[i].Source < label[j].Source))
            {
                sum.Add(coverage[i++]);
            }
            else if (i == coverage.Length || label[j].Source < coverage[i].Source)
            {
                sum.Add(new Contribution(label[j].Source, sign * label[j++].Delta));
            }
            else
            {
                int delta = coverage[i].Delta + (sign * label[j].Delta);
                if (delta != 0)
                {
                    sum.Add(new Contribution(label[j].Source, delta));
                }

                i++;
                j++;
            }
        }

        return [.. sum];
    }
}
