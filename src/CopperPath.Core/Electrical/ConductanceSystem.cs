using CopperPath.LinearAlgebra;
using CopperPath.Meshing;
using CopperPath.Polygons;

namespace CopperPath.Electrical;

/// <summary>
/// The equations K v = i over the nodes that are connected to the reference: the last terminal's first contact,
/// whose potential is zero. Copper not connected to any terminal carries nothing and stays out.
/// </summary>
internal sealed class ConductanceSystem
{
    private readonly NodeMap _nodes;
    private readonly int[] _equationOf;

    private ConductanceSystem(NodeMap nodes, int[] equationOf, SymmetricSparseMatrix matrix, string? stranded)
    {
        _nodes = nodes;
        _equationOf = equationOf;
        Matrix = matrix;
        Stranded = stranded;
    }

    public SymmetricSparseMatrix Matrix { get; }

    /// <summary>Name of a terminal not connected to the reference, or null.</summary>
    public string? Stranded { get; }

    public static ConductanceSystem Assemble(
        NetMesh mesh, NodeMap nodes, List<BarrelLink> links, IReadOnlyList<BoundTerminal> terminals, Stackup stack)
    {
        int reference = nodes.NodeOf(nodes.GroupOfContact(nodes.FirstContactOf(terminals.Count - 1)));
        DisjointSets connected = Connect(mesh, nodes, links);
        int home = connected.Find(reference);
        string? stranded = terminals.Where((_, t) => Enumerable
            .Range(nodes.FirstContactOf(t), nodes.FirstContactOf(t + 1) - nodes.FirstContactOf(t))
            .Any(c => connected.Find(nodes.GroupOfContact(c)) != home)).Select(terminal => terminal.Name).FirstOrDefault();
        if (stranded is not null)
        {
            return new ConductanceSystem(nodes, [], new SymmetricSparseMatrix(0, [0], [], []), stranded);
        }

        int[] equationOf = Number(nodes, connected, home, reference, out int count);
        SparseMatrixBuilder builder = new(count);
        AddSheets(builder, mesh, nodes, equationOf, stack);
        foreach (BarrelLink link in links)
        {
            AddConductance(builder, equationOf[link.UpperGroup], equationOf[link.LowerGroup], 1 / link.ResistanceOhm);
        }

        return new ConductanceSystem(nodes, equationOf, builder.Build(), null);
    }

    /// <summary>Equation of a member; negative for the reference and for copper that is not connected.</summary>
    public int EquationOf(int member) => _equationOf[member];

    /// <summary>Whether a member is on copper that is not connected to the reference.</summary>
    public bool IsStray(int member) => _equationOf[member] == Stray;

    /// <summary>
    /// Whether all current enters and leaves at one node: contacts that touch, or whose holes touch, are one conductor,
    /// and copper beside them carries nothing.
    /// </summary>
    public bool IsBypassed(IReadOnlyList<BoundTerminal> terminals) => Enumerable.Range(0, terminals.Count)
        .Where(t => terminals[t].CurrentA != 0)
        .SelectMany(t => Enumerable.Range(_nodes.FirstContactOf(t), _nodes.FirstContactOf(t + 1) - _nodes.FirstContactOf(t)))
        .All(contact => _equationOf[_nodes.GroupOfContact(contact)] == Reference);

    /// <summary>Potential of each member from the solved unknowns; NaN on copper that is not connected.</summary>
    public double[] Expand(ReadOnlySpan<double> unknowns)
    {
        double[] potential = new double[_equationOf.Length];
        for (int member = 0; member < potential.Length; member++)
        {
            potential[member] = _equationOf[member] switch
            {
                Reference => 0,
                Stray => double.NaN,
                int equation => unknowns[equation],
            };
        }

        return potential;
    }

    private const int Reference = -1;
    private const int Stray = -2;

    private static DisjointSets Connect(NetMesh mesh, NodeMap nodes, List<BarrelLink> links)
    {
        DisjointSets connected = new(nodes.Size);
        for (int member = 0; member < nodes.Size; member++)
        {
            connected.Join(member, nodes.NodeOf(member));
        }

        for (int s = 0; s < mesh.Sheets.Count; s++)
        {
            SheetMesh sheet = mesh.Sheets[s].Mesh;
            for (int t = 0; t < sheet.TriangleCount; t++)
            {
                int first = nodes.NodeOfVertex(s, sheet.Triangles[3 * t]);
                connected.Join(first, nodes.NodeOfVertex(s, sheet.Triangles[(3 * t) + 1]));
                connected.Join(first, nodes.NodeOfVertex(s, sheet.Triangles[(3 * t) + 2]));
            }
        }

        foreach (BarrelLink link in links)
        {
            connected.Join(link.UpperGroup, link.LowerGroup);
        }

        return connected;
    }

    private static int[] Number(NodeMap nodes, DisjointSets connected, int home, int reference, out int count)
    {
        int[] equationOf = new int[nodes.Size];
        count = 0;
        for (int member = 0; member < nodes.Size; member++)
        {
            int node = nodes.NodeOf(member);
            equationOf[member] = node == reference ? Reference
                : connected.Find(member) != home ? Stray
                : node == member ? count++
                : equationOf[node];
        }

        return equationOf;
    }

    private static void AddSheets(
        SparseMatrixBuilder builder, NetMesh mesh, NodeMap nodes, int[] equationOf, Stackup stack)
    {
        for (int s = 0; s < mesh.Sheets.Count; s++)
        {
            (int layer, SheetMesh sheet) = mesh.Sheets[s];
            SheetConductance conductance = stack.ConductanceOf(layer);
            for (int t = 0; t < sheet.TriangleCount; t++)
            {
                // Inside a contact or a barrel all is one potential.
                if (sheet.IsHeld(t))
                {
                    continue;
                }

                TriangleGradient g = new(sheet, t);
                int e0 = equationOf[nodes.NodeOfVertex(s, sheet.Triangles[3 * t])];
                int e1 = equationOf[nodes.NodeOfVertex(s, sheet.Triangles[(3 * t) + 1])];
                int e2 = equationOf[nodes.NodeOfVertex(s, sheet.Triangles[(3 * t) + 2])];
                double scale = -conductance.Of(sheet, t) * g.AreaM2;
                AddConductance(builder, e0, e1, scale * ((g.X0 * g.X1) + (g.Y0 * g.Y1)));
                AddConductance(builder, e1, e2, scale * ((g.X1 * g.X2) + (g.Y1 * g.Y2)));
                AddConductance(builder, e2, e0, scale * ((g.X2 * g.X0) + (g.Y2 * g.Y0)));
            }
        }
    }

    /// <summary>A triangle is three conductances along its edges, negative where the angle opposite is obtuse.</summary>
    private static void AddConductance(SparseMatrixBuilder builder, int a, int b, double conductance)
    {
        if (a == b || a == Stray || b == Stray)
        {
            return;
        }

        if (a >= 0)
        {
            builder.Add(a, a, conductance);
        }

        if (b >= 0)
        {
            builder.Add(b, b, conductance);
        }

        if (a >= 0 && b >= 0)
        {
            builder.Add(a, b, -conductance);
        }
    }

    /// <summary>The right-hand side for given currents of the terminals, amperes into the net; they sum to zero.</summary>
    public double[] CurrentsFor(IReadOnlyList<double> terminalCurrentsA)
    {
        double[] currents = new double[Matrix.Size];
        for (int t = 0; t < terminalCurrentsA.Count; t++)
        {
            int first = _nodes.FirstContactOf(t);
            int contacts = _nodes.FirstContactOf(t + 1) - first;
            for (int c = first; c < first + contacts; c++)
            {
                int equation = _equationOf[_nodes.NodeOf(_nodes.GroupOfContact(c))];
                if (equation >= 0)
                {
                    currents[equation] += terminalCurrentsA[t] / contacts;
                }
            }
        }

        return currents;
    }
}
