using CopperPath.Polygons;

namespace CopperPath.Meshing;

/// <summary>
/// The faces the outlines cut the plane into, numbered in a triangulation, and what covers each of them: found by
/// walking from the outside inwards and adding up what every outline crossed changes.
/// </summary>
internal sealed class Faces
{
    private readonly List<Contribution[]> _coverage = [];

    private Faces()
    {
    }

    public bool IsCopper(int face) => _coverage[face].Any(c => c.Source == OutlineGraph.CopperSource);

    /// <summary>Lowest marker of the rings around the face, 0 when there is none.</summary>
    public int MarkerOf(int face, IReadOnlyList<MarkedRing> rings) => _coverage[face]
        .Where(c => c.Source != OutlineGraph.CopperSource)
        .Select(c => rings[c.Source - 1].Marker)
        .DefaultIfEmpty(0).Min();

    /// <summary>Numbers the faces of the triangulation in its Region and returns their coverage.</summary>
    public static Faces Number(Triangulation mesh, OutlineGraph graph)
    {
        const int unseen = -2;
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
