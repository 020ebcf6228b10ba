using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>One operation of an artwork file before it is flattened: what blocks record and the painter draws.</summary>
internal abstract record DrawOperation(Polarity Polarity, ObjectLabels Labels, SourcePosition Position);

/// <summary>A stamp or block put down at a point.</summary>
internal sealed record FlashOperation(
    Aperture Aperture,
    Similarity Similarity,
    PointNm At,
    Polarity Polarity,
    ObjectLabels Labels,
    SourcePosition Position) : DrawOperation(Polarity, Labels, Position);

/// <summary>A pen moved along a line or an arc.</summary>
internal sealed record StrokeOperation(
    StampAperture Pen,
    Similarity Similarity,
    PointNm From,
    PathStep Step,
    Polarity Polarity,
    ObjectLabels Labels,
    SourcePosition Position) : DrawOperation(Polarity, Labels, Position);

/// <summary>A filled contour. The last step comes back to <paramref name="Start"/>, by a straight line if need be.</summary>
internal sealed record ContourOperation(
    PointNm Start,
    PathStep[] Steps,
    Polarity Polarity,
    ObjectLabels Labels,
    SourcePosition Position) : DrawOperation(Polarity, Labels, Position);

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
