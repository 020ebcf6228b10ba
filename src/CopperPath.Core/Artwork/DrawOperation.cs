using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>What an operation does.</summary>
internal enum DrawKind
{
    /// <summary>An aperture put down at a point.</summary>
    Flash,

    /// <summary>A pen moved along one line or arc.</summary>
    Stroke,

    /// <summary>A filled contour; its last step comes back to its start, by a straight line if need be.</summary>
    Contour,
}

/// <summary>Where in the file an operation was made; line and column count from 1.</summary>
internal readonly record struct DrawSpot(int Line, int Column);

/// <summary>What operations share until a command changes it.</summary>
/// <param name="Aperture">Aperture of flashes and strokes; null for contours.</param>
/// <param name="Similarity">How the aperture is turned; contours are not.</param>
/// <param name="Polarity">Dark adds, clear removes what is there.</param>
/// <param name="Labels">Claims of the file about the objects.</param>
internal sealed record DrawStyle(Aperture? Aperture, Similarity Similarity, Polarity Polarity, ObjectLabels Labels);

/// <summary>One operation of an artwork file with its exact primitive, before anything is flattened.</summary>
/// <param name="Kind">What it does.</param>
/// <param name="Style">What it shares with its neighbours.</param>
/// <param name="Start">Where a flash lies, and where a stroke or contour begins.</param>
/// <param name="FirstStep">Index of the path's first step in the <see cref="Drawing"/>.</param>
/// <param name="StepCount">Steps of the path: none for a flash, one for a stroke.</param>
/// <param name="Spot">Where in the file it was made.</param>
internal readonly record struct DrawOperation(
    DrawKind Kind, DrawStyle Style, PointNm Start, int FirstStep, int StepCount, DrawSpot Spot);

/// <summary>How a path goes on: straight to a point, or on an arc about a centre; an arc to its own start is a circle.</summary>
internal readonly record struct PathStep(PointNm To, Turn Turn, PointNm Centre)
{
    public static PathStep Line(PointNm to) => new(to, Turn.Straight, default);

    /// <summary>The same step seen from a turned and moved frame.</summary>
    public PathStep Transformed(in Similarity similarity)
    {
        Turn turn = (Turn, similarity.Mirrors) switch
        {
            (Turn.Clockwise, true) => Turn.CounterClockwise,
            (Turn.CounterClockwise, true) => Turn.Clockwise,
            _ => Turn,
        };
        return new PathStep(similarity.Apply(To), turn, similarity.Apply(Centre));
    }

    public Arc ArcFrom(PointNm from) => Arc.Between(Vector.Of(from), Vector.Of(To), Vector.Of(Centre), Turn);
}
