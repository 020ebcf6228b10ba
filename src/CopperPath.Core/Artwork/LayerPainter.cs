using CopperPath.Diagnostics;
using CopperPath.Geometry;
using CopperPath.Polygons;

namespace CopperPath.Artwork;

/// <summary>Why an operation could not be painted.</summary>
internal enum PaintFault
{
    None,

    /// <summary>More objects or vertices than the limits allow; nothing more is painted.</summary>
    TooMuch,

    /// <summary>A coordinate beyond <see cref="PointNm.LimitNm"/>.</summary>
    OutOfRange,

    /// <summary>A stroke drawn with a block, a stamp with holes, or a stamp that is not convex.</summary>
    PenNotConvex,

    /// <summary>An arc drawn with anything but a solid circle.</summary>
    ArcNeedsRoundPen,

    /// <summary>A macro whose exposure-off parts are too entangled to be taken away.</summary>
    StampNotComposable,

    /// <summary>A contour that encloses nothing; everything else was painted.</summary>
    EmptyContour,

    /// <summary>A contour that crosses itself; it was painted wherever it winds.</summary>
    SelfCrossing,
}

/// <summary>Flattens a drawing to painted objects.</summary>
/// <param name="file">File name for positions.</param>
/// <param name="limits">How finely and how much.</param>
internal sealed class LayerPainter(string file, PaintLimits limits)
{
    private static readonly PointNm[][] Nothing = [];

    private readonly Dictionary<double, RoundCap> _caps = [];
    private readonly List<PointNm> _ring = [];
    private readonly SelfCrossing _selfCrossing = new();
    private readonly List<(PaintFault Fault, DrawSpot Spot)> _faults = [];
    private Brush _brush = new(null, default, null, Nothing, PaintFault.None);
    private long _objectsInBlocks;
    private long _verticesInBlocks;

    /// <summary>What could not be painted, in drawing order; such an operation left nothing, or a block a part of itself.</summary>
    public IReadOnlyList<(PaintFault Fault, DrawSpot Spot)> Faults => _faults;

    private double ToleranceNm => limits.ChordToleranceNm;

    /// <summary>Paints the whole drawing, up to the limits.</summary>
    public Canvas Paint(Drawing drawing)
    {
        var canvas = new Canvas();
        canvas.Objects.EnsureCapacity((int)Math.Min(drawing.ObjectCount, Math.Min(limits.MaximumObjects, Array.MaxLength)));
        foreach (ref readonly DrawOperation operation in drawing.Operations)
        {
            PaintFault fault = Paint(drawing, operation, Similarity.Identity, canvas);
            if (IsPainted(fault) && IsTooMuch(canvas, 0, 0))
            {
                fault = PaintFault.TooMuch;
            }

            if (fault != PaintFault.None)
            {
                _faults.Add((fault, operation.Spot));
            }

            if (fault == PaintFault.TooMuch)
            {
                break;
            }
        }

        return canvas;
    }

    private PaintFault Paint(Drawing drawing, in DrawOperation operation, in Similarity outer, Canvas canvas) =>
        operation.Kind switch
        {
            DrawKind.Stroke => PaintStroke(drawing, operation, outer, canvas),
            DrawKind.Contour => PaintContour(drawing, operation, outer, canvas),
            _ => operation.Style.Aperture switch
            {
                BlockAperture block => PaintBlock(block, operation, outer, canvas),
                RepeatedBody body => PaintRepeated(body, outer, canvas),
                _ => PaintStamp(operation, outer, canvas),
            },
        };

    private PaintFault PaintBlock(BlockAperture block, in DrawOperation flash, in Similarity outer, Canvas canvas)
    {
        Similarity similarity = outer.After(flash.Style.Similarity);
        PaintFault remark = PaintFault.None;
        if (!block.TryGetPainted(similarity, out Canvas painted))
        {
            remark = PaintInside(block.Drawing, similarity, painted);
            if (!IsPainted(remark))
            {
                return remark;
            }
        }

        PaintFault fault = Append(
            painted, outer.Apply(flash.Start), flash.Style.Polarity == Polarity.Clear, flash.Style.Labels, canvas);
        return fault == PaintFault.None ? remark : fault;
    }

    private PaintFault PaintRepeated(RepeatedBody body, in Similarity outer, Canvas canvas)
    {
        var painted = new Canvas();
        PaintFault remark = PaintInside(body.Drawing, outer, painted);
        if (!IsPainted(remark) || painted.Objects.Count == 0)
        {
            return remark;
        }

        for (long x = 0; x < body.CountX; x++)
        {
            for (long y = 0; y < body.CountY; y++)
            {
                PointNm offset = outer.Apply(new PointNm(x * body.Step.X, y * body.Step.Y));
                PaintFault fault = Append(painted, offset, toggle: false, ObjectLabels.None, canvas);
                if (fault != PaintFault.None)
                {
                    return fault;
                }
            }
        }

        return remark;
    }

    /// <summary>Paints what a block or a repeat holds, about its own origin; odd contours are remarked on at the end.</summary>
    private PaintFault PaintInside(Drawing drawing, in Similarity similarity, Canvas canvas)
    {
        if (drawing.ObjectCount + _objectsInBlocks > limits.MaximumObjects)
        {
            return PaintFault.TooMuch;
        }

        // Blocks that hold nothing may be flashed within each other under endless similarities.
        if (drawing.ObjectCount == 0)
        {
            return PaintFault.None;
        }

        PaintFault remark = PaintFault.None;
        foreach (ref readonly DrawOperation member in drawing.Operations)
        {
            PaintFault fault = Paint(drawing, member, similarity, canvas);
            if (!IsPainted(fault))
            {
                return fault;
            }

            remark = fault == PaintFault.None ? remark : fault;
        }

        _objectsInBlocks += canvas.Objects.Count;
        _verticesInBlocks += canvas.VertexCount;
        return remark;
    }

    private PaintFault Append(Canvas painted, PointNm offset, bool toggle, ObjectLabels labels, Canvas canvas)
    {
        if (!InRange(offset))
        {
            return PaintFault.OutOfRange;
        }

        if (IsTooMuch(canvas, painted.Objects.Count, painted.VertexCount))
        {
            return PaintFault.TooMuch;
        }

        canvas.Append(painted, offset, toggle, labels);
        return PaintFault.None;
    }

    private PaintFault PaintStamp(in DrawOperation flash, in Similarity outer, Canvas canvas)
    {
        DrawStyle style = flash.Style;
        PointNm at = outer.Apply(flash.Start);
        Stamp stamp = ((StampAperture)style.Aperture!).Stamp;
        PaintFault fault = stamp.TryGetRings(outer.After(style.Similarity), limits, out PointNm[][] rings);
        if (fault == PaintFault.None && !InRange(at))
        {
            fault = PaintFault.OutOfRange;
        }

        if (fault == PaintFault.None)
        {
            canvas.Add(new PaintedObject(
                PaintKind.Flash, style.Polarity, rings, at, at, style.Labels, PositionOf(flash.Spot)));
        }

        return fault;
    }

    private PaintFault PaintStroke(Drawing drawing, in DrawOperation stroke, in Similarity outer, Canvas canvas)
    {
        bool still = outer == Similarity.Identity;
        PointNm from = still ? stroke.Start : outer.Apply(stroke.Start);
        PathStep written = drawing.Step(stroke.FirstStep);
        PathStep step = still ? written : written.Transformed(outer);
        if (!InRange(from) || !InRange(step.To) || !InRange(step.Centre))
        {
            return PaintFault.OutOfRange;
        }

        Brush brush = BrushFor(stroke.Style, outer);
        if (brush.Fault != PaintFault.None)
        {
            return brush.Fault;
        }

        bool straight = step.Turn == Turn.Straight;
        if (brush.Cap is null && !straight)
        {
            return PaintFault.ArcNeedsRoundPen;
        }

        PointNm[][] rings = brush switch
        {
            { Cap: { } cap } when straight => StrokeOutline.RoundPenLine(from, step.To, cap),
            { Cap: { } cap } => StrokeOutline.RoundPenArc(from, step.To, step.ArcFrom(from), cap),
            { Stamp: [PointNm[] stamp] } => StrokeOutline.ConvexPenLine(from, step.To, stamp),
            _ => Nothing,
        };
        canvas.Add(new PaintedObject(
            PaintKind.Stroke, stroke.Style.Polarity, rings, default, from, stroke.Style.Labels, PositionOf(stroke.Spot)));
        return PaintFault.None;
    }

    private PaintFault PaintContour(Drawing drawing, in DrawOperation contour, in Similarity outer, Canvas canvas)
    {
        bool still = outer == Similarity.Identity;
        PointNm start = still ? contour.Start : outer.Apply(contour.Start);
        PointNm at = start;
        _ring.Clear();
        _ring.Add(start);
        for (int i = 0; i < contour.StepCount; i++)
        {
            PathStep written = drawing.Step(contour.FirstStep + i);
            PathStep step = still ? written : written.Transformed(outer);
            if (!InRange(step.To) || !InRange(step.Centre))
            {
                return PaintFault.OutOfRange;
            }

            if (step.Turn != Turn.Straight)
            {
                step.ArcFrom(at).AppendInner(_ring, ToleranceNm);
            }

            _ring.Add(step.To);
            at = step.To;
            if (IsTooMuch(canvas, 1, _ring.Count))
            {
                return PaintFault.TooMuch;
            }
        }

        PointNm[] ring = RingOrder.CounterClockwise(RingOrder.WithoutRepeats(_ring));
        bool isBalanced = ring.Length > 0 && Ring.SignedAreaNm2(ring) == 0;
        if (ring.Length == 0 || (isBalanced && CoversNothing(ring)))
        {
            return PaintFault.EmptyContour;
        }

        canvas.Add(new PaintedObject(
            PaintKind.Region, contour.Style.Polarity, [ring], default, start, contour.Style.Labels, PositionOf(contour.Spot)));
        return isBalanced || _selfCrossing.IsFoundIn(ring) ? PaintFault.SelfCrossing : PaintFault.None;
    }

    /// <summary>Whether a contour of no signed area covers nothing; one too entangled to tell is kept, for what unites it to refuse.</summary>
    private static bool CoversNothing(PointNm[] ring)
    {
        try
        {
            return PolygonOperations.Union([ring]).Count == 0;
        }
        catch (EntangledOutlinesException)
        {
            return false;
        }
    }

    /// <summary>The pen of a style; neighbours share it, so the last one is kept.</summary>
    private Brush BrushFor(DrawStyle style, in Similarity outer)
    {
        if (!ReferenceEquals(_brush.Style, style) || _brush.Outer != outer)
        {
            _brush = Prepared(style, outer);
        }

        return _brush;
    }

    private Brush Prepared(DrawStyle style, in Similarity outer)
    {
        Stamp pen = ((StampAperture)style.Aperture!).Stamp;
        Similarity similarity = outer.After(style.Similarity);
        if (pen.SolidCircleRadiusNm is double radius)
        {
            double scaledNm = radius * similarity.Scale;
            return scaledNm <= PointNm.LimitNm
                ? new Brush(style, outer, CapOf(scaledNm), Nothing, PaintFault.None)
                : new Brush(style, outer, null, Nothing, PaintFault.OutOfRange);
        }

        PaintFault fault = pen.TryGetRings(similarity, limits, out PointNm[][] stamp);
        if (fault == PaintFault.None && stamp is not [] && (stamp.Length > 1 || !RingOrder.IsConvex(stamp[0])))
        {
            fault = PaintFault.PenNotConvex;
        }

        return new Brush(style, outer, null, stamp, fault);
    }

    private RoundCap CapOf(double radiusNm)
    {
        if (!_caps.TryGetValue(radiusNm, out RoundCap? cap))
        {
            cap = new RoundCap(radiusNm, ToleranceNm);
            _caps.Add(radiusNm, cap);
        }

        return cap;
    }

    /// <summary>True when all that can be painted was; there may be a remark.</summary>
    private static bool IsPainted(PaintFault fault) =>
        fault is PaintFault.None or PaintFault.EmptyContour or PaintFault.SelfCrossing;

    private SourcePosition PositionOf(DrawSpot spot) => new(file, spot.Line, spot.Column);

    private bool IsTooMuch(Canvas canvas, long moreObjects, long moreVertices) =>
        canvas.Objects.Count + _objectsInBlocks + moreObjects > limits.MaximumObjects
        || canvas.VertexCount + _verticesInBlocks + moreVertices > limits.MaximumVertices;

    private static bool InRange(PointNm p) =>
        p.X is >= -PointNm.LimitNm and <= PointNm.LimitNm && p.Y is >= -PointNm.LimitNm and <= PointNm.LimitNm;

    /// <summary>A pen under one similarity: a round one has a cap, any other a stamp of at most one convex ring.</summary>
    private readonly record struct Brush(
        DrawStyle? Style, Similarity Outer, RoundCap? Cap, PointNm[][] Stamp, PaintFault Fault);
}
