namespace CopperPath.Meshing;

/// <summary>How the meshing of a sheet ended.</summary>
public enum MeshingOutcome
{
    /// <summary>The mesh meets every demand the artwork allows.</summary>
    Meshed,

    /// <summary>The domain holds no copper wider than the welding grid; there is no mesh.</summary>
    NoCopper,

    /// <summary>A number of <see cref="MeshQuality"/> is outside its range; there is no mesh.</summary>
    UnusableQuality,

    /// <summary>A marked ring has a marker that is not positive; there is no mesh.</summary>
    UnusableMarker,

    /// <summary>A coordinate lies beyond <see cref="Geometry.PointNm.LimitNm"/>; there is no mesh.</summary>
    CoordinatesTooLarge,

    /// <summary>The mesh conforms to the copper but refinement stopped at the vertex limit: coarser than asked.</summary>
    VertexLimitReached,

    /// <summary>The outlines could not be made to meet only at their ends; there is no mesh.</summary>
    OutlinesCross,
}

/// <summary>What happened to the outlines and the triangles on the way to a mesh.</summary>
/// <param name="ArtworkVertexCount">Vertices of all rings as given.</param>
/// <param name="BoundaryVertexCount">Vertices of the outlines after welding and simplification.</param>
/// <param name="ArtworkAreaM2">Area of the copper as given, square metres.</param>
/// <param name="DomainAreaM2">Area of the copper bounded by the simplified outlines, square metres.</param>
/// <param name="SteinerVertexCount">Vertices added by refinement.</param>
/// <param name="ForcedTriangleCount">Triangles below the angle asked because the artwork leaves no room for better.</param>
/// <param name="SplitPinchCount">
/// Vertices at which copper touched itself at a single point. They are doubled: a contact of no width carries no current.
/// </param>
public sealed record MeshingEvidence(
    int ArtworkVertexCount,
    int BoundaryVertexCount,
    double ArtworkAreaM2,
    double DomainAreaM2,
    int SteinerVertexCount,
    int ForcedTriangleCount,
    int SplitPinchCount)
{
    /// <summary>Area gained by welding and simplification as a fraction of the artwork's; negative when lost.</summary>
    public double RelativeAreaChange =>
        ArtworkAreaM2 == 0 ? 0 : (DomainAreaM2 - ArtworkAreaM2) / ArtworkAreaM2;
}

/// <summary>The result of meshing one sheet.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="Mesh">The mesh; null unless the outcome is Meshed or VertexLimitReached.</param>
/// <param name="Evidence">Counts and areas; null when there is no mesh.</param>
/// <param name="Reason">One sentence on an outcome other than Meshed; empty otherwise.</param>
public sealed record SheetMeshing(MeshingOutcome Outcome, SheetMesh? Mesh, MeshingEvidence? Evidence, string Reason)
{
    public int VertexCount => Mesh?.VertexCount ?? 0;

    public int TriangleCount => Mesh?.TriangleCount ?? 0;

    /// <summary>Smallest angle of the mesh, degrees; not a number when there is none.</summary>
    public double MinimumAngleDegrees => Mesh?.MinimumAngleDegrees ?? double.NaN;
}
