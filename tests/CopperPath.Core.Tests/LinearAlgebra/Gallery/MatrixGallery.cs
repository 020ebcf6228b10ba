using CopperPath.LinearAlgebra;

namespace CopperPath.Core.Tests.LinearAlgebra.Gallery;

/// <summary>Generated matrices with known properties; everything random is seeded.</summary>
internal static class MatrixGallery
{
    /// <summary>
    /// Five-point Laplacian of a grid of interior points, h² taken out, zero Dirichlet values around it. Its
    /// eigenvalues are 4 sin²(pπ/2(nx+1)) + 4 sin²(qπ/2(ny+1)); the eigenvectors are products of sines.
    /// </summary>
    public static SymmetricSparseMatrix Poisson2D(int nx, int ny, double weightX = 1, double weightY = 1)
    {
        SparseMatrixBuilder builder = new(nx * ny, 3 * nx * ny);
        for (int y = 0; y < ny; y++)
        {
            for (int x = 0; x < nx; x++)
            {
                int here = (y * nx) + x;
                builder.Add(here, here, (2 * weightX) + (2 * weightY));
                if (x + 1 < nx)
                {
                    builder.Add(here + 1, here, -weightX);
                }

                if (y + 1 < ny)
                {
                    builder.Add(here + nx, here, -weightY);
                }
            }
        }

        return builder.Build();
    }

    /// <summary>Seven-point Laplacian of a cube with zero Dirichlet values around it.</summary>
    public static SymmetricSparseMatrix Poisson3D(int n)
    {
        SparseMatrixBuilder builder = new(n * n * n, 4 * n * n * n);
        for (int z = 0; z < n; z++)
        {
            for (int y = 0; y < n; y++)
            {
                for (int x = 0; x < n; x++)
                {
                    int here = (((z * n) + y) * n) + x;
                    builder.Add(here, here, 6);
                    if (x + 1 < n)
                    {
                        builder.Add(here + 1, here, -1);
                    }

                    if (y + 1 < n)
                    {
                        builder.Add(here + n, here, -1);
                    }

                    if (z + 1 < n)
                    {
                        builder.Add(here + (n * n), here, -1);
                    }
                }
            }
        }

        return builder.Build();
    }

    /// <summary>The tridiagonal matrix 2, −1: its inverse is min(i, j) (n + 1 − max(i, j)) / (n + 1), counted from 1.</summary>
    public static SymmetricSparseMatrix SecondDifference(int n)
    {
        SparseMatrixBuilder builder = new(n);
        for (int i = 0; i < n; i++)
        {
            builder.Add(i, i, 2);
            if (i > 0)
            {
                builder.Add(i, i - 1, -1);
            }
        }

        return builder.Build();
    }

    /// <summary>
    /// Conductances of linear triangles on an irregular mesh: grid points shaken by up to a fifth of the pitch, each
    /// cell cut along a random diagonal, the vertices numbered at random. Vertices of the left edge are tied to the
    /// reference by a conductance of one.
    /// </summary>
    public static SymmetricSparseMatrix TriangleMesh(int nx, int ny, int seed)
    {
        Random random = new(seed);
        int count = nx * ny;
        double[] xs = new double[count];
        double[] ys = new double[count];
        int[] number = new int[count];
        for (int v = 0; v < count; v++)
        {
            xs[v] = (v % nx) + (0.4 * (random.NextDouble() - 0.5));
            ys[v] = (v / nx) + (0.4 * (random.NextDouble() - 0.5));
            number[v] = v;
        }

        random.Shuffle(number);
        SparseMatrixBuilder builder = new(count, 20 * count);
        for (int y = 0; y + 1 < ny; y++)
        {
            for (int x = 0; x + 1 < nx; x++)
            {
                int a = (y * nx) + x;
                int b = a + 1;
                int c = b + nx;
                int d = a + nx;
                if (random.Next(2) == 0)
                {
                    AddTriangle(a, b, c);
                    AddTriangle(a, c, d);
                }
                else
                {
                    AddTriangle(a, b, d);
                    AddTriangle(b, c, d);
                }
            }
        }

        for (int y = 0; y < ny; y++)
        {
            builder.Add(number[y * nx], number[y * nx], 1);
        }

        return builder.Build();

        void AddTriangle(int p, int q, int r)
        {
            AddEdge(p, q, r);
            AddEdge(q, r, p);
            AddEdge(r, p, q);
        }

        // Half the cotangent of the angle opposite: the conductance of an edge (any finite-element textbook).
        void AddEdge(int p, int q, int opposite)
        {
            double ux = xs[p] - xs[opposite];
            double uy = ys[p] - ys[opposite];
            double vx = xs[q] - xs[opposite];
            double vy = ys[q] - ys[opposite];
            double cotangent = ((ux * vx) + (uy * vy)) / Math.Abs((ux * vy) - (uy * vx));
            builder.AddBranch(number[p], number[q], cotangent / 2);
        }
    }

    /// <summary>
    /// Copper sheets above one another, joined by random plated holes of a conductance far above that of the sheet.
    /// </summary>
    public static SymmetricSparseMatrix SheetsWithHoles(int sheets, int nx, int ny, int holes, int seed)
    {
        Random random = new(seed);
        int perSheet = nx * ny;
        SparseMatrixBuilder builder = new(sheets * perSheet);
        for (int v = 0; v < sheets * perSheet; v++)
        {
            int x = v % nx;
            int y = v / nx % ny;
            if (x + 1 < nx)
            {
                builder.AddBranch(v, v + 1, 1);
            }

            if (y + 1 < ny)
            {
                builder.AddBranch(v, v + nx, 1);
            }
        }

        for (int h = 0; h < holes; h++)
        {
            int v = random.Next(perSheet);
            for (int s = 0; s + 1 < sheets; s++)
            {
                builder.AddBranch((s * perSheet) + v, ((s + 1) * perSheet) + v, 50);
            }
        }

        builder.Add(0, 0, 1000);
        return builder.Build();
    }

    /// <summary>A random pattern made positive definite by a diagonal that outweighs each row.</summary>
    public static SymmetricSparseMatrix RandomDominant(int n, int entriesPerRow, int seed)
    {
        Random random = new(seed);
        double[] rowSums = new double[n];
        SparseMatrixBuilder builder = new(n);
        for (int k = 0; k < n * entriesPerRow / 2; k++)
        {
            int i = random.Next(n);
            int j = random.Next(n);
            if (i != j)
            {
                double value = (2 * random.NextDouble()) - 1;
                builder.Add(i, j, value);
                rowSums[i] += Math.Abs(value);
                rowSums[j] += Math.Abs(value);
            }
        }

        for (int i = 0; i < n; i++)
        {
            builder.Add(i, i, rowSums[i] + 0.01 + random.NextDouble());
        }

        return builder.Build();
    }

    /// <summary>A dense first row and column and a diagonal: harmless only if the hub is eliminated last.</summary>
    public static SymmetricSparseMatrix Star(int n)
    {
        SparseMatrixBuilder builder = new(n);
        for (int i = 1; i < n; i++)
        {
            builder.AddBranch(0, i, 1);
            builder.Add(i, i, 1);
        }

        return builder.Build();
    }

    /// <summary>
    /// The moler matrix UᵀU, U unit upper triangular with −1 above the diagonal: dense, positive definite, its lowest
    /// eigenvalue falling like 4⁻ⁿ; its Cholesky factor is Uᵀ exactly.
    /// </summary>
    public static SymmetricSparseMatrix Moler(int n)
    {
        SparseMatrixBuilder builder = new(n);
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < i; j++)
            {
                builder.Add(i, j, j - 1);
            }

            builder.Add(i, i, i + 1);
        }

        return builder.Build();
    }

    /// <summary>The pieces side by side, without any entry between them.</summary>
    public static SymmetricSparseMatrix Disconnected(params SymmetricSparseMatrix[] pieces)
    {
        SparseMatrixBuilder builder = new(pieces.Sum(piece => piece.Size));
        int offset = 0;
        foreach (SymmetricSparseMatrix piece in pieces)
        {
            for (int j = 0; j < piece.Size; j++)
            {
                for (int k = piece.ColumnPointers[j]; k < piece.ColumnPointers[j + 1]; k++)
                {
                    builder.Add(offset + piece.RowIndices[k], offset + j, piece.Values[k]);
                }
            }

            offset += piece.Size;
        }

        return builder.Build();
    }

    public static double[] RandomVector(int n, int seed)
    {
        Random random = new(seed);
        double[] vector = new double[n];
        for (int i = 0; i < n; i++)
        {
            vector[i] = (2 * random.NextDouble()) - 1;
        }

        return vector;
    }

    /// <summary>One of the matrices above by name, for tests that run over all of them.</summary>
    public static SymmetricSparseMatrix Named(string name) => name switch
    {
        "poisson 2-D 40x40" => Poisson2D(40, 40),
        "poisson 2-D 7x300" => Poisson2D(7, 300),
        "poisson 2-D anisotropic" => Poisson2D(60, 60, 1, 1e-4),
        "poisson 3-D" => Poisson3D(14),
        "second difference" => SecondDifference(500),
        "triangle mesh" => TriangleMesh(90, 70, 1),
        "large triangle mesh" => TriangleMesh(200, 220, 9),
        "sheets with holes" => SheetsWithHoles(4, 40, 40, 60, 2),
        "random dominant" => RandomDominant(600, 5, 3),
        "star" => Star(3000),
        "diagonal" => RandomDominant(50, 0, 4),
        "single" => RandomDominant(1, 0, 5),
        "disconnected" => Disconnected(Poisson2D(30, 30), SecondDifference(40), Star(20), TriangleMesh(35, 30, 6)),
        "dense" => RandomDominant(150, 400, 7),
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    public static TheoryData<string> Names { get; } =
    [
        "poisson 2-D 40x40",
        "poisson 2-D 7x300",
        "poisson 2-D anisotropic",
        "poisson 3-D",
        "second difference",
        "triangle mesh",
        "sheets with holes",
        "random dominant",
        "star",
        "diagonal",
        "single",
        "disconnected",
        "dense",
    ];
}
