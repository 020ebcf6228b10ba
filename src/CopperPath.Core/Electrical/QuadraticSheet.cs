using CopperPath.Meshing;

namespace CopperPath.Electrical;

/// <summary>
/// The energy of a field on one sheet that is quadratic in every triangle: linear between its corners, plus a bulge
/// 4 l_i l_j along each edge (hierarchical shape functions: O. C. Zienkiewicz, D. W. Kelly, J. Gago and I. Babuska, in
/// The Mathematics of Finite Elements and Applications IV, 1982). In the middle of an edge the gradient is that of the
/// linear part plus twice the gradient of the opposite corner's shape function times (the bulges of the two other edges
/// less that of the edge itself), and three such middles integrate the energy exactly.
/// </summary>
internal sealed class QuadraticSheet
{
    private readonly int[] _vertexUnknown;
    private readonly int[] _bulgeUnknown;

    /// <summary>For each corner, weight times area times the product of the gradients of the two other shape functions.</summary>
    private readonly double[] _products;

    /// <param name="mesh">The sheet.</param>
    /// <param name="weightOf">Weight of the squared gradient in a triangle; 0 keeps the triangle out.</param>
    /// <param name="vertexUnknownOf">Unknown at a vertex; negative where the value is zero.</param>
    /// <param name="bulgeUnknownOf">Unknown of the bulge opposite a corner; negative where there is none.</param>
    public QuadraticSheet(
        SheetMesh mesh, Func<int, double> weightOf, Func<int, int> vertexUnknownOf, Func<int, int> bulgeUnknownOf)
    {
        _vertexUnknown = new int[mesh.Triangles.Length];
        _bulgeUnknown = new int[mesh.Triangles.Length];
        _products = new double[mesh.Triangles.Length];
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            double weight = mesh.IsHeld(t) ? 0 : weightOf(t);
            if (weight == 0)
            {
                continue;
            }

            TriangleGradient g = new(mesh, t);
            double scale = weight * g.AreaM2;
            _products[3 * t] = scale * ((g.X1 * g.X2) + (g.Y1 * g.Y2));
            _products[(3 * t) + 1] = scale * ((g.X2 * g.X0) + (g.Y2 * g.Y0));
            _products[(3 * t) + 2] = scale * ((g.X0 * g.X1) + (g.Y0 * g.Y1));
            for (int corner = 3 * t; corner < (3 * t) + 3; corner++)
            {
                _vertexUnknown[corner] = vertexUnknownOf(mesh.Triangles[corner]);
                _bulgeUnknown[corner] = bulgeUnknownOf(corner);
            }
        }
    }

    /// <summary>Adds half the derivative of the energy by each unknown: the matrix times the unknowns.</summary>
    public void AddProduct(ReadOnlySpan<double> unknowns, Span<double> product)
    {
        for (int corner = 0; corner < _products.Length; corner += 3)
        {
            double q12 = _products[corner], q20 = _products[corner + 1], q01 = _products[corner + 2];
            if (q12 == 0 && q20 == 0)
            {
                continue;
            }

            int i0 = _vertexUnknown[corner], i1 = _vertexUnknown[corner + 1], i2 = _vertexUnknown[corner + 2];
            int e0 = _bulgeUnknown[corner], e1 = _bulgeUnknown[corner + 1], e2 = _bulgeUnknown[corner + 2];
            double v0 = At(unknowns, i0), v1 = At(unknowns, i1), v2 = At(unknowns, i2);
            double c0 = At(unknowns, e0), c1 = At(unknowns, e1), c2 = At(unknowns, e2);
            double s0 = c1 + c2 - c0, s1 = c2 + c0 - c1, s2 = c0 + c1 - c2;
            double p01 = q01 * (v1 - v0), p12 = q12 * (v2 - v1), p20 = q20 * (v0 - v2);
            double p0 = p01 - p20, p1 = p12 - p01, p2 = p20 - p12;

            double w0 = p0 - (2 * (q20 + q01) * s0), w1 = p1 - (2 * (q01 + q12) * s1), w2 = p2 - (2 * (q12 + q20) * s2);
            double sum = w0 + w1 + w2;
            AddTo(product, e0, 2.0 / 3 * (sum - (2 * w0)));
            AddTo(product, e1, 2.0 / 3 * (sum - (2 * w1)));
            AddTo(product, e2, 2.0 / 3 * (sum - (2 * w2)));

            double b01 = q01 * (s1 - s0), b12 = q12 * (s2 - s1), b20 = q20 * (s0 - s2);
            AddTo(product, i0, p0 + (2.0 / 3 * (b01 - b20)));
            AddTo(product, i1, p1 + (2.0 / 3 * (b12 - b01)));
            AddTo(product, i2, p2 + (2.0 / 3 * (b20 - b12)));
        }
    }

    /// <summary>Adds the diagonal of the matrix.</summary>
    public void AddDiagonal(Span<double> diagonal)
    {
        for (int corner = 0; corner < _products.Length; corner += 3)
        {
            double q12 = _products[corner], q20 = _products[corner + 1], q01 = _products[corner + 2];
            double bulge = -8.0 / 3 * (q12 + q20 + q01);
            for (int k = 0; k < 3; k++)
            {
                if (bulge > 0)
                {
                    AddTo(diagonal, _bulgeUnknown[corner + k], bulge);
                    AddTo(diagonal, _vertexUnknown[corner + k], _products[corner + k] - (q12 + q20 + q01));
                }
            }
        }
    }

    private static double At(ReadOnlySpan<double> values, int index) => index < 0 ? 0 : values[index];

    private static void AddTo(Span<double> values, int index, double addend)
    {
        if (index >= 0)
        {
            values[index] += addend;
        }
    }
}
