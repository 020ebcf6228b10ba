namespace CopperPath.Meshing;

/// <summary>
/// A conforming triangle mesh of one layer of one net. Coordinates are metres relative to the board origin.
/// </summary>
/// <param name="XM">Vertex abscissas, metres; one per vertex.</param>
/// <param name="YM">Vertex ordinates, metres; one per vertex.</param>
/// <param name="Triangles">Three vertex numbers per triangle, counter-clockwise.</param>
/// <param name="TriangleMarkers">
/// Marker of the ring each triangle lies in, 0 for plain copper, <see cref="Tinned"/> for copper under solder; one per triangle.
/// </param>
/// <param name="IsBoundaryVertex">True for vertices on the edge of the copper; one per vertex.</param>
/// <param name="MinimumAngleDegrees">Smallest angle of any triangle outside held rings, degrees.</param>
public sealed record SheetMesh(
    double[] XM,
    double[] YM,
    int[] Triangles,
    int[] TriangleMarkers,
    bool[] IsBoundaryVertex,
    double MinimumAngleDegrees)
{
    /// <summary>Marker of copper with solder on it: it conducts better than plain copper and is otherwise the same.</summary>
    public const int Tinned = -1;

    private TriangleLinks? _links;

    public int VertexCount => XM.Length;

    public int TriangleCount => TriangleMarkers.Length;

    /// <summary>Which edges of the triangles lie back to back; found when first asked for.</summary>
    public TriangleLinks Links => LazyInitializer.EnsureInitialized(ref _links, () => new TriangleLinks(this));

    /// <summary>Whether a triangle lies in a marked ring: a contact or barrel that holds it at one potential.</summary>
    public bool IsHeld(int triangle) => TriangleMarkers[triangle] > 0;
}
