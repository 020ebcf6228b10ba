namespace CopperPath.Meshing;

/// <summary>
/// A conforming triangle mesh of one layer of one net. Coordinates are metres relative to the board origin.
/// </summary>
/// <param name="XM">Vertex abscissas, metres; one per vertex.</param>
/// <param name="YM">Vertex ordinates, metres; one per vertex.</param>
/// <param name="Triangles">Three vertex numbers per triangle, counter-clockwise.</param>
/// <param name="TriangleMarkers">Marker of the ring each triangle lies in, 0 for plain copper; one per triangle.</param>
/// <param name="IsBoundaryVertex">True for vertices on the edge of the copper; one per vertex.</param>
/// <param name="MinimumAngleDegrees">Smallest angle of any triangle, degrees.</param>
public sealed record SheetMesh(
    double[] XM,
    double[] YM,
    int[] Triangles,
    int[] TriangleMarkers,
    bool[] IsBoundaryVertex,
    double MinimumAngleDegrees)
{
    public int VertexCount => XM.Length;

    public int TriangleCount => TriangleMarkers.Length;
}
