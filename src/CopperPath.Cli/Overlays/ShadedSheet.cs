using CopperPath.Meshing;

namespace CopperPath.Cli.Overlays;

/// <summary>One meshed piece of copper and the field on it.</summary>
/// <param name="Mesh">The mesh, in metres.</param>
/// <param name="Values">
/// Field values in the unit of the picture's <see cref="ScaleSpec"/>: one per triangle, three per triangle with
/// <see cref="FieldShading.PerCorner"/>, one per vertex with <see cref="FieldShading.PerVertex"/>. A value that is not
/// finite leaves its triangle unshaded.
/// </param>
/// <param name="Shading">How values become shades.</param>
public sealed record ShadedSheet(SheetMesh Mesh, double[] Values, FieldShading Shading = FieldShading.PerTriangle)
{
    /// <summary>Value of a triangle as a whole: its own, or the mean of its three; not finite where one of them is not.</summary>
    public double MeanOf(int triangle)
    {
        int corner = 3 * triangle;
        int[] v = Mesh.Triangles;
        return Shading switch
        {
            FieldShading.PerTriangle => Values[triangle],
            FieldShading.PerCorner => (Values[corner] + Values[corner + 1] + Values[corner + 2]) / 3,
            _ => (Values[v[corner]] + Values[v[corner + 1]] + Values[v[corner + 2]]) / 3,
        };
    }
}

/// <summary>How the values of a sheet become shades.</summary>
public enum FieldShading
{
    /// <summary>Each triangle in the shade of its own value: the picture shows exactly what was computed.</summary>
    PerTriangle,

    /// <summary>Three values per triangle, linear between them: for what is linear in each triangle, like current density.</summary>
    PerCorner,

    /// <summary>Vertex values, linear between them: for potential and temperature.</summary>
    PerVertex,
}
