using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Reading.Gerber;

/// <summary>Collects the steps of one contour between G36 and G37.</summary>
internal sealed class RegionBuilder
{
    private readonly List<PathStep> _steps = [];

    public PointNm Start { get; private set; }

    /// <summary>Where the contour's first command stands.</summary>
    public SourcePosition Position { get; private set; }

    /// <summary>True once D02 has set a start since G36.</summary>
    public bool HasStart { get; private set; }

    public bool HasSteps => _steps.Count > 0;

    /// <summary>Distance from the last point back to the start, nanometres.</summary>
    public double GapNm => HasSteps ? _steps[^1].To.DistanceNmTo(Start) : 0;

    public void Clear()
    {
        _steps.Clear();
        HasStart = false;
    }

    public void Begin(PointNm start, SourcePosition position)
    {
        _steps.Clear();
        Start = start;
        Position = position;
        HasStart = true;
    }

    public void Add(PathStep step) => _steps.Add(step);

    public ContourOperation ToContour(Polarity polarity, ObjectLabels labels) =>
        new(Start, [.. _steps], polarity, labels, Position);
}
