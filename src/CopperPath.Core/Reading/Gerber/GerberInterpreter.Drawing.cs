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

    /// <summary>What the next object shares with the last, or null when a command may have changed it.</summary>
    private DrawStyle? _style;
    private DrawStyle? _contourStyle;

    private PointNm _point;
    private bool _pointKnown = true;

    private void Select(int code, in Piece piece, int at)
    {
        if (code < 10)
        {
            _log.Reject(
                GerberCode.BadCommand,
                piece.PositionAt(File, at),
                string.Create(CultureInfo.InvariantCulture, $"D{code:00}"),
                "D01, D02, D03 or an aperture of 10 or more");
            return;
        }

        if (_inRegion)
        {
            _log.Warn(
                GerberCode.NotInRegion,
                piece.PositionAt(File, at),
                string.Create(CultureInfo.InvariantCulture, $"D{code} in a region"),
                "apertures selected outside regions");
        }

        _style = null;
        _aperture = _apertures.Find(code);
        _apertureCode = code;
        if (_aperture is null && !_apertures.WasRefused(code) && _log.IsFirst(GerberCode.UnknownAperture, code))
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"D{code}");
            _log.Reject(
                GerberCode.UnknownAperture,
                piece.PositionAt(File, at),
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

        if (_log.IsFirst(GerberCode.ModalOperation, _lastOperation))
        {
            string name = string.Create(CultureInfo.InvariantCulture, $"D{_lastOperation:00}");
            _log.Warn(
                GerberCode.ModalOperation,
                piece.Position(File),
                $"coordinates without an operation code after {name}",
                $"D01, D02 or D03; {name} is repeated");
        }

        Operate(_lastOperation, piece);
    }

    private void Operate(int operation, in Piece piece)
    {
        _lastOperation = operation;
        if (!_canReadCoordinates)
        {
            RejectForMissingFormat(piece.Position(File));
            return;
        }

        bool needsPoint = _incremental || !_written.Has(Given.X | Given.Y);
        if (needsPoint && !_pointKnown)
        {
            _log.Reject(
                GerberCode.NoCurrentPoint,
                piece.Position(File),
                $"{GerberLog.Quote(piece.Text)} where no current point is defined",
                "X and Y after AB or SR");
            return;
        }

        PointNm target = _incremental
            ? new PointNm(_point.X + _written.X, _point.Y + _written.Y)
            : new PointNm(
                _written.Has(Given.X) ? _written.X : _point.X, _written.Has(Given.Y) ? _written.Y : _point.Y);
        if (!InRange(target))
        {
            _log.Reject(
                GerberCode.OutOfRange, piece.Position(File), "a coordinate beyond 10 m", "coordinates within 10 m");
            return;
        }

        bool startKnown = _pointKnown;
        PointNm from = _point;
        _point = target;
        _pointKnown = true;
        switch (operation)
        {
            case 1 when startKnown:
                Draw(from, target, piece);
                break;
            case 1:
                _log.Reject(
                    GerberCode.NoCurrentPoint, piece.Position(File), "D01 where no current point is defined", "D02 first");
                break;
            case 2:
                Move(target, piece);
                break;
            default:
                Flash(target, piece);
                break;
        }
    }

    private void Move(PointNm to, in Piece piece)
    {
        if (_inRegion)
        {
            FinishContour();
            _contour.Begin(_drawing, to, piece.Spot);
        }
    }

    private void Flash(PointNm at, in Piece piece)
    {
        if (_inRegion)
        {
            _log.Reject(GerberCode.NotInRegion, piece.Position(File), "D03 in a region", "G37 before it");
            return;
        }

        if (!HasAperture(piece))
        {
            return;
        }

        if (_aperture is BlockAperture { Drawing.Depth: >= GerberLimits.DeepestBlocks })
        {
            RefuseDeepBlocks(piece.Position(File));
            return;
        }

        _drawing.AddFlash(Style(), at, piece.Spot);
        RefuseTooManyObjects(piece);
    }

    private void Draw(PointNm from, PointNm to, in Piece piece)
    {
        PathStep step;
        if (_interpolation == Turn.Straight)
        {
            step = PathStep.Line(to);
        }
        else if (!TryFindStep(from, to, piece, out step))
        {
            return;
        }

        if (_inRegion)
        {
            ExtendContour(from, step, piece);
        }
        else if (HasAperture(piece))
        {
            Stroke(from, step, piece);
        }
    }

    private void Stroke(PointNm from, in PathStep step, in Piece piece)
    {
        if (_aperture is not StampAperture pen)
        {
            _log.Reject(
                GerberCode.PenNotAllowed, piece.Position(File), "a stroke with a block aperture", "a round aperture");
            return;
        }

        if (pen.Stamp.SolidCircleRadiusNm is null && _log.IsFirst(GerberCode.UnusualPen, _apertureCode))
        {
            _log.Warn(
                GerberCode.UnusualPen,
                piece.Position(File),
                string.Create(CultureInfo.InvariantCulture, $"a stroke with D{_apertureCode}, which is not a solid circle"),
                "a round aperture; the stroke is the hull of its ends");
        }

        _drawing.AddStroke(Style(), from, step, piece.Spot);
        RefuseTooManyObjects(piece);
    }

    private DrawStyle Style() => _style ??=
        new DrawStyle(_aperture, _similarity, _polarity, _attributes.LabelsFor(_aperture!.Function));

    private DrawStyle ContourStyle() => _contourStyle ??= new DrawStyle(
        null, Similarity.Identity, _polarity, _attributes.LabelsFor(_attributes.ApertureFunction));

    /// <summary>To be called after every command that may change what objects share.</summary>
    private void ForgetStyles() => _style = _contourStyle = null;

    private void RefuseTooManyObjects(in Piece piece)
    {
        if (_drawing.ObjectCount > _options.MaximumObjects)
        {
            RefuseTooManyObjects(piece.Position(File));
        }
    }

    private void RefuseTooManyObjects(SourcePosition position)
    {
        if (_drawing.ObjectCount > _options.MaximumObjects)
        {
            string most = string.Create(CultureInfo.InvariantCulture, $"{_options.MaximumObjects} objects");
            Refuse(position, "more than " + most, "at most " + most);
        }
    }

    private bool HasAperture(in Piece piece)
    {
        if (_aperture is null && _apertureCode == 0 && _log.IsFirst(GerberCode.UnknownAperture))
        {
            _log.Reject(
                GerberCode.UnknownAperture, piece.Position(File), "an operation with no aperture selected", "Dnn before it");
        }

        return _aperture is not null;
    }

    private bool TryFindStep(PointNm from, PointNm to, in Piece piece, out PathStep step)
    {
        step = PathStep.Line(to);
        if (_interpolation is null)
        {
            _interpolation = Turn.Straight;
            _log.WarnOnce(
                "", GerberCode.InterpolationAssumed, piece.Position(File), "D01 before G01, G02 or G03", "G01; it is assumed");
            return true;
        }

        var offset = new PointNm(_written.I, _written.J);
        if (offset == default)
        {
            _log.Reject(
                GerberCode.BadArc, piece.Position(File), "an arc whose I and J are 0", "the offset to the centre");
            return false;
        }

        var arc = new WrittenArc(from, to, offset, _interpolation.Value);
        if (Solve(arc, piece) is not { } solved)
        {
            _log.Reject(
                GerberCode.BadArc, piece.Position(File), "an arc of more than a quarter turn under G74", "at most 90 degrees");
            return false;
        }

        step = solved.Step;
        return solved.IsDot || RadiiAgree(solved, piece);
    }

    private SolvedArc? Solve(in WrittenArc arc, in Piece piece)
    {
        if (_quadrants == QuadrantMode.Undefined)
        {
            SolvedArc signed = ArcSolver.Multi(arc);
            _quadrants = _written.OffsetSigned || signed.DriftNm <= DriftAllowedNm ? QuadrantMode.Multi : QuadrantMode.Single;
            _log.WarnOnce(
                "",
                GerberCode.QuadrantMode,
                piece.Position(File),
                "an arc before G74 or G75",
                $"G75; {(_quadrants == QuadrantMode.Multi ? "G75" : "G74")} is assumed");
        }

        if (_quadrants == QuadrantMode.Multi)
        {
            return ArcSolver.Multi(arc);
        }

        if (_log.IsFirst(GerberCode.QuadrantMode, 74))
        {
            _log.Warn(
                GerberCode.QuadrantMode, piece.Position(File), "an arc under G74", "G75; its single quadrants are honoured");
        }

        return ArcSolver.Single(arc);
    }

    /// <summary>Radii may differ by ten of the file's smallest steps, or 5 um, without a remark.</summary>
    private double DriftAllowedNm => Math.Max(5000, 10 * Math.Max(_xScale.StepNm, _yScale.StepNm));

    private bool RadiiAgree(in SolvedArc arc, in Piece piece)
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
            _log.Warn(GerberCode.ArcRadiusDrift, piece.Position(File), found, "one radius; it runs from one to the other");
            return true;
        }

        _log.Reject(GerberCode.BadArc, piece.Position(File), found, "radii within one percent");
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

    private void ExtendContour(PointNm from, in PathStep step, in Piece piece)
    {
        if (!_contour.HasStart)
        {
            _log.Warn(
                GerberCode.ContourWithoutMove,
                piece.Position(File),
                "a contour that begins with D01",
                "D02; the current point is taken");
            _contour.Begin(_drawing, from, piece.Spot);
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
                _contour.PositionIn(File),
                string.Create(CultureInfo.InvariantCulture, $"a contour open by {gapNm / 1e6:0.######} mm"),
                "its first point at its end; closed by a straight line");
        }

        _contour.Finish(ContourStyle());
        RefuseTooManyObjects(_contour.PositionIn(File));
    }

    private static bool InRange(PointNm p) =>
        p.X is >= -PointNm.LimitNm and <= PointNm.LimitNm && p.Y is >= -PointNm.LimitNm and <= PointNm.LimitNm;
}
