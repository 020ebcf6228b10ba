using CopperPath.Geometry;

namespace CopperPath.Artwork;

/// <summary>Why an operation could not be painted.</summary>
internal enum PaintFault
{
    None,

    /// <summary>More objects or vertices than the limits allow; nothing more should be painted.</summary>
    TooMuch,

    /// <summary>A coordinate beyond <see cref="PointNm.LimitNm"/>.</summary>
    OutOfRange,

    /// <summary>A stroke drawn with a block, a stamp with holes, or a stamp that is not convex.</summary>
    PenNotConvex,

    /// <summary>An arc drawn with anything but a solid circle.</summary>
    ArcNeedsRoundPen,

    /// <summary>A macro whose exposure-off parts could not be taken away.</summary>
    StampNotComposable,

    /// <summary>A contour that encloses nothing; everything else was painted.</summary>
    EmptyContour,
}

/// <summary>Flattens draw operations to painted objects.</summary>
internal sealed class LayerPainter(PaintLimits limits)
{
    private static readonly PointNm[][] Nothing = [];

    private readonly Dictionary<double, RoundCap> _caps = [];
    private readonly List<PointNm> _ring = [];
    private long _objectsInBlocks;
    private long _verticesInBlocks;

    private double ToleranceNm => limits.ChordToleranceNm;

    /// <summary>Paints one operation; on a fault nothing of it is painted, except that a block may be painted in part.</summary>
    public PaintFault Paint(DrawOperation operation, Canvas canvas)
    {
        PaintFault fault = Paint(operation, Similarity.Identity, canvas);
        return fault == PaintFault.None && IsTooMuch(canvas, 0, 0) ? PaintFault.TooMuch : fault;
    }

    /// <summary>Paints another canvas at an offset.</summary>
    public PaintFault Repeat(Canvas other, PointNm offset, Canvas canvas)
    {
        if (IsTooMuch(canvas, other.Objects.Count, other.VertexCount))
        {
            return PaintFault.TooMuch;
        }

        if (!InRange(offset))
        {
            return PaintFault.OutOfRange;
        }

        canvas.Append(other, offset, toggle: false, ObjectLabels.None);
        return PaintFault.None;
    }

    private PaintFault Paint(DrawOperation operation, in Similarity outer, Canvas canvas) => operation switch
    {
        FlashOperation { Aperture: BlockAperture block } flash => PaintBlock(block, flash, outer, canvas),
        FlashOperation { Aperture: StampAperture stamp } flash => PaintStamp(stamp.Stamp, flash, outer, canvas),
        StrokeOperation stroke => PaintStroke(stroke, outer, canvas),
        ContourOperation contour => PaintContour(contour, outer, canvas),
        _ => PaintFault.None,
    };

    private PaintFault PaintBlock(BlockAperture block, FlashOperation flash, in Similarity outer, Canvas canvas)
    {
        if (canvas.Objects.Count + _objectsInBlocks + block.ObjectCount > limits.MaximumObjects)
        {
            return PaintFault.TooMuch;
        }

        PaintFault remark = PaintFault.None;
        Similarity similarity = outer.After(flash.Similarity);
        if (!block.TryGetDrawn(similarity, out Canvas drawn))
        {
            foreach (DrawOperation member in block.Operations)
            {
                PaintFault fault = Paint(member, similarity, drawn);
                if (fault == PaintFault.EmptyContour)
                {
                    remark = fault;
                }
                else if (fault != PaintFault.None)
                {
                    return fault;
                }
            }

            _objectsInBlocks += drawn.Objects.Count;
            _verticesInBlocks += drawn.VertexCount;
        }

        PointNm at = outer.Apply(flash.At);
        if (!InRange(at))
        {
            return PaintFault.OutOfRange;
        }

        if (IsTooMuch(canvas, drawn.Objects.Count, drawn.VertexCount))
        {
            return PaintFault.TooMuch;
        }

        canvas.Append(drawn, at, toggle: flash.Polarity == Polarity.Clear, flash.Labels);
        return remark;
    }

    private PaintFault PaintStamp(Stamp stamp, FlashOperation flash, in Similarity outer, Canvas canvas)
    {
        Similarity similarity = outer.After(flash.Similarity);
        PointNm at = outer.Apply(flash.At);
        PaintFault fault = RingsOf(stamp, similarity, out PointNm[][] rings);
        if (fault == PaintFault.None && !InRange(at))
        {
            fault = PaintFault.OutOfRange;
        }

        if (fault == PaintFault.None)
        {
            canvas.Add(new PaintedObject(PaintKind.Flash, flash.Polarity, rings, at, at, flash.Labels, flash.Position));
        }

        return fault;
    }

    private PaintFault PaintStroke(StrokeOperation stroke, in Similarity outer, Canvas canvas)
    {
        bool still = outer == Similarity.Identity;
        PointNm from = still ? stroke.From : outer.Apply(stroke.From);
        PathStep step = still ? stroke.Step : stroke.Step.Transformed(outer);
        if (!InRange(from) || !InRange(step.To) || !InRange(step.Centre))
        {
            return PaintFault.OutOfRange;
        }

        Arc arc = step.Turn == Turn.Straight ? default : step.ArcFrom(from);
        Similarity similarity = still ? stroke.Similarity : outer.After(stroke.Similarity);
        PaintFault fault = Covered(stroke.Pen.Stamp, similarity, from, step, arc, out PointNm[][] rings);
        if (fault != PaintFault.None)
        {
            return fault;
        }

        canvas.CentreLines.BeginStroke(from);
        if (step.Turn != Turn.Straight)
        {
            canvas.CentreLines.AddArc(arc, ToleranceNm);
        }

        canvas.CentreLines.AddPoint(step.To);
        canvas.Add(new PaintedObject(
            PaintKind.Stroke, stroke.Polarity, rings, default, from, stroke.Labels, stroke.Position));
        return PaintFault.None;
    }

    private PaintFault Covered(
        Stamp pen, in Similarity similarity, PointNm from, in PathStep step, in Arc arc, out PointNm[][] rings)
    {
        rings = Nothing;
        if (pen.SolidCircleRadiusNm is double radius)
        {
            double scaledNm = radius * similarity.Scale;
            if (!(scaledNm <= PointNm.LimitNm))
            {
                return PaintFault.OutOfRange;
            }

            RoundCap cap = CapOf(scaledNm);
            rings = step.Turn == Turn.Straight
                ? StrokeOutline.RoundPenLine(from, step.To, cap)
                : StrokeOutline.RoundPenArc(from, step.To, arc, cap);
            return PaintFault.None;
        }

        if (step.Turn != Turn.Straight)
        {
            return PaintFault.ArcNeedsRoundPen;
        }

        PaintFault fault = RingsOf(pen, similarity, out PointNm[][] stamp);
        if (fault != PaintFault.None || stamp.Length == 0)
        {
            return fault;
        }

        if (stamp.Length > 1 || !RingOrder.IsConvex(stamp[0]))
        {
            return PaintFault.PenNotConvex;
        }

        rings = StrokeOutline.ConvexPenLine(from, step.To, stamp[0]);
        return PaintFault.None;
    }

    private PaintFault PaintContour(ContourOperation contour, in Similarity outer, Canvas canvas)
    {
        bool still = outer == Similarity.Identity;
        PointNm start = still ? contour.Start : outer.Apply(contour.Start);
        PointNm at = start;
        _ring.Clear();
        _ring.Add(start);
        foreach (PathStep original in contour.Steps)
        {
            PathStep step = still ? original : original.Transformed(outer);
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
        }

        PointNm[] ring = RingOrder.CounterClockwise(RingOrder.WithoutRepeats(_ring));
        if (ring.Length == 0)
        {
            return PaintFault.EmptyContour;
        }

        canvas.Add(new PaintedObject(
            PaintKind.Region, contour.Polarity, [ring], default, start, contour.Labels, contour.Position));
        return PaintFault.None;
    }

    private PaintFault RingsOf(Stamp stamp, in Similarity similarity, out PointNm[][] rings)
    {
        rings = Nothing;
        if (!(stamp.ReachNm * similarity.Scale <= PointNm.LimitNm))
        {
            return PaintFault.OutOfRange;
        }

        PointNm[][]? built = stamp.RingsNm(similarity, ToleranceNm);
        rings = built ?? Nothing;
        return built is null ? PaintFault.StampNotComposable : PaintFault.None;
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

    private bool IsTooMuch(Canvas canvas, long moreObjects, long moreVertices) =>
        canvas.Objects.Count + _objectsInBlocks + moreObjects > limits.MaximumObjects
        || canvas.VertexCount + _verticesInBlocks + moreVertices > limits.MaximumVertices;

    private static bool InRange(PointNm p) =>
        p.X is >= -PointNm.LimitNm and <= PointNm.LimitNm && p.Y is >= -PointNm.LimitNm and <= PointNm.LimitNm;
}
