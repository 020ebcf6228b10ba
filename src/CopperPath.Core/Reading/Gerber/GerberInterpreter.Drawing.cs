using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Diagnostics;
using CopperPath.Geometry;

namespace CopperPath.Reading.Gerber;

/// <summary>Operations: move, draw, flash and region contours.</summary>
internal sealed partial class GerberInterpreter
{
    private readonly RegionBuilder _contour = new();
    private bool _inRegion;
    private SourcePosition _regionPosition;

    private Aperture? _aperture;
    private int _apertureCode;

    private PointNm _point;
    private bool _pointKnown = true;

    private void Select(int code, in Piece piece, int at)
    {
        SourcePosition position = piece.PositionAt(File, at);
        string name = string.Create(CultureInfo.InvariantCulture, $"D{code:00}");
        if (code < 10)
        {
            _log.Reject(GerberCode.BadCommand, position, name, "D01, D02, D03 or an aperture of 10 or more");
            return;
        }

        if (_inRegion)
        {
            _log.Warn(GerberCode.NotInRegion, position, $"{name} in a region", "apertures selected outside regions");
        }

        _aperture = _apertures.Find(code);
        _apertureCode = code;
        if (_aperture is null && !_apertures.WasRefused(code))
        {
            _log.RejectOnce(
                name,
                GerberCode.UnknownAperture,
                position,
                $"aperture {name}, not defined",
                _apertures.IsEmpty ? "AD commands (a file without apertures is no RS-274X)" : $"AD{name} before it");
        }
    }

    /// <summary>Coordinates without an operation code: the last operation again.</summary>
    private void OperateAgain(in Piece piece)
    {
        if (_lastOperation == 0)
        {
            _log.Reject(
                GerberCode.ModalOperation, piece.Position(File), "coordinates before any operation", "D01, D02 or D03");
            return;
        }

        string name = string.Create(CultureInfo.InvariantCulture, $"D{_lastOperation:00}");
        _log.WarnOnce(
            name,
            GerberCode.ModalOperation,
            piece.Position(File),
            $"coordinates without an operation code after {name}",
            $"D01, D02 or D03; {name} is repeated");
        Operate(_lastOperation, piece);
    }

    private void Operate(int operation, in Piece piece)
    {
        SourcePosition position = piece.Position(File);
        _lastOperation = operation;
        if (!CanReadCoordinates)
        {
            RejectForMissingFormat(position);
            return;
        }

        bool needsPoint = _incremental || _x is null || _y is null;
        if (needsPoint && !_pointKnown)
        {
            _log.Reject(
                GerberCode.NoCurrentPoint,
                position,
                $"{GerberLog.Quote(piece.Text)} where no current point is defined",
                "X and Y after AB or SR");
            return;
        }

        PointNm target = _incremental
            ? new PointNm(_point.X + (_x ?? 0), _point.Y + (_y ?? 0))
            : new PointNm(_x ?? _point.X, _y ?? _point.Y);
        if (!InRange(target))
        {
            _log.Reject(GerberCode.OutOfRange, position, "a coordinate beyond 10 m", "coordinates within 10 m");
            return;
        }

        bool startKnown = _pointKnown;
        PointNm from = _point;
        _point = target;
        _pointKnown = true;
        switch (operation)
        {
            case 1 when startKnown:
                Draw(from, target, position);
                break;
            case 1:
                _log.Reject(GerberCode.NoCurrentPoint, position, "D01 where no current point is defined", "D02 first");
                break;
            case 2:
                Move(target, position);
                break;
            default:
                Flash(target, position);
                break;
        }
    }

    private void Move(PointNm to, SourcePosition position)
    {
        if (_inRegion)
        {
            FinishContour();
            _contour.Begin(to, position);
        }
    }

    private void Flash(PointNm at, SourcePosition position)
    {
        if (_inRegion)
        {
            _log.Reject(GerberCode.NotInRegion, position, "D03 in a region", "G37 before it");
        }
        else if (HasAperture(position))
        {
            ObjectLabels labels = _attributes.LabelsFor(_aperture!.Function);
            Emit(new FlashOperation(_aperture, _similarity, at, _polarity, labels, position));
        }
    }

    private void Draw(PointNm from, PointNm to, SourcePosition position)
    {
        if (!TryFindStep(from, to, position, out PathStep step))
        {
            return;
        }

        if (_inRegion)
        {
            ExtendContour(from, step, position);
        }
        else if (HasAperture(position))
        {
            Stroke(from, step, position);
        }
    }

    private void Stroke(PointNm from, PathStep step, SourcePosition position)
    {
        if (_aperture is not StampAperture pen)
        {
            _log.Reject(GerberCode.PenNotAllowed, position, "a stroke with a block aperture", "a round aperture");
            return;
        }

        if (pen.Stamp.SolidCircleRadiusNm is null)
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"D{_apertureCode}");
            _log.WarnOnce(
                name,
                GerberCode.UnusualPen,
                position,
                $"a stroke with {name}, which is not a solid circle",
                "a round aperture; the stroke is the hull of its ends");
        }

        ObjectLabels labels = _attributes.LabelsFor(pen.Function);
        Emit(new StrokeOperation(pen, _similarity, from, step, _polarity, labels, position));
    }

    private bool HasAperture(SourcePosition position)
    {
        if (_aperture is null && _apertureCode == 0)
        {
            _log.RejectOnce(
                "", GerberCode.UnknownAperture, position, "an operation with no aperture selected", "Dnn before it");
        }

        return _aperture is not null;
    }

    private bool TryFindStep(PointNm from, PointNm to, SourcePosition position, out PathStep step)
    {
        step = PathStep.Line(to);
        if (_interpolation is null)
        {
            _interpolation = Turn.Straight;
            _log.WarnOnce(
                "", GerberCode.InterpolationAssumed, position, "D01 before G01, G02 or G03", "G01; it is assumed");
        }

        if (_interpolation == Turn.Straight)
        {
            return true;
        }

        var offset = new PointNm(_i ?? 0, _j ?? 0);
        if (offset == default)
        {
            _log.Reject(GerberCode.BadArc, position, "an arc whose I and J are 0", "the offset to the centre");
            return false;
        }

        var arc = new WrittenArc(from, to, offset, _interpolation.Value);
        if (Solve(arc, position) is not { } solved)
        {
            _log.Reject(GerberCode.BadArc, position, "an arc of more than a quarter turn under G74", "at most 90 degrees");
            return false;
        }

        step = solved.Step;
        return solved.IsDot || RadiiAgree(solved, position);
    }

    private SolvedArc? Solve(in WrittenArc arc, SourcePosition position)
    {
        if (_quadrants == QuadrantMode.Undefined)
        {
            SolvedArc signed = ArcSolver.Multi(arc);
            _quadrants = _offsetSigned || signed.DriftNm <= DriftAllowedNm ? QuadrantMode.Multi : QuadrantMode.Single;
            _log.WarnOnce(
                "",
                GerberCode.QuadrantMode,
                position,
                "an arc before G74 or G75",
                $"G75; {(_quadrants == QuadrantMode.Multi ? "G75" : "G74")} is assumed");
        }

        if (_quadrants == QuadrantMode.Multi)
        {
            return ArcSolver.Multi(arc);
        }

        _log.WarnOnce("G74", GerberCode.QuadrantMode, position, "an arc under G74", "G75; its single quadrants are honoured");
        return ArcSolver.Single(arc);
    }

    /// <summary>Radii may differ by ten of the file's smallest steps, or 5 um, without a remark.</summary>
    private double DriftAllowedNm => Math.Max(5000, 10 * Math.Max(_xScale.StepNm, _yScale.StepNm));

    private bool RadiiAgree(in SolvedArc arc, SourcePosition position)
    {
        if (arc.DriftNm <= DriftAllowedNm)
        {
            return true;
        }

        string found = string.Create(
            CultureInfo.InvariantCulture,
            $"an arc whose radii differ by {arc.DriftNm / 1e6:0.######} mm of {arc.StartRadiusNm / 1e6:0.######} mm");
        if (arc.DriftNm <= 0.01 * arc.StartRadiusNm)
        {
            _log.Warn(GerberCode.ArcRadiusDrift, position, found, "one radius; it runs from one to the other");
            return true;
        }

        _log.Reject(GerberCode.BadArc, position, found, "radii within one percent");
        return false;
    }

    private void BeginRegion(SourcePosition position)
    {
        if (_inRegion)
        {
            _log.Warn(GerberCode.RegionPairing, position, "G36 in a region", "G37 before it");
            FinishContour();
        }

        _inRegion = true;
        _regionPosition = position;
        _contour.Clear();
    }

    private void EndRegion(SourcePosition position)
    {
        if (!_inRegion)
        {
            _log.Warn(GerberCode.RegionPairing, position, "G37 outside a region", "G36 before it");
            return;
        }

        FinishContour();
        _inRegion = false;
        _contour.Clear();
    }

    private void ExtendContour(PointNm from, PathStep step, SourcePosition position)
    {
        if (!_contour.HasStart)
        {
            _log.Warn(
                GerberCode.ContourWithoutMove, position, "a contour that begins with D01", "D02; the current point is taken");
            _contour.Begin(from, position);
        }

        _contour.Add(step);
    }

    private void FinishContour()
    {
        if (!_contour.HasSteps)
        {
            return;
        }

        double gapNm = _contour.GapNm;
        if (gapNm > 0)
        {
            _log.Warn(
                GerberCode.OpenContour,
                _contour.Position,
                string.Create(CultureInfo.InvariantCulture, $"a contour open by {gapNm / 1e6:0.######} mm"),
                "its first point at its end; closed by a straight line");
        }

        Emit(_contour.ToContour(_polarity, _attributes.LabelsFor(_attributes.ApertureFunction)));
    }

    private void Emit(DrawOperation operation)
    {
        if (_openBlocks.TryPeek(out (BlockAperture Block, int, SourcePosition) open))
        {
            open.Block.Add(operation);
            return;
        }

        PaintFault fault = _painter.Paint(operation, _canvas);
        if (fault != PaintFault.None)
        {
            Report(fault, operation.Position);
        }
    }

    private void Report(PaintFault fault, SourcePosition position)
    {
        switch (fault)
        {
            case PaintFault.TooMuch:
                Refuse(
                    position,
                    "more objects or vertices than the limits allow",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"at most {_options.MaximumObjects} objects and {_options.MaximumVertices} vertices"));
                break;
            case PaintFault.OutOfRange:
                _log.Reject(GerberCode.OutOfRange, position, "an object beyond 10 m", "objects within 10 m");
                break;
            case PaintFault.PenNotConvex:
                _log.Reject(
                    GerberCode.PenNotAllowed, position, "a stroke with an aperture that is not convex and solid", "a round aperture");
                break;
            case PaintFault.ArcNeedsRoundPen:
                _log.Reject(
                    GerberCode.PenNotAllowed, position, "an arc drawn with an aperture that is not round", "a round aperture");
                break;
            case PaintFault.StampNotComposable:
                _log.Reject(
                    GerberCode.MacroNotComposable, position, "a macro whose exposures do not compose", "outlines that do not cross themselves");
                break;
            default:
                _log.Warn(GerberCode.EmptyContour, position, "a contour that encloses nothing", "an area; it is dropped");
                break;
        }
    }

    private static bool InRange(PointNm p) =>
        p.X is >= -PointNm.LimitNm and <= PointNm.LimitNm && p.Y is >= -PointNm.LimitNm and <= PointNm.LimitNm;
}
