using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>What the flows of one sheet have in common: its edges and eddies, for any currents.</summary>
internal sealed class SheetSolver
{
    private readonly int _layer;
    private readonly SheetMesh _mesh;
    private readonly SheetConductance _conductance;
    private readonly Eddies _eddies;

    public SheetSolver(int layer, SheetMesh mesh, SheetConductance conductance)
    {
        (_layer, _mesh, _conductance) = (layer, mesh, conductance);
        Edges = new SheetEdges(mesh);
        _eddies = new Eddies(mesh, Edges, conductance);
    }

    public SheetEdges Edges { get; }

    /// <summary>Siemens per square of a triangle.</summary>
    public double ConductanceOf(int triangle) => _conductance.Of(_mesh, triangle);

    /// <param name="potentialV">At each vertex, volts; the linear shape functions' equations are met.</param>
    /// <param name="bulgeV">Bulge along the edge opposite each corner, volts.</param>
    /// <param name="leastGainW">Eddies that would lower the heat by less are left out.</param>
    public SheetFlow FlowOf(double[] potentialV, double[] bulgeV, double leastGainW)
    {
        double[] sourceX = new double[_mesh.TriangleCount], sourceY = new double[_mesh.TriangleCount];
        for (int t = 0; t < _mesh.TriangleCount; t++)
        {
            int a = _mesh.Triangles[3 * t], b = _mesh.Triangles[(3 * t) + 1], c = _mesh.Triangles[(3 * t) + 2];
            if (!_mesh.IsHeld(t) && !double.IsNaN(potentialV[a]))
            {
                TriangleGradient g = new(_mesh, t);
                double sheetS = _conductance.Of(_mesh, t);
                (double curvedX, double curvedY) = LinearCurrent.AlongBulges(g, bulgeV.AsSpan(3 * t, 3), -sheetS).Mean;
                sourceX[t] = curvedX - (sheetS * ((g.X0 * potentialV[a]) + (g.X1 * potentialV[b]) + (g.X2 * potentialV[c])));
                sourceY[t] = curvedY - (sheetS * ((g.Y0 * potentialV[a]) + (g.Y1 * potentialV[b]) + (g.Y2 * potentialV[c])));
            }
        }

        (double[] balancedX, double[] balancedY) = CurrentTubes.Balance(_mesh, Edges.Links, sourceX, sourceY);
        double[] eddyA = _eddies.Relax(balancedX, balancedY, leastGainW);
        return new SheetFlow(
            _layer, _mesh, _conductance, potentialV, bulgeV, sourceX, sourceY, balancedX, balancedY, eddyA);
    }
}
