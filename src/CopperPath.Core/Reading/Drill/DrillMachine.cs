using System.Globalization;
using CopperPath.Artwork;
using CopperPath.Geometry;

namespace CopperPath.Reading.Drill;

/// <summary>
/// The machine that runs the program: spindle position, drill or rout mode, the cut in progress and the stored
/// pattern. Each finished hole or cut becomes a <see cref="DrilledFeature"/>.
/// </summary>
internal sealed class DrillMachine(DrillLog log, DrillNumberRules rules, DrillToolTable tools)
{
    /// <summary>More features than any board has; a larger count is a damaged or hostile file.</summary>
    internal const int MaxFeatures = 1_000_000;

    private readonly List<DrilledFeature> _features = [];
    private readonly List<PointNm> _cut = [];
    private PointNm _position;
    private PointNm _zero;
    private bool _hasHole;
    private bool _isRouting;
    private bool _isDown;
    private int _interpolation = 1;
    private int? _patternStart;
    private int? _patternEnd;
    private PointNm _patternOffset;

    public bool IsIncremental { get; set; }

    public bool IsFull { get; private set; }

    public IReadOnlyList<DrilledFeature> Features => _features;

    /// <summary>G05, G81: holes at coordinates from here on.</summary>
    public void DrillMode(int column)
    {
        EndCut(column, isProper: false);
        _isRouting = false;
    }

    /// <summary>G00 (move), G01 (line), G02 or G03 (arc): rout mode.</summary>
    public void RoutMode(int interpolation, int column)
    {
        if (interpolation == 0)
        {
            EndCut(column, isProper: false);
        }

        _isRouting = true;
        _interpolation = interpolation;
    }

    public void Plunge()
    {
        _isRouting = true;
        if (!_isDown)
        {
            _isDown = true;
            _cut.Add(_position);
        }
    }

    public void Retract(int column) => EndCut(column, isProper: true);

    public void PatternStart(int column)
    {
        if (_patternStart is not null)
        {
            log.Reject(DrillCode.BadPattern, column, "M25 inside a pattern", "M08 before the next M25: patterns do not nest");
        }

        _patternStart = _features.Count;
        _patternEnd = null;
        _patternOffset = default;
    }

    public void PatternEnd(int column)
    {
        if (_patternStart is null || _patternEnd is not null)
        {
            log.Reject(DrillCode.BadPattern, column, "M01 without an open pattern", "M25 before it");
            return;
        }

        EndCut(column, isProper: false);
        _patternEnd = _features.Count;
    }

    public void PatternClose()
    {
        _patternStart = null;
        _patternEnd = null;
    }

    public bool HasPattern => _patternEnd is not null;

    /// <summary>Carries out the motion of one line.</summary>
    public void Run(DrillBlock block)
    {
        if (block.ZeroSet is { } zeroSet)
        {
            SetZero(block, zeroSet);
        }
        else if (block.PatternRepeat is { } patternRepeat)
        {
            RepeatPattern(block, patternRepeat);
        }
        else if (block.Repeat is { } repeat)
        {
            RepeatHole(block, repeat);
        }
        else if (block.Slot is { } slot)
        {
            Slot(block, slot);
        }
        else if (block.HasTarget && Target(block.X, block.Y) is { } target)
        {
            MoveTo(target, block);
        }
    }

    /// <summary>Goes to the place of a line without making a hole there.</summary>
    public void PassOver(DrillBlock block) => _position = Target(block.X, block.Y) ?? _position;

    /// <summary>Ends what is still open at the end of the program.</summary>
    public void Finish(int column) => EndCut(column, isProper: false);

    private void MoveTo(PointNm target, DrillBlock block)
    {
        if (!_isRouting)
        {
            _position = target;
            Emit([target], block.Column);
            return;
        }

        if (_interpolation == 0)
        {
            _position = target;
            return;
        }

        if (!_isDown)
        {
            log.Warn(
                DrillCode.CutWithoutPlunge,
                block.Column,
                "a routed line with the tool up",
                "M15 before it; taken as a cut",
                affectsCopper: true);
            Plunge();
        }

        if (_interpolation == 1)
        {
            _cut.Add(target);
        }
        else
        {
            AddArc(target, block);
        }

        _position = target;
    }

    private void AddArc(PointNm target, DrillBlock block)
    {
        bool counterClockwise = _interpolation == 3;
        (double X, double Y)? centre;
        if (block.Radius is { } radius)
        {
            if (rules.LengthNm(radius) is not { } radiusNm)
            {
                return;
            }

            centre = DrillArc.CentreOfMinorArc(_position, target, radiusNm, counterClockwise);
        }
        else
        {
            long? i = block.CentreX is { } x ? rules.LengthNm(x) : 0;
            long? j = block.CentreY is { } y ? rules.LengthNm(y) : 0;
            centre = i is not { } dx || j is not { } dy || (dx == 0 && dy == 0)
                ? null
                : ((double)_position.X + dx, (double)_position.Y + dy);
        }

        if (centre is not { } c || !RadiiAgree(c, target))
        {
            log.Reject(
                DrillCode.BadArc,
                block.Column,
                "an arc whose centre can not be placed",
                "A with at least half the distance of its ends, or I and J to a centre equally far from both ends");
            return;
        }

        _cut.AddRange(DrillArc.Flatten(_position, target, c, counterClockwise));
    }

    /// <summary>Both radii equal within rounding of the file or 1 %: beyond that the shape is unknown.</summary>
    private bool RadiiAgree((double X, double Y) centre, PointNm target)
    {
        double startNm = DrillArc.Distance(_position, centre);
        double endNm = DrillArc.Distance(target, centre);
        return Math.Abs(startNm - endNm) <= Math.Max(DrillArc.RadiusSlackNm, 0.01 * Math.Max(startNm, endNm));
    }

    private void Slot(DrillBlock block, DrillWord slot)
    {
        if (_isRouting && _isDown)
        {
            EndCut(slot.Column, isProper: false);
        }

        PointNm? start = block.HasTarget ? Target(block.X, block.Y) : _position;
        if (start is not { } from)
        {
            return;
        }

        _position = from;
        if (block.SlotX is null && block.SlotY is null)
        {
            log.Reject(DrillCode.BadNumber, slot.Column, "G85 without a second point", "X, Y or both after G85");
            return;
        }

        if (Target(block.SlotX, block.SlotY) is { } to)
        {
            _position = to;
            Emit(from == to ? [from] : [from, to], slot.Column);
        }
    }

    private void RepeatHole(DrillBlock block, DrillWord repeat)
    {
        if (Count(repeat) is not { } count)
        {
            return;
        }

        if (!_hasHole || _isRouting)
        {
            log.Reject(DrillCode.BadRepeat, repeat.Column, $"'{repeat}' without a hole to repeat", "a drilled hole before it");
            return;
        }

        if (Step(block) is not { } step)
        {
            return;
        }

        for (int i = 0; i < count && !IsFull; i++)
        {
            PointNm next = _position + step;
            if (!InRange(next, repeat.Column))
            {
                return;
            }

            _position = next;
            Emit([next], repeat.Column);
        }
    }

    private void RepeatPattern(DrillBlock block, DrillWord patternRepeat)
    {
        int? count = block.Repeat is { } repeat ? Count(repeat) : 1;
        if (count is not { } copies)
        {
            return;
        }

        if (_patternStart is not { } start || _patternEnd is not { } end)
        {
            log.Reject(DrillCode.BadPattern, patternRepeat.Column, "M02 without a finished pattern", "M25, holes and M01 before it");
            return;
        }

        if (Step(block) is not { } step)
        {
            return;
        }

        for (int copy = 0; copy < copies && !IsFull; copy++)
        {
            _patternOffset += step;
            if (!InRange(_patternOffset, patternRepeat.Column))
            {
                return;
            }

            for (int i = start; i < end && !IsFull; i++)
            {
                DrilledFeature original = _features[i];
                Add(original with
                {
                    Path = Array.ConvertAll(original.Path, p => p + _patternOffset),
                    Position = log.At(patternRepeat.Column),
                });
            }
        }
    }

    private void SetZero(DrillBlock block, DrillWord zeroSet)
    {
        if (Step(block) is { } zero)
        {
            _zero = zero;
            log.Warn(
                DrillCode.ZeroSet,
                zeroSet.Column,
                $"'{zeroSet}'",
                "coordinates from one zero; read as a shift of all later absolute coordinates",
                affectsCopper: zero != default);
        }
    }

    private void EndCut(int column, bool isProper)
    {
        if (!_isDown)
        {
            return;
        }

        _isDown = false;
        if (!isProper)
        {
            log.Warn(DrillCode.CutLeftOpen, column, "a cut that is still open", "M16 or M17 before it; the cut ends here");
        }

        PointNm[] path = [.. WithoutRepeats(_cut)];
        _cut.Clear();
        Emit(path, column);
    }

    private static IEnumerable<PointNm> WithoutRepeats(List<PointNm> points) =>
        points.Where((p, i) => i == 0 || p != points[i - 1]);

    private void Emit(PointNm[] path, int column)
    {
        _hasHole = true;
        if (tools.Current(column) is { } current)
        {
            Add(new DrilledFeature(path, current.DiameterNm, current.Tool.Plating, current.Tool.Function, log.At(column)));
        }
    }

    private void Add(DrilledFeature feature)
    {
        if (_features.Count >= MaxFeatures)
        {
            IsFull = true;
            log.Reject(
                DrillCode.TooManyHoles,
                feature.Position.Column,
                string.Create(CultureInfo.InvariantCulture, $"more than {MaxFeatures} holes"),
                string.Create(CultureInfo.InvariantCulture, $"at most {MaxFeatures}"));
            return;
        }

        _features.Add(feature);
    }

    private int? Count(DrillWord repeat)
    {
        if (int.TryParse(repeat.Number, NumberStyles.None, CultureInfo.InvariantCulture, out int count)
            && count is > 0 and <= MaxFeatures)
        {
            return count;
        }

        log.Reject(DrillCode.BadRepeat, repeat.Column, $"'{repeat}'", "a repeat count from 1 to 1000000");
        return null;
    }

    /// <summary>Offset of a repeat or zero set: missing parts are 0, not the last coordinate.</summary>
    private PointNm? Step(DrillBlock block)
    {
        long? x = block.X is { } wordX ? rules.LengthNm(wordX) : 0;
        long? y = block.Y is { } wordY ? rules.LengthNm(wordY) : 0;
        return x is { } dx && y is { } dy ? new PointNm(dx, dy) : null;
    }

    private PointNm? Target(DrillWord? wordX, DrillWord? wordY)
    {
        long? x = wordX is { } wx ? rules.LengthNm(wx) + (IsIncremental ? _position.X : _zero.X) : _position.X;
        long? y = wordY is { } wy ? rules.LengthNm(wy) + (IsIncremental ? _position.Y : _zero.Y) : _position.Y;
        if (x is not { } px || y is not { } py)
        {
            return null;
        }

        PointNm target = new(px, py);
        return InRange(target, (wordX ?? wordY)?.Column ?? 1) ? target : null;
    }

    private bool InRange(PointNm point, int column)
    {
        bool inRange = Math.Abs(point.X) <= PointNm.LimitNm && Math.Abs(point.Y) <= PointNm.LimitNm;
        if (!inRange)
        {
            log.Reject(DrillCode.TooFar, column, "a position beyond 10 m from the zero", "positions within 10 m");
        }

        return inRange;
    }
}
