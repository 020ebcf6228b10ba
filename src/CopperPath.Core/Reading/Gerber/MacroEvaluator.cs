using System.Globalization;
using CopperPath.Artwork;

namespace CopperPath.Reading.Gerber;

/// <summary>Runs a macro for one aperture: parameters in, stamp out.</summary>
internal sealed class MacroEvaluator(double unitNm)
{
    private readonly List<StampPart> _parts = [];
    private readonly List<ApertureRemark> _remarks = [];
    private bool _exposed = true;
    private int _code;

    public IReadOnlyList<ApertureRemark> Remarks => _remarks;

    /// <summary>The stamp, or null when a remark rejects it.</summary>
    public Stamp? Run(MacroProgram program, IReadOnlyList<double> parameters)
    {
        var variables = new MacroVariables();
        for (int i = 0; i < parameters.Count; i++)
        {
            variables[i + 1] = parameters[i];
        }

        foreach (MacroStatement statement in program.Statements)
        {
            switch (statement)
            {
                case MacroAssignment assignment:
                    variables[assignment.Variable] = assignment.Value.Value(variables);
                    break;
                case MacroPrimitive primitive:
                    double[] values = [.. primitive.Parameters.Select(p => p.Value(variables))];
                    if (!variables.DividedByZero)
                    {
                        Draw(primitive.Code, values);
                    }

                    break;
            }

            if (variables.DividedByZero)
            {
                Reject(GerberCode.MacroDivision, $"a division by zero in macro {program.Name}", "a divisor other than 0");
            }

            if (_remarks.Exists(r => r.Rejects))
            {
                return null;
            }
        }

        return new Stamp(_parts);
    }

    private void Draw(int code, double[] p)
    {
        _code = code;
        if (!p.All(v => Math.Abs(v) <= 1e9))
        {
            Reject(GerberCode.MacroParameter, $"a parameter beyond 1e9 in primitive {code}", "lengths below 10 m");
            return;
        }

        switch (code)
        {
            case 1 when HasCount(p, 4, 5):
                Circle(p);
                break;
            case 2 or 20 when HasCount(p, 7, 7):
                VectorLine(p);
                break;
            case 21 when HasCount(p, 6, 6):
                Rectangle(p, p[3] - (p[1] / 2), p[4] - (p[2] / 2));
                break;
            case 22 when HasCount(p, 6, 6):
                Rectangle(p, p[3], p[4]);
                break;
            case 4 when p.Length >= 2:
                OutlinePrimitive(p);
                break;
            case 5 when HasCount(p, 6, 6):
                Polygon(p);
                break;
            case 6 when HasCount(p, 9, 9):
                Moire(p);
                break;
            case 7 when HasCount(p, 6, 6):
                Thermal(p);
                break;
            case 1 or 2 or 20 or 21 or 22 or 5 or 6 or 7:
                break;
            case 4:
                HasCount(p, 2, int.MaxValue);
                break;
            default:
                Reject(GerberCode.MacroSyntax, $"primitive code {code}", "1, 4, 5, 6, 7, 20, 21 or 22");
                break;
        }
    }

    /// <summary>1: exposure, diameter, centre x, y [, rotation].</summary>
    private void Circle(double[] p)
    {
        if (IsSize(p[1], "diameter"))
        {
            Turned turned = new(p.Length > 4 ? p[4] : 0, unitNm);
            Add(p[0], p[1] > 0 ? new CircleOutline(turned.At(p[2], p[3]), p[1] / 2 * unitNm) : null);
        }
    }

    /// <summary>20: exposure, width, start x, y, end x, y, rotation. Square ends at the end points.</summary>
    private void VectorLine(double[] p)
    {
        if (!IsSize(p[1], "width"))
        {
            return;
        }

        Turned turned = new(p[6], unitNm);
        double dx = p[4] - p[2];
        double dy = p[5] - p[3];
        double length = Math.Sqrt((dx * dx) + (dy * dy));
        double sideX = length == 0 ? 0 : -dy / length * p[1] / 2;
        double sideY = length == 0 ? 0 : dx / length * p[1] / 2;
        Add(p[0], length == 0 || p[1] == 0 ? null : PathOutline.Polygon(
            turned.At(p[2] - sideX, p[3] - sideY),
            turned.At(p[4] - sideX, p[5] - sideY),
            turned.At(p[4] + sideX, p[5] + sideY),
            turned.At(p[2] + sideX, p[3] + sideY)));
    }

    /// <summary>21 and 22: exposure, width, height, a point, rotation; the lower left corner given apart.</summary>
    private void Rectangle(double[] p, double left, double bottom)
    {
        if (IsSize(p[1], "width") && IsSize(p[2], "height"))
        {
            Add(p[0], p[1] == 0 || p[2] == 0 ? null : Box(new Turned(p[5], unitNm), left, bottom, p[1], p[2]));
        }
    }

    /// <summary>4: exposure, n, n + 1 points of which the last repeats the first, rotation.</summary>
    private void OutlinePrimitive(double[] p)
    {
        int count = p[1] == Math.Floor(p[1]) && p[1] is >= 1 and <= 1e6 ? (int)p[1] : 0;
        if (count == 0)
        {
            Reject(GerberCode.MacroParameter, $"{Text(p[1])} outline vertices", "a whole number of 1 or more");
            return;
        }

        if (!HasCount(p, (2 * count) + 5, (2 * count) + 5))
        {
            return;
        }

        Turned turned = new(p[^1], unitNm);
        if (p[2] != p[2 + (2 * count)] || p[3] != p[3 + (2 * count)])
        {
            _remarks.Add(new ApertureRemark(
                GerberCode.MacroOutlineOpen,
                "a macro outline whose last point differs from its first",
                "the first point repeated at the end; closed by a straight line",
                Rejects: false));
        }

        Add(p[0], PathOutline.Polygon(
            Enumerable.Range(0, count + 1).Select(i => turned.At(p[2 + (2 * i)], p[3 + (2 * i)]))));
    }

    /// <summary>5: exposure, vertices, centre x, y, diameter of the circumscribed circle, rotation.</summary>
    private void Polygon(double[] p)
    {
        if (!IsSize(p[4], "diameter"))
        {
            return;
        }

        if (p[1] != Math.Floor(p[1]) || p[1] is < 3 or > 12)
        {
            Reject(GerberCode.MacroParameter, $"{Text(p[1])} polygon vertices", "a whole number from 3 to 12");
            return;
        }

        Turned turned = new(p[5], unitNm);
        Add(p[0], p[4] == 0 ? null : PathOutline.Polygon(
            RegularPolygon.Corners((int)p[1], p[4], 0).Select(c => turned.At(p[2] + c.X, p[3] + c.Y))));
    }

    /// <summary>6: centre x, y, outer diameter, ring thickness, gap, most rings, cross thickness, length, rotation.</summary>
    private void Moire(double[] p)
    {
        if (!IsSize(p[2], "diameter") || !IsSize(p[3], "ring thickness") || !IsSize(p[4], "gap")
            || !IsSize(p[6], "cross thickness") || !IsSize(p[7], "cross length"))
        {
            return;
        }

        if (p[5] != Math.Floor(p[5]) || p[5] < 0)
        {
            Reject(GerberCode.MacroParameter, $"{Text(p[5])} moire rings", "a whole number of 0 or more");
            return;
        }

        Turned turned = new(p[8], unitNm);
        Vector centre = turned.At(p[0], p[1]);
        double outer = p[2];
        for (int ring = 0; ring < p[5] && outer > 0 && p[3] > 0; ring++, outer -= 2 * (p[3] + p[4]))
        {
            if (ring == GerberLimits.MostMoireRings)
            {
                Reject(GerberCode.MacroParameter, "a moire of more than 1000 rings", "at most 1000 rings");
                return;
            }

            double inner = outer - (2 * p[3]);
            _parts.Add(new StampPart(
                true,
                [new CircleOutline(centre, outer / 2 * unitNm)],
                inner > 0 ? [new CircleOutline(centre, inner / 2 * unitNm)] : []));
        }

        if (p[6] > 0 && p[7] > 0)
        {
            _parts.Add(new StampPart(Box(turned, p[0] - (p[7] / 2), p[1] - (p[6] / 2), p[7], p[6])));
            _parts.Add(new StampPart(Box(turned, p[0] - (p[6] / 2), p[1] - (p[7] / 2), p[6], p[7])));
        }
    }

    /// <summary>7: centre x, y, outer diameter, inner diameter, gap, rotation. A ring cut by a cross.</summary>
    private void Thermal(double[] p)
    {
        double outer = p[2] / 2;
        double inner = p[3] / 2;
        double half = p[4] / 2;
        if (inner < 0 || inner >= outer || half < 0 || half >= outer / Math.Sqrt(2))
        {
            Reject(
                GerberCode.MacroParameter,
                $"a thermal of outer {Text(p[2])}, inner {Text(p[3])} and gap {Text(p[4])}",
                "0 <= inner < outer and 0 <= gap < outer / sqrt(2)");
            return;
        }

        Turned turned = new(p[5], unitNm);
        Vector centre = turned.At(p[0], p[1]);
        if (half == 0)
        {
            _parts.Add(new StampPart(
                true,
                [new CircleOutline(centre, outer * unitNm)],
                inner > 0 ? [new CircleOutline(centre, inner * unitNm)] : []));
            return;
        }

        double far = Math.Sqrt((outer * outer) - (half * half));
        bool innerArcShows = inner * inner > 2 * half * half;
        double near = innerArcShows ? Math.Sqrt((inner * inner) - (half * half)) : half;
        var quarters = new List<Outline>(4);
        for (int quarter = 0; quarter < 4; quarter++)
        {
            (double sine, double cosine) = Angle.SinCosDeg(90 * quarter);
            Vector Place(double x, double y) =>
                turned.At(p[0] + (cosine * x) - (sine * y), p[1] + (sine * x) + (cosine * y));
            List<Corner> corners =
            [
                new(Place(near, half), Turn.Straight, default),
                new(Place(far, half), Turn.Straight, default),
                new(Place(half, far), Turn.CounterClockwise, centre),
            ];
            if (innerArcShows)
            {
                corners[0] = new Corner(Place(near, half), Turn.Clockwise, centre);
                corners.Add(new Corner(Place(half, near), Turn.Straight, default));
            }

            quarters.Add(new PathOutline(corners));
        }

        _parts.Add(new StampPart(true, quarters, []));
    }

    private static PathOutline Box(Turned turned, double left, double bottom, double width, double height) =>
        PathOutline.Polygon(
            turned.At(left, bottom),
            turned.At(left + width, bottom),
            turned.At(left + width, bottom + height),
            turned.At(left, bottom + height));

    private void Add(double exposure, Outline? outline)
    {
        switch (exposure)
        {
            case 0:
                _exposed = false;
                break;
            case 1:
                _exposed = true;
                break;
            case 2:
                _exposed = !_exposed;
                _remarks.Add(new ApertureRemark(
                    GerberCode.Deprecated, "exposure 2 in a macro", "0 or 1; taken as the opposite of the one before", false));
                break;
            default:
                Reject(GerberCode.MacroParameter, $"exposure {Text(exposure)} in primitive {_code}", "0 or 1");
                return;
        }

        if (outline is not null)
        {
            _parts.Add(new StampPart(_exposed, [outline], []));
        }
    }

    private bool HasCount(double[] p, int least, int most)
    {
        if (p.Length >= least && p.Length <= most)
        {
            return true;
        }

        Reject(
            GerberCode.MacroArity,
            string.Create(CultureInfo.InvariantCulture, $"{p.Length} parameters after primitive code {_code}"),
            least == most || most == int.MaxValue
                ? string.Create(CultureInfo.InvariantCulture, $"{least}")
                : string.Create(CultureInfo.InvariantCulture, $"{least} or {most}"));
        return false;
    }

    private bool IsSize(double value, string name)
    {
        if (value >= 0)
        {
            return true;
        }

        Reject(GerberCode.MacroParameter, $"{name} {Text(value)} in primitive {_code}", "0 or more");
        return false;
    }

    private void Reject(string code, string found, string expected) =>
        _remarks.Add(new ApertureRemark(code, found, expected, Rejects: true));

    private static string Text(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>Rotation of a primitive: about the origin of the macro, not about the primitive.</summary>
    private readonly struct Turned(double degrees, double unitNm)
    {
        private readonly (double Sine, double Cosine) _angle = Angle.SinCosDeg(degrees);

        public Vector At(double x, double y) => unitNm * new Vector(
            (_angle.Cosine * x) - (_angle.Sine * y),
            (_angle.Sine * x) + (_angle.Cosine * y));
    }
}

/// <summary>Corners of a regular polygon in its circumscribed circle.</summary>
internal static class RegularPolygon
{
    /// <summary>Corners counter-clockwise, the first on the x axis before the rotation.</summary>
    public static IEnumerable<Vector> Corners(int count, double diameter, double rotationDeg)
    {
        for (int i = 0; i < count; i++)
        {
            (double sine, double cosine) = Angle.SinCosDeg(rotationDeg + (360.0 * i / count));
            yield return diameter / 2 * new Vector(cosine, sine);
        }
    }
}
