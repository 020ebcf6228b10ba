using CopperPath.Capacity;
using CopperPath.Electrical;
using CopperPath.Judging;
using CopperPath.Quantities;

namespace CopperPath.Cli.Report;

/// <summary>What a trace carries on the layers of one kind, and the copper of this board that is rated by it.</summary>
/// <param name="Placement">Faces of the board or layers inside it.</param>
/// <param name="ThicknessM">Finished copper, metres.</param>
/// <param name="Layers">The layers of this kind that carry reviewed copper, from the top.</param>
/// <param name="AllowedK">Rises the brief allows on them, rising, kelvin.</param>
/// <param name="Marks">The hottest section of each stretch on them, in the order of the brief.</param>
internal sealed record LayerCapacity(
    ConductorPlacement Placement, double ThicknessM, IReadOnlyList<int> Layers, IReadOnlyList<double> AllowedK, IReadOnlyList<LayerCapacity.Mark> Marks)
{
    private const int Points = 61;

    /// <summary>A section with less of its stretch's current than this carries none worth a mark.</summary>
    private const double LeastShare = 1e-3;

    /// <summary>One section on the plot.</summary>
    /// <param name="Stretch">Where it is.</param>
    /// <param name="WidthM">Its width, that of bare copper which warms alike where solder helps, metres.</param>
    /// <param name="CurrentA">Current through it, amperes.</param>
    /// <param name="IsBeyond">True when it rises by more than is allowed.</param>
    public sealed record Mark(Stretch Stretch, double WidthM, double CurrentA, bool IsBeyond);

    /// <summary>Kinds of layers in use, faces first, then by thickness.</summary>
    public static IReadOnlyList<LayerCapacity> Of(IReadOnlyList<Stretch> stretches, ConductorRating rating, Stackup stack) =>
    [
        .. stretches.SelectMany(stretch => stretch.Solved.Sections.Where(section => section.WidthM > 0 && section.CurrentA > LeastShare * stretch.EnteringA).Select(section => (stretch, section)))
            .GroupBy(cut => (Placement: rating.PlacementOf(cut.section.Layer), ThicknessM: stack.ThicknessM[cut.section.Layer - 1]))
            .OrderBy(kind => kind.Key.Placement).ThenBy(kind => kind.Key.ThicknessM)
            .Select(kind => new LayerCapacity(
                kind.Key.Placement,
                kind.Key.ThicknessM,
                [.. kind.Select(cut => cut.section.Layer).Distinct().Order()],
                [.. kind.Select(cut => AllowedFor(cut.stretch)).Distinct().Order()],
                [.. kind.GroupBy(cut => cut.stretch.Number).OrderBy(cuts => cuts.Key).Select(cuts => MarkOf(cuts.First().stretch, cuts.MaxBy(cut => rating.TraceRiseK(cut.section)).section, rating))])),
    ];

    /// <summary>Current over width at a rise by a relation, and whether each point lies where the relation is known to hold.</summary>
    public IReadOnlyList<(double WidthM, double CurrentA, bool IsInRange)> Curve(ConductorRating rating, double riseK, double fromM, double toM) =>
    [
        .. Enumerable.Range(0, Points).Select(i => fromM * Math.Pow(toM / fromM, i / (Points - 1.0))).Select(widthM =>
        {
            CurrentEstimate estimate = rating.TraceCurrent(Layers[0], widthM, riseK);
            return (widthM, estimate.CurrentA, estimate.Basis.IsInRange && !rating.IsBorrowedFor(Layers[0]));
        }),
    ];

    private static double AllowedFor(Stretch stretch) => stretch.Solved.Bound.Review.Limits.TemperatureRiseK;

    private static Mark MarkOf(Stretch stretch, Section section, ConductorRating rating) => new(
        stretch, rating.BareWidthM(section), section.CurrentA, rating.TraceRiseK(section) > AllowedFor(stretch));
}
