using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>The edges of a sheet's plain triangles, each numbered once, however many triangles it bounds.</summary>
internal sealed class SheetEdges
{
    private readonly int[] _numberOf;
    private readonly bool[] _isRim;
    private readonly bool[] _isCopperEdge;

    public SheetEdges(SheetMesh mesh)
    {
        Links = mesh.Links;
        _numberOf = new int[mesh.Triangles.Length];
        Array.Fill(_numberOf, TriangleLinks.None);
        List<bool> isRim = [], isCopperEdge = [];
        for (int edge = 0; edge < _numberOf.Length; edge++)
        {
            int twin = Links.Twin(edge);
            bool hasPlainTwin = twin != TriangleLinks.None && !mesh.IsHeld(twin / 3);
            if (mesh.IsHeld(edge / 3) || (hasPlainTwin && twin < edge))
            {
                continue;
            }

            _numberOf[edge] = isRim.Count;
            if (hasPlainTwin)
            {
                _numberOf[twin] = isRim.Count;
            }

            isRim.Add(twin != TriangleLinks.None && !hasPlainTwin);
            isCopperEdge.Add(twin == TriangleLinks.None);
        }

        (_isRim, _isCopperEdge) = ([.. isRim], [.. isCopperEdge]);
    }

    /// <summary>Which directed edges lie back to back.</summary>
    public TriangleLinks Links { get; }

    public int Count => _isRim.Length;

    /// <summary>Number of the edge opposite a corner of a plain triangle; corners count 3 t + k.</summary>
    public int Opposite(int corner) => _numberOf[TriangleLinks.Next(corner)];

    /// <summary>Whether an edge lies on the rim of a contact or barrel, all of it at one potential.</summary>
    public bool IsRim(int edge) => _isRim[edge];

    /// <summary>Whether an edge lies on the edge of the copper, which no current crosses.</summary>
    public bool IsCopperEdge(int edge) => _isCopperEdge[edge];
}
