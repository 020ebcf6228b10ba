using CopperPath.Geometry;
using CopperPath.Meshing;
using CopperPath.Nets;
using CopperPath.Polygons;

namespace CopperPath.Electrical;

/// <summary>
/// Which mesh vertices, barrels and contacts share a potential. A group is what copper and solder hold at one
/// potential: the vertices of a contact or of a barrel's rim. A node joins the groups that a part bonds outside the
/// copper (the pins of a joined terminal); currents are counted per group, equations are written per node.
/// </summary>
internal sealed class NodeMap
{
    private readonly DisjointSets _groups;
    private readonly DisjointSets _nodes;
    private readonly int[] _firstVertex;
    private readonly int _firstContact;
    private readonly Dictionary<(int Barrel, int Layer), int> _barrelNodes = [];
    private readonly List<int> _firstContactOfTerminal = [0];

    private NodeMap(NetMesh mesh)
    {
        _firstVertex = new int[mesh.Sheets.Count + 1];
        for (int s = 0; s < mesh.Sheets.Count; s++)
        {
            _firstVertex[s + 1] = _firstVertex[s] + mesh.Sheets[s].Mesh.VertexCount;
        }

        _firstContact = _firstVertex[^1];
        Size = _firstContact + mesh.Contacts.Count;
        _groups = new DisjointSets(Size);
        _nodes = new DisjointSets(Size);
    }

    /// <summary>Number of members (vertices, then contacts) before sharing.</summary>
    public int Size { get; }

    /// <summary>Name of a contact that lies on no copper, or null.</summary>
    public string? UnplacedContact { get; private set; }

    public static NodeMap Build(Net net, NetMesh mesh, IReadOnlyList<BoundTerminal> terminals)
    {
        NodeMap map = new(mesh);
        HashSet<int> placed = [];
        for (int s = 0; s < mesh.Sheets.Count; s++)
        {
            map.JoinMarkedTriangles(mesh, s, placed);
        }

        map.PlaceContacts(net, terminals, placed);
        map.JoinNodes(terminals);
        return map;
    }

    /// <summary>Group of a vertex of a sheet.</summary>
    public int GroupOfVertex(int sheet, int vertex) => _groups.Find(_firstVertex[sheet] + vertex);

    /// <summary>Group of a barrel's rim on a layer, or -1 where it meets no copper there.</summary>
    public int GroupOfBarrel(int barrel, int layer) =>
        _barrelNodes.TryGetValue((barrel, layer), out int member) ? _groups.Find(member) : -1;

    /// <summary>Group of a contact, numbered over all terminals.</summary>
    public int GroupOfContact(int contact) => _groups.Find(_firstContact + contact);

    /// <summary>Node of a vertex of a sheet.</summary>
    public int NodeOfVertex(int sheet, int vertex) => _nodes.Find(_firstVertex[sheet] + vertex);

    /// <summary>Node of any member: a group, a contact or a vertex.</summary>
    public int NodeOf(int member) => _nodes.Find(member);

    /// <summary>Number of the first contact of a terminal; for the number of terminals, the number of all contacts.</summary>
    public int FirstContactOf(int terminal) => _firstContactOfTerminal[terminal];

    /// <summary>All triangles of one barrel on one layer, and all of one contact, are each one node.</summary>
    private void JoinMarkedTriangles(NetMesh mesh, int s, HashSet<int> placed)
    {
        (int layer, SheetMesh sheet) = mesh.Sheets[s];
        for (int t = 0; t < sheet.TriangleCount; t++)
        {
            if (!sheet.IsHeld(t))
            {
                continue;
            }

            int marker = sheet.TriangleMarkers[t];

            int node;
            if (marker > mesh.BarrelCount)
            {
                int contact = marker - mesh.BarrelCount - 1;
                placed.Add(contact);
                node = _firstContact + contact;
            }
            else if (!_barrelNodes.TryGetValue((marker - 1, layer), out node))
            {
                _barrelNodes[(marker - 1, layer)] = node = _firstVertex[s] + sheet.Triangles[3 * t];
            }

            for (int k = 0; k < 3; k++)
            {
                _groups.Join(_firstVertex[s] + sheet.Triangles[(3 * t) + k], node);
            }
        }
    }

    private void PlaceContacts(Net net, IReadOnlyList<BoundTerminal> terminals, HashSet<int> placed)
    {
        int contact = 0;
        foreach (BoundTerminal terminal in terminals)
        {
            foreach (Contact each in terminal.Contacts)
            {
                PointNm[] centres = [.. each.Areas.Select(area => BoxNm.Of(area.Outline).Centre)];
                for (int b = 0; b < net.Barrels.Count; b++)
                {
                    if (each.Barrels.Any(barrel => ReferenceEquals(barrel, net.Barrels[b])) || IsUnder(net.Barrels[b], centres))
                    {
                        JoinBarrel(net.Barrels[b], b, contact, placed);
                    }
                }

                if (!placed.Contains(contact))
                {
                    UnplacedContact ??= $"{terminal.Name} ({each.Name})";
                }

                contact++;
            }

            _firstContactOfTerminal.Add(contact);
        }
    }

    private void JoinNodes(IReadOnlyList<BoundTerminal> terminals)
    {
        for (int member = 0; member < Size; member++)
        {
            _nodes.Join(member, _groups.Find(member));
        }

        for (int t = 0; t < terminals.Count; t++)
        {
            for (int c = FirstContactOf(t); terminals[t].IsJoined && c < FirstContactOf(t + 1); c++)
            {
                _nodes.Join(_firstContact + FirstContactOf(t), _firstContact + c);
            }
        }
    }

    /// <summary>A pad no larger than its own hole leaves no copper to meet: it meets the barrel.</summary>
    private static bool IsUnder(Barrel barrel, PointNm[] centres) =>
        Array.Exists(centres, centre => centre.DistanceNmTo(barrel.Centre) < barrel.Feature.ToolDiameterNm / 4.0);

    private void JoinBarrel(Barrel barrel, int number, int contact, HashSet<int> placed)
    {
        foreach (int layer in barrel.Layers)
        {
            if (_barrelNodes.TryGetValue((number, layer), out int member))
            {
                _groups.Join(member, _firstContact + contact);
                placed.Add(contact);
            }
        }
    }
}
