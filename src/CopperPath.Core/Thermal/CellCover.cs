using CopperPath.Geometry;

namespace CopperPath.Thermal;

/// <summary>
/// How much of each column something fills, and how much of each of its sides it crosses. Heat passes between columns through the
/// copper that crosses the line between them: a strip narrower than a column conducts along its length as it does in nature.
/// </summary>
internal sealed class CellCover(int columns)
{
    private readonly CoveredSides[] _sides = new CoveredSides[columns];

    /// <summary>Area filled of each column, square metres.</summary>
    public double[] AreaM2 { get; } = new double[columns];

    /// <summary>
    /// Who a column belongs to: the net with most copper in it; -1 where there is none. The sides are that net's alone: two nets that
    /// share a column wider than the gap between them are not made one.
    /// </summary>
    public int[] Owner { get; } = [.. Enumerable.Repeat(-1, columns)];

    /// <summary>Lengths covered of the sides of a column, metres.</summary>
    public ref CoveredSides SidesOf(int column) => ref _sides[column];

    /// <summary>Length over which two columns are joined, metres, as the narrower one's side says.</summary>
    public double JoinedM(HeatCells cells, CellFace face)
    {
        if (Owner[face.Low] < 0 || Owner[face.Low] != Owner[face.High])
        {
            return 0;
        }

        double sideOfLowM = face.IsAcrossX ? cells.BoxOf(face.Low).HeightM : cells.BoxOf(face.Low).WidthM;
        double sideOfHighM = face.IsAcrossX ? cells.BoxOf(face.High).HeightM : cells.BoxOf(face.High).WidthM;
        return sideOfLowM < 1.5 * sideOfHighM
            ? face.IsAcrossX ? _sides[face.Low].EastM : _sides[face.Low].NorthM
            : face.IsAcrossX ? _sides[face.High].WestM : _sides[face.High].SouthM;
    }

    /// <summary>The cover of nets' polygons on one layer.</summary>
    /// <param name="cells">Columns.</param>
    /// <param name="nets">Each net's polygons, which do not overlap; an early net wins over a later one of like area.</param>
    public static CellCover Of(TreeCells cells, IEnumerable<IReadOnlyList<PolygonNm>> nets)
    {
        CellCover cover = new(cells.Count);
        CellClipper clipper = new(cells.Tree);
        double[] mostM2 = new double[cells.Count];
        double[] ownM2 = new double[cells.Count];
        CoveredSides[] own = new CoveredSides[cells.Count];
        List<int> touched = [];
        int number = -1;
        foreach (IReadOnlyList<PolygonNm> net in nets)
        {
            number++;
            touched.Clear();
            foreach (PolygonNm polygon in net)
            {
                clipper.Divide(polygon.Rings, Add);
            }

            foreach (int column in touched)
            {
                cover.AreaM2[column] += ownM2[column];
                if (ownM2[column] > mostM2[column] && ownM2[column] > CellClipper.LeastShare * cells.BoxOf(column).AreaM2)
                {
                    (mostM2[column], cover.Owner[column], cover._sides[column]) = (ownM2[column], number, own[column]);
                }

                (ownM2[column], own[column]) = (0, default);
            }
        }

        return cover;

        void Add(int leaf, double areaM2, CoveredSides sides)
        {
            int column = cells.ColumnOf(leaf);
            if (ownM2[column] == 0)
            {
                touched.Add(column);
            }

            ownM2[column] += areaM2;
            own[column] += sides;
        }
    }

    /// <summary>The cover of a raster on lines.</summary>
    public static CellCover Of(CopperRaster raster, GridAxis x, GridAxis y)
    {
        CellCover cover = new(x.Count * y.Count);
        for (int column = 0; column < cover.AreaM2.Length; column++)
        {
            (int i, int j) = (column % x.Count, column / x.Count);
            cover.AreaM2[column] = raster.AreaM2(i, j);
            cover.Owner[column] = raster.Share(i, j) > CellClipper.LeastShare ? 0 : -1;
            cover._sides[column] = new CoveredSides(
                raster.AcrossXM(i, j), raster.AcrossXM(i + 1, j), raster.AcrossYM(i, j), raster.AcrossYM(i, j + 1));
        }

        return cover;
    }
}

/// <summary>Lengths covered of the four sides of a column, metres.</summary>
internal readonly record struct CoveredSides(double WestM, double EastM, double SouthM, double NorthM)
{
    public static CoveredSides operator +(CoveredSides a, CoveredSides b) =>
        new(a.WestM + b.WestM, a.EastM + b.EastM, a.SouthM + b.SouthM, a.NorthM + b.NorthM);
}
