using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>
/// Potential and currents of one sheet on the way to a result: the current that follows from the approximate potential,
/// and the balanced one made from it. Their difference bounds the error of both (see <see cref="CurrentTubes"/>).
/// </summary>
/// <param name="Layer">Layer number, 1 = top.</param>
/// <param name="Mesh">The triangles.</param>
/// <param name="Conductance">Siemens per square, bare and tinned.</param>
/// <param name="PotentialV">At each vertex, volts; not a number on copper no terminal reaches.</param>
/// <param name="SourceX">-G grad V in each triangle, amperes per metre; 0 in contacts and barrels.</param>
/// <param name="SourceY">The same, y.</param>
/// <param name="BalancedX">Balanced sheet current, amperes per metre.</param>
/// <param name="BalancedY">The same, y.</param>
internal sealed record SheetFlow(
    int Layer,
    SheetMesh Mesh,
    SheetConductance Conductance,
    double[] PotentialV,
    double[] SourceX,
    double[] SourceY,
    double[] BalancedX,
    double[] BalancedY)
{
    public static SheetFlow Of(
        int layer, SheetMesh mesh, TriangleLinks links, Eddies eddies, SheetConductance conductance, double[] potentialV)
    {
        double[] sourceX = new double[mesh.TriangleCount], sourceY = new double[mesh.TriangleCount];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            int a = mesh.Triangles[3 * t], b = mesh.Triangles[(3 * t) + 1], c = mesh.Triangles[(3 * t) + 2];
            if (!mesh.IsHeld(t) && !double.IsNaN(potentialV[a]))
            {
                TriangleGradient g = new(mesh, t);
                double sheetS = conductance.Of(mesh, t);
                sourceX[t] = -sheetS * ((g.X0 * potentialV[a]) + (g.X1 * potentialV[b]) + (g.X2 * potentialV[c]));
                sourceY[t] = -sheetS * ((g.Y0 * potentialV[a]) + (g.Y1 * potentialV[b]) + (g.Y2 * potentialV[c]));
            }
        }

        (double[] balancedX, double[] balancedY) = CurrentTubes.Balance(mesh, links, eddies, sourceX, sourceY);
        return new SheetFlow(layer, mesh, conductance, potentialV, sourceX, sourceY, balancedX, balancedY);
    }

    /// <summary>Heat the potential's own current makes, watts: never more than the true one.</summary>
    public double SourceLossW() => Heat(SourceX, SourceY);

    /// <summary>Heat the balanced current makes, watts: never less than the true one.</summary>
    public double BalancedLossW() => Heat(BalancedX, BalancedY);

    /// <summary>Heat the difference of the two currents would make in a triangle, watts; summed, the distance of the bounds.</summary>
    public double ErrorW(int triangle) => ErrorProductW(this, triangle);

    /// <summary>The same as a product with another flow in the same sheet.</summary>
    public double ErrorProductW(SheetFlow other) =>
        Enumerable.Range(0, Mesh.TriangleCount).Sum(triangle => ErrorProductW(other, triangle));

    private double ErrorProductW(SheetFlow other, int t) =>
        (((BalancedX[t] - SourceX[t]) * (other.BalancedX[t] - other.SourceX[t]))
            + ((BalancedY[t] - SourceY[t]) * (other.BalancedY[t] - other.SourceY[t])))
        * new TriangleGradient(Mesh, t).AreaM2 / Conductance.Of(Mesh, t);

    private double Heat(double[] x, double[] y)
    {
        double heatW = 0;
        for (int t = 0; t < x.Length; t++)
        {
            heatW += ((x[t] * x[t]) + (y[t] * y[t])) * new TriangleGradient(Mesh, t).AreaM2 / Conductance.Of(Mesh, t);
        }

        return heatW;
    }
}
