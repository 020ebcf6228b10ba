using CopperPath.Capacity;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>What a trace carries on the layers of one kind, and the copper of this board that is rated by it.</summary>
/// <param name="Placement">Faces of the board or layers inside it.</param>
/// <param name="ThicknessM">Finished copper, metres.</param>
/// <param name="Marks">The hottest section of each stretch on these layers, in the order of the brief.</param>
/// <param name="Layers">The layers of this kind that carry reviewed copper, from the top.</param>
/// <param name="AllowedK">Rises the brief allows on them, rising, kelvin.</param>
internal sealed record LayerCapacity(
    ConductorPlacement Placement, double ThicknessM, IReadOnlyList<LayerCapacity.Mark> Marks, IReadOnlyList<int> Layers, IReadOnlyList<double> AllowedK)
{
    private const int Points = 61;

    /// <summary>A section with less of its stretch's current than this carries none worth a mark.</summary>
    private const double LeastShare = 1e-3;

    /// <summary>One section on the plot.</summary>
    /// <param name="Stretch">Where it is.</param>
    /// <param name="Rated">The section and its rise.</param>
    /// <param name="WidthM">Its width, that of bare copper which warms alike where solder helps, metres.</param>
    public sealed record Mark(Stretch Stretch, RatedSection Rated, double WidthM)
    {
        public double CurrentA => Rated.Section.CurrentA;

        public double AllowedK => Stretch.Solved.Bound.Review.Limits.TemperatureRiseK;

        public bool IsBeyond => Rated.RiseK > AllowedK;
    }

    /// <summary>One point of a curve.</summary>
    /// <param name="WidthM">Width, metres.</param>
    /// <param name="CurrentA">Current at the rise, amperes.</param>
    /// <param name="IsInRange">True where the relation is known to hold.</param>
    public sealed record Point(double WidthM, double CurrentA, bool IsInRange);

    /// <summary>Kinds of layers in use, faces first, then by thickness.</summary>
    public static IReadOnlyList<LayerCapacity> Of(IReadOnlyList<Stretch> stretches, ConductorRating rating, Stackup stack)
    {
        List<Mark> marks = [];
        List<LayerCapacity> kinds = [];
        foreach (Stretch stretch in stretches)
        {
            marks.AddRange(stretch.HottestOfEachLayer
                .Where(rated => rated.Section.WidthM > 0 && rated.Section.CurrentA > LeastShare * stretch.EnteringA)
                .Select(rated => new Mark(stretch, rated, rating.BareWidthM(rated.Section))));
        }

        foreach (ConductorPlacement placement in Enum.GetValues<ConductorPlacement>())
        {
            foreach (double thicknessM in stack.ThicknessM.Distinct().Order())
            {
                List<Mark> here = marks.FindAll(mark => rating.PlacementOf(mark.Rated.Section.Layer) == placement && stack.ThicknessM[mark.Rated.Section.Layer - 1] == thicknessM);
                if (here.Count > 0)
                {
                    kinds.Add(new LayerCapacity(
                        placement,
                        thicknessM,
                        [.. here.GroupBy(mark => mark.Stretch.Number).Select(one => one.MaxBy(mark => mark.Rated.RiseK)!)],
                        [.. here.Select(mark => mark.Rated.Section.Layer).Distinct().Order()],
                        [.. here.Select(mark => mark.AllowedK).Distinct().Order()]));
                }
            }
        }

        return kinds;
    }

    /// <summary>Current over width at a rise by a relation.</summary>
    public IReadOnlyList<Point> Curve(ConductorRating rating, double riseK, double fromM, double toM)
    {
        Point[] points = new Point[Points];
        for (int i = 0; i < Points; i++)
        {
            double widthM = fromM * Math.Pow(toM / fromM, i / (Points - 1.0));
            CurrentEstimate estimate = rating.TraceCurrent(Layers[0], widthM, riseK);
            points[i] = new Point(widthM, estimate.CurrentA, estimate.Basis.IsInRange && !rating.IsBorrowedFor(Layers[0]));
        }

        return points;
    }
}
