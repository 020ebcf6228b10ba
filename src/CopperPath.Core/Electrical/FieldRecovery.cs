using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>Potentials -> currents of sheets, barrels and contacts, loss with its bounds, and the balances that check them.</summary>
internal sealed class FieldRecovery
{
    private readonly NetMesh _mesh;
    private readonly NodeMap _nodes;
    private readonly List<BarrelLink> _links;
    private readonly SheetSolver[] _sheets;

    public FieldRecovery(NetMesh mesh, NodeMap nodes, List<BarrelLink> links, Stackup stack)
    {
        _mesh = mesh;
        _nodes = nodes;
        _links = links;
        _sheets = new SheetSolver[mesh.Sheets.Count];
        Parallel.For(0, _sheets.Length, s =>
            _sheets[s] = new SheetSolver(mesh.Sheets[s].Layer, mesh.Sheets[s].Mesh, stack.ConductanceOf(mesh.Sheets[s].Layer)));
    }

    /// <summary>The edges of each sheet.</summary>
    public IReadOnlyList<SheetEdges> Edges => [.. _sheets.Select(sheet => sheet.Edges)];

    /// <summary>Currents in the sheets that follow from a potential, in the order of the mesh's sheets.</summary>
    /// <param name="potential">The potential.</param>
    /// <param name="leastGainW">Eddies that would lower the heat by less are left out.</param>
    public SheetFlow[] Flows(CurvedPotential potential, double leastGainW)
    {
        SheetFlow[] flows = new SheetFlow[_mesh.Sheets.Count];
        Parallel.For(0, flows.Length, s =>
        {
            double[] vertexV = new double[_mesh.Sheets[s].Mesh.VertexCount];
            for (int v = 0; v < vertexV.Length; v++)
            {
                vertexV[v] = potential.MemberV[_nodes.NodeOfVertex(s, v)];
            }

            flows[s] = _sheets[s].FlowOf(vertexV, potential.BulgesV[s], leastGainW);
        });
        return flows;
    }

    /// <summary>Potential of each terminal, the mean over its contacts where they are not joined, volts.</summary>
    public IReadOnlyList<double> TerminalPotentialsV(double[] potentialV, int terminalCount) =>
        [.. Enumerable.Range(0, terminalCount).Select(t => Enumerable
            .Range(_nodes.FirstContactOf(t), _nodes.FirstContactOf(t + 1) - _nodes.FirstContactOf(t))
            .Average(contact => potentialV[_nodes.GroupOfContact(contact)]))];

    public List<BarrelCurrent> BarrelCurrents(double[] potentialV) =>
        [.. _links.Select(link => new BarrelCurrent(
            link.Barrel, link.UpperLayer, link.LowerLayer, CurrentOf(link, potentialV), link.ResistanceOhm))];

    /// <summary>Kirchhoff's books of the potentials' own currents.</summary>
    public ContactLedger Books(IReadOnlyList<SheetFlow> flows, double[] potentialV, IReadOnlyList<BoundTerminal> terminals) =>
        Books(potentialV, terminals, (s, t, _) => (flows[s].SourceX[t], flows[s].SourceY[t]));

    /// <summary>The same of a potential without bulges.</summary>
    public ContactLedger BooksOfLinear(double[] potentialV, IReadOnlyList<BoundTerminal> terminals) => Books(potentialV, terminals, (s, t, g) =>
    {
        ReadOnlySpan<int> corners = _mesh.Sheets[s].Mesh.Triangles.AsSpan(3 * t, 3);
        double a = potentialV[_nodes.NodeOfVertex(s, corners[0])], b = potentialV[_nodes.NodeOfVertex(s, corners[1])], c = potentialV[_nodes.NodeOfVertex(s, corners[2])];
        double sheetS = _sheets[s].ConductanceOf(t);
        return double.IsNaN(a) ? (0, 0)
            : (-sheetS * ((g.X0 * a) + (g.X1 * b) + (g.X2 * c)), -sheetS * ((g.Y0 * a) + (g.Y1 * b) + (g.Y2 * c)));
    });

    private ContactLedger Books(
        double[] potentialV, IReadOnlyList<BoundTerminal> terminals, Func<int, int, TriangleGradient, (double X, double Y)> currentOf)
    {
        ContactLedger ledger = new(_nodes, terminals);
        for (int s = 0; s < _mesh.Sheets.Count; s++)
        {
            SheetMesh mesh = _mesh.Sheets[s].Mesh;
            for (int t = 0; t < mesh.TriangleCount; t++)
            {
                if (!mesh.IsHeld(t))
                {
                    TriangleGradient g = new(mesh, t);
                    CountTriangle(ledger, s, mesh.Triangles.AsSpan(3 * t, 3), g, currentOf(s, t, g));
                }
            }
        }

        foreach (BarrelLink link in _links)
        {
            ledger.CountLink(link, CurrentOf(link, potentialV));
        }

        return ledger;
    }

    /// <summary>Weak form: the current a vertex feeds into a triangle is -J . grad(shape function) times its area.</summary>
    private void CountTriangle(ContactLedger ledger, int sheet, ReadOnlySpan<int> corners, in TriangleGradient g, (double X, double Y) current)
    {
        ledger.CountVertex(_nodes.GroupOfVertex(sheet, corners[0]), -g.AreaM2 * ((current.X * g.X0) + (current.Y * g.Y0)));
        ledger.CountVertex(_nodes.GroupOfVertex(sheet, corners[1]), -g.AreaM2 * ((current.X * g.X1) + (current.Y * g.Y1)));
        ledger.CountVertex(_nodes.GroupOfVertex(sheet, corners[2]), -g.AreaM2 * ((current.X * g.X2) + (current.Y * g.Y2)));
    }

    /// <summary>Zero on copper no terminal reaches, where there is no potential.</summary>
    private static double CurrentOf(BarrelLink link, double[] potentialV)
    {
        double currentA = (potentialV[link.UpperGroup] - potentialV[link.LowerGroup]) / link.ResistanceOhm;
        return double.IsNaN(currentA) ? 0 : currentA;
    }
}
