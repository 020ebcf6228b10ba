using System.Runtime.InteropServices;
using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>
/// Operations in drawing order, held compactly: some fifty bytes for an operation, two dozen for a step of its path.
/// </summary>
internal sealed class Drawing
{
    /// <summary>Counts of objects stop here: far beyond any limit, and safe to add to.</summary>
    private const long MostCounted = long.MaxValue / 4;

    private readonly List<DrawOperation> _operations = [];
    private readonly List<HeldStep> _steps = [];
    private readonly List<PointNm> _centres = [];

    public ReadOnlySpan<DrawOperation> Operations => CollectionsMarshal.AsSpan(_operations);

    /// <summary>Objects that painting makes, blocks and repeats expanded; those that come out empty are counted too.</summary>
    public long ObjectCount { get; private set; }

    /// <summary>How deep blocks are flashed within blocks: 0 without any.</summary>
    public int Depth { get; private set; }

    public int StepCount => _steps.Count;

    public void AddFlash(DrawStyle style, PointNm at, DrawSpot spot)
    {
        (long objects, int depth) = style.Aperture switch
        {
            BlockAperture block => (block.Drawing.ObjectCount, block.Drawing.Depth + 1),
            RepeatedBody body => (Product(body.Copies, body.Drawing.ObjectCount), body.Drawing.Depth),
            _ => (1, 0),
        };
        ObjectCount = Math.Min(MostCounted, ObjectCount + objects);
        Depth = Math.Max(Depth, depth);
        _operations.Add(new DrawOperation(DrawKind.Flash, style, at, 0, 0, spot));
    }

    public void AddStroke(DrawStyle style, PointNm from, in PathStep step, DrawSpot spot)
    {
        ObjectCount++;
        _operations.Add(new DrawOperation(DrawKind.Stroke, style, from, _steps.Count, 1, spot));
        AddStep(step);
    }

    /// <summary>Adds a step of a contour; <see cref="AddContour"/> follows after its last.</summary>
    public void AddStep(in PathStep step)
    {
        int arc = 0;
        if (step.Turn != Turn.Straight)
        {
            _centres.Add(step.Centre);
            arc = step.Turn == Turn.Clockwise ? -_centres.Count : _centres.Count;
        }

        _steps.Add(new HeldStep(step.To, arc));
    }

    /// <summary>Makes a contour of all steps from <paramref name="firstStep"/> on.</summary>
    public void AddContour(DrawStyle style, PointNm start, int firstStep, DrawSpot spot)
    {
        ObjectCount++;
        _operations.Add(
            new DrawOperation(DrawKind.Contour, style, start, firstStep, _steps.Count - firstStep, spot));
    }

    public PathStep Step(int index)
    {
        HeldStep held = _steps[index];
        return held.Arc == 0
            ? PathStep.Line(held.To)
            : new PathStep(
                held.To,
                held.Arc < 0 ? Turn.Clockwise : Turn.CounterClockwise,
                _centres[Math.Abs(held.Arc) - 1]);
    }

    private static long Product(long copies, long objects) =>
        (long)Int128.Min(MostCounted, (Int128)copies * objects);

    /// <param name="To">Where the step leads.</param>
    /// <param name="Arc">0 for a line; else the place of the centre counted from 1, negative when clockwise.</param>
    private readonly record struct HeldStep(PointNm To, int Arc);
}
