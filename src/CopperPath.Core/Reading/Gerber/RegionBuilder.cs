using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Reading.Gerber;

/// <summary>The contour being drawn between G36 and G37; its steps go straight into the drawing it belongs to.</summary>
internal sealed class RegionBuilder
{
    private Drawing? _drawing;
    private PointNm _start;
    private PointNm _end;
    private DrawSpot _spot;
    private int _firstStep;

    /// <summary>True once D02 has set a start since G36.</summary>
    public bool HasStart => _drawing is not null;

    public bool HasSteps => _drawing is not null && _drawing.StepCount > _firstStep;

    /// <summary>Distance from the last point back to the start, nanometres.</summary>
    public double GapNm => _end.DistanceNmTo(_start);

    public void Clear() => _drawing = null;

    /// <summary>Begins a contour at a point; its first command stands at the spot.</summary>
    public void Begin(Drawing drawing, PointNm start, DrawSpot spot)
    {
        _drawing = drawing;
        _start = _end = start;
        _spot = spot;
        _firstStep = drawing.StepCount;
    }

    public void Add(in PathStep step)
    {
        _drawing!.AddStep(step);
        _end = step.To;
    }

    public void Finish(DrawStyle style) => _drawing!.AddContour(style, _start, _firstStep, _spot);

    /// <summary>Where the contour's first command stands.</summary>
    public SourcePosition PositionIn(string file) => new(file, _spot.Line, _spot.Column);
}
